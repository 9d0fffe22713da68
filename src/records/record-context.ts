/** What the words of a record are made with: facts of the session that a single event does not hold. */
import { leads } from '../circuit/refuse-test.ts';
import type { Meter, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { showsGood } from '../drill/levels.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { instrumentWords } from '../procedure/test-words.ts';
import type { SessionEvent, SessionOpened } from '../session/events.ts';
import type { JudgedOtherwise } from '../session/history.ts';
import type { Session } from '../session/session.ts';
import { spentMinutes } from '../session/spent-minutes.ts';
import { testTable } from '../session/test-table.ts';
import { workedTimes } from '../session/worked-time.ts';
import type { JudgedToday, Moment } from './record-form.ts';

/** What is common to all lines of one record. */
export interface RecordContext {
  readonly session: Session;
  readonly clock: Clock;
  /** A text of the procedure in the words of this vehicle. */
  readonly bind: (text: string) => string;
  /** What a test is called, and its kind. */
  readonly named: (test: Test) => NamedTest;
  /** The meter in hand at an event. */
  readonly meterAt: (event: SessionEvent) => Meter;
  /** What today's rules say of an event otherwise; `words` makes words of their verdict or outcome. */
  readonly today: (event: SessionEvent, words: TodayWords) => Today;
  /** False while a drill goes on whose level hides what is good. */
  readonly showsGood: boolean;
}

/** What today's rules say, as words: the name of a verdict or an outcome. */
type TodayWords = (today: string, of: JudgedOtherwise['of']) => string;

/** To be put into what it belongs to; nothing where today's rules say the same. */
export type Today = { readonly today?: JudgedToday };

/** A test as a report calls it. */
export interface NamedTest {
  readonly words: string;
  readonly family: string;
}

/** Gives the moment of an event: when it was, on the clock of its session. */
export type Clock = (event: SessionEvent) => Moment;

/** The title of a step in the words of this vehicle; empty for none. */
export function titleOf({ session, bind }: RecordContext, id: string | null): string {
  if (id === null) return '';
  const step = session.opened.procedure?.steps[id];
  return step ? bind(step.title) : id;
}

/** The context of a session's record. */
export function contextOf(
  session: Session,
  judgedOtherwise: readonly JudgedOtherwise[],
): RecordContext {
  const { opened, events } = session;
  const bind = (text: string) => bindText(text, opened.job, opened.circuit);
  const clock = sessionClock(events);
  const meters = metersOf(session);
  const shows = showsGood(session);
  const otherwise = new Map(judgedOtherwise.map((one) => [one.seq, one]));
  return {
    session,
    clock,
    bind,
    named: (test) => {
      const { words, family } = namedTest(opened, test);
      return { words: bind(words), family };
    },
    meterAt: (event) => meters.get(event) ?? opened.meter,
    today: (event, words) => {
      const found = otherwise.get(clock(event).event);
      if (!found || !shows) return {};
      const { rules, of, today } = found;
      return {
        today: { rules, of, words: today === NOTHING ? 'nothing of it' : words(today, of) },
      };
    },
    showsGood: shows,
  };
}

/** As the history says that today's rules judge nothing there. */
const NOTHING = 'none';

/** The meter in hand at each event. */
function metersOf({ opened, events }: Session): Map<SessionEvent, Meter> {
  let meter = opened.meter;
  return new Map(
    events.map((event) => {
      if (event.type === 'instruments-changed') meter = event.meter;
      return [event, meter];
    }),
  );
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
  if (!entry) return namedByStep(procedure, test) ?? { words: placeWords(test), family: '' };
  return { words: withPlacesOpen(entry.words, test), family: entry.family };
}

/** A test of the person's own is named by the names of its places, which no paper has a use for. */
function withPlacesOpen(words: string, { probe }: Test): string {
  const places = new Set<string>(leads(probe));
  return words.replace(PLACE, (id) => (places.has(id) ? `{${id}}` : id));
}
const PLACE = /(?<![a-z\d{.-])[a-z][a-z\d-]*\.[a-z\d-]+/g;

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

/** A clock over a session's events, pauses left out. */
function sessionClock(events: readonly SessionEvent[]): Clock {
  const worked = workedTimes(events);
  const numbers = new Map(events.map((event, index) => [event, index + 1]));
  return (event) => {
    const [number, workedMs] = [numbers.get(event), worked.get(event)];
    if (number === undefined || workedMs === undefined)
      throw new Error(`sessionClock: "${event.type}" is no event of this session`);
    return { event: number, at: event.at, workedMs };
  };
}
