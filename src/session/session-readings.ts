/** What a session has read, as the suspects are weighed by it. */
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { isMeterUnit } from '../circuit/meter-units.ts';
import { shownOf } from '../circuit/shown-of.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { bindText } from '../procedure/bind-text.ts';
import { stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { probeWhere, setupWords } from '../procedure/test-words.ts';
import { formatTyped } from '../quantity/format-quantity.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { isByTest } from './answering-test.ts';
import type { EventNumber, LookRecorded, ReadingRecorded, TestRecorded } from './events.ts';
import { wakingReadings } from './intermittent.ts';
import { type Session, standingAnswers } from './session.ts';
import { eventsToConclusion } from './spent-minutes.ts';
import { MARKS_LOOK, movedOutcomes } from './timing-off.ts';

/** A reading as suspects are weighed by it, with the event it came from and its words. */
export interface SessionReading extends Reading {
  /** The event that it comes from; a step that moves several places gives a reading for each. */
  readonly event: EventNumber;
  readonly found: string;
  /** What was asked: the same test may stand in the tree by several names. */
  readonly words: string;
  readonly where: string;
}

/** Where tests stand among those that suspects are weighed by; null for none of them. */
export interface TestPlaces {
  readonly placeOf: (test: Test) => number | null;
  readonly placeOfWaking: (id: string) => number | null;
  readonly testAt: (place: number) => { readonly words?: string };
}

/**
 * Standing answers and tests of no step that can be weighed, in the order they were saved, up to the conclusion: what is
 * read after it is read after the repair. What the circuit knows nothing of, and answers in units of no
 * meter, say nothing of its faults and are left out; so are the questions of a drill, of which its vehicle knows nothing.
 */
export function sessionReadings(session: Session, space: TestPlaces): SessionReading[] {
  const { procedure, job, circuit, vehicle } = session.opened;
  const standing = new Set<unknown>(standingAnswers(session));
  return eventsToConclusion(session).flatMap((event, index) => {
    const found =
      event.type === 'test-recorded'
        ? recorded(event)
        : (event.type === 'reading-recorded' || event.type === 'look-recorded') &&
            standing.has(event) &&
            // The test that answered it counts itself.
            !isByTest(event)
          ? answered(event)
          : [];
    return found.map((one) => ({ ...one, event: index + 1 }));
  });

  type Found = Omit<SessionReading, 'event'>;

  function read(test: Test, shown: Shown, found: string, title: string | null): Found[] {
    const place = space.placeOf(test);
    if (place === null) return [];
    const words = bindText(title ?? space.testAt(place).words ?? '', job, circuit);
    return [{ test: place, shown, found, words, where: probeWhere(test.probe, job, circuit) }];
  }

  function recorded({ test, shown: kept, typed }: TestRecorded): Found[] {
    const shown = shownOf(kept);
    const found = shown.kind === 'look' && typed === '' ? LOOK_WORDS[shown.look] : typed;
    return read(test, shown, found, null);
  }

  function answered(event: ReadingRecorded | LookRecorded): Found[] {
    if (!procedure) return [];
    const step = stepOf(procedure, event.step);
    if (step.kind === 'ask') {
      if (vehicle.kind === 'drill') return [];
      const chosen = step.outcomes.find(({ name }) => name === event.outcome);
      // A mark that is off by the maker's procedure is what the look at the marks would find.
      if (chosen && movedOutcomes(step).includes(chosen.name))
        return read(MARKS_LOOK, { kind: 'look', look: 'faulty' }, chosen.words, step.title);
      const where = setupWords(step.setup, job, circuit);
      const words = bindText(step.title, job, circuit);
      return wakingReadings(procedure, event).flatMap(({ test, shown, found }) => {
        const place = space.placeOfWaking(test);
        return place === null ? [] : [{ test: place, shown, found, words, where }];
      });
    }
    const test = testOf(step);
    if (!test || step.kind === 'conclude') return [];
    if (event.type === 'look-recorded')
      return event.look === null
        ? []
        : read(test, { kind: 'look', look: event.look }, LOOK_WORDS[event.look], step.title);
    if (!isMeterUnit(event.unit)) return [];
    const value = event.value ?? Number.POSITIVE_INFINITY;
    const found = formatTyped({ value, unit: event.unit }, event.typed);
    return read(test, { kind: 'number', value, unit: event.unit }, found, step.title);
  }
}
