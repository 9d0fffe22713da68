/** What a session has cost so far, and how it has left the vehicle: its tests in order, each from how things stood. */
import type { Circuit } from '../circuit/circuit.ts';
import { type Step, stepOf, WAKING } from '../procedure/procedure.ts';
import { AT_THE_START } from '../suspects/optimum.ts';
import {
  ALL_MEANS,
  COSTS,
  type Means,
  type Situation,
  situationAfter,
  testCost,
} from '../suspects/test-cost.ts';
import { isByTest } from './answering-test.ts';
import { testOfEvent } from './event-test.ts';
import type { EventNumber, SessionEvent, ShortPlaced } from './events.ts';
import { statesOut } from './out-of-reach.ts';
import { testOfShort } from './place-short.ts';
import type { Session } from './session.ts';
import { type TestTable, testTable } from './test-table.ts';

/** A second person at the vehicle. */
const HELPER = 'helper';

/** The minutes so far, and how things stand at the vehicle after them. */
export interface Spent {
  readonly minutes: number;
  /** How things are at the vehicle now. */
  readonly situation: Situation;
  /** Minutes of each event that took some. */
  readonly byEvent: ReadonlyMap<EventNumber, number>;
}

const known = new WeakMap<Session, Spent>();

/**
 * Minutes at the vehicle up to the conclusion: what is done again after the repair belongs to the repair. A test costs
 * what the table says, from how the test before it left things; a step that is only done or asked, what its author says.
 * What was taken back was done all the same.
 */
export function spentOn(session: Session): Spent {
  const found = known.get(session) ?? addUp(session);
  known.set(session, found);
  return found;
}

/** Minutes at the vehicle up to the conclusion. */
export function spentMinutes(session: Session): number {
  return spentOn(session).minutes;
}

/** How things are at the vehicle after everything that was done. */
export function situationOf(session: Session): Situation {
  return spentOn(session).situation;
}

/** What the person can do, and which states the vehicle cannot be had in. A simulated vehicle of a drill stands where everything is at hand, and nobody helps. */
export function meansOf(session: Session): Means {
  const { instruments, opened } = session;
  if (opened.vehicle.kind === 'drill') return ALL_MEANS;
  return { has: instruments, helper: instruments.includes(HELPER), without: statesOut(session) };
}

/** The events up to the conclusion that stands; all of them before there is one. */
export function eventsToConclusion({ events, concluded }: Session): readonly SessionEvent[] {
  return concluded ? events.slice(0, events.lastIndexOf(concluded)) : events;
}

function addUp(session: Session): Spent {
  const { circuit, procedure, meter, vehicle, instruments } = session.opened;
  const table = circuit && testTable(circuit, procedure, meter);
  const byEvent = new Map<EventNumber, number>();
  let minutes = 0;
  let situation = AT_THE_START;
  let atHand = instruments;
  for (const [index, event] of eventsToConclusion(session).entries()) {
    // Nothing was made here: of the one it is read what was read before, the other was made before.
    if (isByTest(event) || (event.type === 'test-recorded' && event.made !== undefined)) continue;
    if (event.type === 'instruments-changed') atHand = event.instruments;
    const helped = vehicle.kind !== 'drill' && atHand.includes(HELPER);
    const cost = costOf(event, session, { table, situation, helped });
    if (!cost) continue;
    situation = cost.after;
    minutes += cost.minutes;
    byEvent.set(index + 1, cost.minutes);
  }
  return { minutes, situation, byEvent };
}

interface SetupNow {
  readonly table: TestTable | null;
  readonly situation: Situation;
  readonly helped: boolean;
}

function costOf(
  event: SessionEvent,
  { opened: { procedure, circuit } }: Session,
  { table, situation, helped }: SetupNow,
): { readonly minutes: number; readonly after: Situation } | null {
  const test = testOfEvent(event, procedure);
  if (test && table) {
    const entry = table.entryOf(test);
    const { minutes } = testCost(entry, situation, COSTS, helped);
    return { minutes, after: situationAfter(entry, situation) };
  }
  if (event.type === 'short-placed' && circuit && table)
    return ofShort(circuit, event, { table, situation, helped });
  if (!procedure || !isDone(event)) return null;
  const step = stepOf(procedure, event.step);
  return step.kind === 'conclude'
    ? null
    : { minutes: step.minutes, after: isMoved(step) ? { ...situation, ...left(step) } : situation };
}

/** Fed at one end, then at the other. */
function ofShort(
  circuit: Circuit,
  { stretch }: ShortPlaced,
  { table, situation, helped }: SetupNow & { readonly table: TestTable },
) {
  let minutes = 0;
  let after = situation;
  for (const fed of ['from', 'to'] as const) {
    const entry = table.entryOf(testOfShort(circuit, stretch, fed));
    minutes += testCost(entry, after, COSTS, helped).minutes;
    after = situationAfter(entry, after);
  }
  return { minutes, after };
}

function isDone(
  event: SessionEvent,
): event is Extract<SessionEvent, { type: 'step-done' | 'reading-recorded' | 'look-recorded' }> {
  return (
    event.type === 'step-done' ||
    event.type === 'reading-recorded' ||
    event.type === 'look-recorded'
  );
}

/** A question that is answered by moving or warming something leaves the vehicle as that needs it. */
function isMoved(step: Step): step is Extract<Step, { kind: 'ask' }> {
  return step.kind === 'ask' && WAKING.includes(step.family);
}

function left({ setup: { state, unplugged } }: Extract<Step, { kind: 'ask' }>) {
  return { state, unplugged };
}
