/** What a session has read, as the suspects are weighed by it. */
import type { Circuit } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { shownOf } from '../circuit/shown-of.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { stepOf } from '../procedure/procedure.ts';
import { setupWords, whereWords } from '../procedure/test-words.ts';
import { formatTyped } from '../quantity/format-quantity.ts';
import type { Reading } from '../suspects/likelihood.ts';
import type { LookRecorded, ReadingRecorded } from './events.ts';
import { wakingReadings } from './intermittent.ts';
import { type Session, standingAnswers } from './session.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** One reading of the session and the words for it. */
export interface SessionReading extends Reading {
  readonly found: string;
  /** What was asked: the same test may stand in the tree by several names. */
  readonly words: string;
  readonly where: string;
}

/**
 * Standing answers and readings outside the tree that can be weighed, in the order they were saved. What the circuit
 * knows nothing of, and answers in other units than volts and ohms, say nothing of its faults and are left out.
 */
export function sessionReadings(
  session: Session,
  space: SuspectSpace,
  circuit: Circuit,
): SessionReading[] {
  const { procedure, job } = session.opened;
  const standing = new Set<unknown>(standingAnswers(session));
  return session.events.flatMap((event) => {
    if (event.type === 'extra-reading')
      return read(event.test, shownOf(event.shown), event.typed, event.words);
    const isAnswered = event.type === 'reading-recorded' || event.type === 'look-recorded';
    return isAnswered && standing.has(event) ? answered(event) : [];
  });

  function read(test: Test, shown: Shown, found: string, words: string): SessionReading[] {
    const place = space.placeOf(test, words);
    const where = whereWords(test.probe, job, circuit);
    return place === null ? [] : [{ test: place, shown, found, words, where }];
  }

  function answered(event: ReadingRecorded | LookRecorded): SessionReading[] {
    const step = stepOf(procedure, event.step);
    if (step.kind === 'ask') {
      const where = setupWords(step.setup, job, circuit);
      return wakingReadings(procedure, event).flatMap(({ test, shown, found }) => {
        const place = space.placeOfWaking(test);
        return place === null ? [] : [{ test: place, shown, found, words: step.title, where }];
      });
    }
    if ((step.kind !== 'measure' && step.kind !== 'look') || step.probe === null) return [];
    const test = { setup: step.setup, probe: step.probe };
    if (event.type === 'look-recorded')
      return event.look === null
        ? []
        : read(test, { kind: 'look', look: event.look }, LOOK_WORDS[event.look], step.title);
    if (event.unit !== 'V' && event.unit !== 'ohm') return [];
    const value = event.value ?? Number.POSITIVE_INFINITY;
    const found = formatTyped({ value, unit: event.unit }, event.typed);
    return read(test, { kind: 'number', value, unit: event.unit }, found, step.title);
  }
}
