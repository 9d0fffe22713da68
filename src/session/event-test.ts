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
    default:
      return null;
  }
}
