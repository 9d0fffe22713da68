/** How the vehicle and the leads were left by the last test. */
import type { Setup } from '../circuit/test.ts';
import { stepOf } from '../procedure/procedure.ts';
import { isByTest } from './answering-test.ts';
import type { SessionEvent } from './events.ts';
import { isSame } from './is-same.ts';
import { testOfShort } from './place-short.ts';
import type { Session } from './session.ts';

/**
 * Whether what a test needs unplugged and clipped on stands already: the last test needed the same, and nobody has worked
 * on the vehicle since. False where nothing is unplugged or clipped on.
 */
export function isStillSetUp({ unplugged, bridges, sensor }: Setup, session: Session): boolean {
  if (unplugged.length === 0 && bridges.length === 0) return false;
  const stands = untouchedSetup(session);
  return (
    stands !== null &&
    isSame([unplugged, bridges, sensor], [stands.unplugged, stands.bridges, stands.sensor])
  );
}

/** The setup of the last test where nobody has worked on the vehicle since; else null. */
export function untouchedSetup(session: Session): Setup | null {
  const read = session.events.findLastIndex(({ type }) => READS.includes(type));
  const worked = session.events.findLastIndex(({ type }) => type === 'step-done');
  return read > worked ? standingSetup(session) : null;
}

const READS: readonly SessionEvent['type'][] = [
  'reading-recorded',
  'look-recorded',
  'test-recorded',
  'retest-recorded',
];

/** The same whether it was concluded since or not: what has to come off before anyone repairs, drives or puts it away. */
export function leftSetup(session: Session): Setup | null {
  return standingSetup({
    ...session,
    events: session.events.filter(({ type }) => type !== 'concluded'),
  });
}

/**
 * The setup of the last test that an instrument answered, in the order of the clock and whether it still counts or
 * not; null before the first one, and after a conclusion, when the repair lies between.
 */
export function standingSetup({ events, opened }: Session): Setup | null {
  for (const event of [...events].reverse()) {
    if (isByTest(event)) continue;
    switch (event.type) {
      case 'test-recorded':
        if (event.made !== undefined) break;
        return event.test.setup;
      case 'short-placed':
        if (opened.circuit) return testOfShort(opened.circuit, event.stretch, 'to').setup;
        break;
      case 'reading-recorded':
      case 'look-recorded':
      case 'retest-recorded': {
        const step = opened.procedure && stepOf(opened.procedure, event.step);
        if ((step?.kind === 'measure' || step?.kind === 'look') && step.probe) return step.setup;
        break;
      }
      case 'concluded':
        return null;
      // None of these reads an instrument.
      case 'session-opened':
      case 'caution-acknowledged':
      case 'caution-passed-over':
      case 'step-done':
      case 'step-impossible':
      case 'step-reopened':
      case 'test-set-aside':
      case 'connector-set-aside':
      case 'state-set-aside':
      case 'test-stopped':
      case 'value-set':
      case 'value-taken-back':
      case 'note-added':
      case 'instruments-changed':
      case 'session-paused':
      case 'session-resumed':
      case 'session-closed':
      case 'retest-impossible':
      case 'drive-reported':
      case 'answer-revealed':
      case 'recovered':
      case 'segment-continued':
      case 'work-answered':
      case 'waking-watched':
        break;
    }
  }
  return null;
}
