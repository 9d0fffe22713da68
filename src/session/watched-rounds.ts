/** The rounds of a step that moves or warms something, and whether the drops counted in them bear out an answer to it. */
import type { Step } from '../procedure/procedure.ts';
import type { WakingWatched } from './events.ts';
import { canWake, wakes } from './intermittent.ts';
import type { Refusal } from './refusal.ts';
import type { Session } from './session.ts';

/**
 * The rounds at a step as it is asked now: after a conclusion those made since, as the repair lies between; before one,
 * all but those that were made after a conclusion which was taken back.
 */
export function roundsAt({ events, concluded }: Session, step: string): WakingWatched[] {
  let isRepaired = false;
  let rounds: WakingWatched[] = [];
  for (const event of events) {
    if (event.type === 'concluded') {
      isRepaired = true;
      if (event === concluded) rounds = [];
    } else if (event.type === 'step-reopened' || event.type === 'value-taken-back')
      isRepaired = false;
    else if (event.type === 'waking-watched' && event.step === step)
      if (!isRepaired || concluded) rounds.push(event);
  }
  return rounds;
}

/**
 * The rounds whose drops speak against this answer: that nothing was woken, or that it was at another place than where
 * they were counted. None where the step wakes nothing.
 */
export function droppedAgainst(session: Session, step: Step, outcome: string): WakingWatched[] {
  const { procedure } = session.opened;
  if (!procedure || !canWake(procedure, step)) return [];
  const dropped = roundsAt(session, step.id).filter(({ drops }) => drops > 0);
  if (!wakes(procedure, step, outcome)) return dropped;
  const isBorneOut = dropped.some(({ place }) => place === null || place === outcome);
  return isBorneOut ? [] : dropped;
}

/** Why this answer cannot stand beside the rounds of its step; null where it can. */
export function dropsCounted(session: Session, step: Step, outcome: string): Refusal | null {
  const against = droppedAgainst(session, step, outcome);
  if (against.length === 0) return null;
  const places = new Set(against.flatMap(({ place }) => place ?? []));
  return {
    code: 'drops-counted',
    drops: against.reduce((sum, { drops }) => sum + drops, 0),
    places: [...places],
  };
}
