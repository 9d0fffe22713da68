/** What the words of a record are made with: facts of the session that a single event does not hold. */
import type { Judgement } from '../circuit/judge.ts';
import type { Meter, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { levelNamed } from '../drill/levels.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { instrumentWords } from '../procedure/test-words.ts';
import type { SessionEvent, SessionOpened } from '../session/events.ts';
import type { Session } from '../session/session.ts';
import { spentMinutes } from '../session/spent-minutes.ts';
import { testTable } from '../session/test-table.ts';
import { type Clock, sessionClock } from './session-clock.ts';

/** A reading whose judgement today's rules would not repeat. */
export interface JudgedOtherwise {
  /** Number of the event, from 1. */
  readonly seq: number;
  readonly today: Judgement | null;
}

export interface RecordContext {
  readonly session: Session;
  readonly clock: Clock;
  /** A text of the procedure in the words of this vehicle. */
  readonly bind: (text: string) => string;
  /** What a test is called, and its kind. */
  readonly named: (test: Test) => NamedTest;
  /** The meter in hand at an event. */
  readonly meterAt: (event: SessionEvent) => Meter;
  /** Version of the rules at an event: another version of the program may have gone on. */
  readonly rulesAt: (event: SessionEvent) => number;
  readonly judgedOtherwise: ReadonlyMap<number, JudgedOtherwise>;
  /** False while a drill goes on whose level hides what is good. */
  readonly showsGood: boolean;
}

export interface NamedTest {
  readonly words: string;
  readonly family: string;
}

/** The context of a session's record. */
export function contextOf(
  session: Session,
  judgedOtherwise: readonly JudgedOtherwise[],
): RecordContext {
  const { opened, events } = session;
  const bind = (text: string) => bindText(text, opened.job, opened.circuit);
  const meters = inForce(events, opened.meter, (event) =>
    event.type === 'instruments-changed' ? event.meter : undefined,
  );
  const rules = inForce(events, opened.rules, (event) =>
    event.type === 'session-resumed' ? event.rules : undefined,
  );
  return {
    session,
    clock: sessionClock(events),
    bind,
    named: (test) => {
      const { words, family } = namedTest(opened, test);
      return { words: bind(words), family };
    },
    meterAt: (event) => meters.get(event) ?? opened.meter,
    rulesAt: (event) => rules.get(event) ?? opened.rules,
    judgedOtherwise: new Map(judgedOtherwise.map((one) => [one.seq, one])),
    showsGood: showsGood(session),
  };
}

/** What holds at each event: the last change before it. */
function inForce<T>(
  events: readonly SessionEvent[],
  first: T,
  changeOf: (event: SessionEvent) => T | undefined,
): Map<SessionEvent, T> {
  let now = first;
  return new Map(
    events.map((event) => {
      now = changeOf(event) ?? now;
      return [event, now];
    }),
  );
}

function showsGood({ opened: { vehicle }, revealed }: Session): boolean {
  return vehicle.kind !== 'drill' || revealed !== null || levelNamed(vehicle.level).expected;
}

/** Minutes at the vehicle up to the conclusion, in tenths; null for a circuit whose tests have no price. */
export function minutesAt(session: Session): number | null {
  return unlessOdd(() => Math.round(spentMinutes(session) * 10) / 10);
}

/** A file may hold anything under a circuit's name: what was read is shown all the same. */
function unlessOdd<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch {
    return null;
  }
}

/** By the table of tests; without a circuit there is none, and a step or the leads themselves name the test. */
function namedTest({ circuit, procedure, meter }: SessionOpened, test: Test): NamedTest {
  const entry = circuit && unlessOdd(() => testTable(circuit, procedure, meter).entryOf(test));
  return entry ?? namedByStep(procedure, test) ?? { words: placeWords(test), family: '' };
}

function namedByStep(procedure: Procedure | null, test: Test): NamedTest | null {
  const key = testKey(test);
  for (const step of Object.values(procedure?.steps ?? {})) {
    if ((step.kind !== 'measure' && step.kind !== 'look') || step.probe === null) continue;
    const own = { setup: step.setup, probe: step.probe };
    if (testKey(own) === key) return { words: step.title, family: step.family };
  }
  return null;
}

function placeWords({ probe }: Test): string {
  // With the places left open, so that the words of this vehicle come in like those of a step.
  const where =
    probe.kind === 'inspect'
      ? probe.of
      : probe.kind === 'counts'
        ? `{${probe.input}}`
        : `{${probe.plus}} to {${probe.minus}}`;
  return `${instrumentWords(probe)}, ${where}`;
}
