/** What a round of moving or warming is understood with at the present step. */

import type { Model } from '../circuit/model.ts';
import type { Step } from '../procedure/procedure.ts';
import { expectedShown } from './expected-shown.ts';
import { canWake } from './intermittent.ts';
import { placesOfStep, type WatchedAsked } from './read-watched.ts';
import { presentStep, type Session } from './session.ts';
import { modelHere } from './step-here.ts';

/**
 * Whether something is moved or warmed at a step, the present one unless another is given; not on a drill, whose vehicle
 * answers by itself.
 */
export function wakesHere(session: Session, step: Step | null = presentStep(session)): boolean {
  const { procedure, vehicle } = session.opened;
  return (
    vehicle.kind !== 'drill' && procedure !== null && step !== null && canWake(procedure, step)
  );
}

/** Null where nothing is. `step` is the present one unless another is given. */
export function watchedAsked(
  { model }: { readonly model: Model | null },
  session: Session,
  step: Step | null = presentStep(session),
): WatchedAsked | null {
  const { procedure } = session.opened;
  if (!procedure || step?.kind !== 'ask' || !wakesHere(session, step)) return null;
  const probe = (step.watched ?? []).find(({ kind }) => kind === 'volts' || kind === 'ohms');
  const places = placesOfStep(procedure, step);
  if (!probe) return { places, unit: null, limits: null };
  const expected = model && expectedShown(modelHere(session, model), { setup: step.setup, probe });
  const limits =
    expected?.kind === 'number'
      ? {
          low: expected.low ?? Number.NEGATIVE_INFINITY,
          high: expected.high ?? Number.POSITIVE_INFINITY,
        }
      : null;
  return { places, unit: probe.kind === 'volts' ? 'V' : 'ohm', limits };
}
