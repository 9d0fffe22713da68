/** What events of sessions and of drills of format 1 have in common. */
import type { StoredEvent } from './event-line.ts';
import { isKeys, type Keys } from './loose-keys.ts';

/** An event in today's form, still to be checked, or in words why there is none. */
export type Upgraded = Keys | string;

/** Files of format 1 name no version of the rules; theirs are the first. */
export const FIRST_RULES = 1;
/** What everybody had at hand before it was said. */
export const AT_HAND_ONCE = ['meter', 'live-data', 'lead'];

/** Why an event of such a type cannot be upgraded. */
export function unknownType({ type }: StoredEvent): string {
  return `is of the type "${type}", which format 1 does not have`;
}

/** Findings of a capture were sentences. */
export function withCapture(event: Keys): Keys {
  const { capture } = event;
  if (!isKeys(capture)) return event;
  const { words, pairs, ...rest } = capture;
  const findings = asSaid(words);
  const phases = pairs === undefined ? {} : { phases: asSaid(pairs) };
  return { ...event, capture: { ...rest, findings, ...phases } };
}

function asSaid(sentences: unknown): unknown {
  return Array.isArray(sentences) ? sentences.map((said: unknown) => ({ said })) : sentences;
}
