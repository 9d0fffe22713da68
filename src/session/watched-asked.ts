/** What a round of moving or warming is understood with at the present step. */

import type { Model } from '../circuit/model.ts';
import { expectedShown } from './expected-shown.ts';
import { canWake } from './intermittent.ts';
import { placesOfStep, type WatchedAsked } from './read-watched.ts';
import { presentStep, type Session } from './session.ts';
import { modelHere } from './step-here.ts';

/** Whether something is moved or warmed at the present step; not on a drill, whose vehicle answers by itself. */
export function wakesHere(session: Session): boolean {
  const { procedure, vehicle } = session.opened;
  const step = presentStep(session);
  return (
    vehicle.kind !== 'drill' && procedure !== null && step !== null && canWake(procedure, step)
  );
}

/** Null where nothing is. */
export function watchedAsked(
  { model }: { readonly model: Model | null },
  session: Session,
): WatchedAsked | null {
  const { procedure } = session.opened;
  const step = presentStep(session);
  if (!procedure || step?.kind !== 'ask' || !wakesHere(session)) return null;
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
