/** Which test an event has read. */
import type { Test } from '../circuit/test.ts';
import { type Procedure, stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { SessionEvent } from './events.ts';

/** The test of a reading, of a step or of none; null for any other event, and where the circuit knows nothing of it. */
export function testOfEvent(event: SessionEvent, procedure: Procedure | null): Test | null {
  switch (event.type) {
    case 'test-recorded':
      return event.test;
    case 'reading-recorded':
    case 'look-recorded':
      return procedure && testOf(stepOf(procedure, event.step));
    case 'session-opened':
    case 'caution-acknowledged':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'test-set-aside':
    case 'connector-set-aside':
    case 'state-set-aside':
    case 'value-set':
    case 'value-taken-back':
    case 'short-placed':
    case 'waking-watched':
    case 'note-added':
    case 'instruments-changed':
    case 'session-paused':
    case 'session-resumed':
    case 'concluded':
    case 'test-stopped':
    case 'caution-passed-over':
    case 'answer-revealed':
    case 'retest-recorded':
    case 'retest-impossible':
    case 'session-closed':
    case 'drive-reported':
    case 'work-answered':
    case 'recovered':
    case 'segment-continued':
      return null;
  }
}
