/** Whether an event of today has the form that its schema asks for. */
import { checkEvents } from '../../src/log/check-events.ts';
import type { StepCapture } from '../../src/session/events.ts';
import { opened, when } from './sample-tree.ts';

/** What is wrong with a capture in an event of the sample tree, read back as JSON; null when nothing is. */
export function captureFlaw(capture: StepCapture): string | null {
  const look = {
    type: 'look-recorded',
    step: 'pattern',
    look: 'full',
    outcome: 'full',
    go: 'fine',
    capture,
    ...when(1),
  };
  const stored = [opened(), look].map((event, at) => ({
    ...JSON.parse(JSON.stringify(event)),
    seq: at + 1,
    prev: at === 0 ? null : '0'.repeat(64),
  }));
  return checkEvents(stored).flaw?.words ?? null;
}
