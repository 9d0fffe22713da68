/** With which meter an event was measured: instruments may change on the way. */
import type { Meter } from '../circuit/test.ts';
import type { SessionEvent } from './events.ts';
import type { Session } from './session.ts';

/** The meter in use when `event` of this session happened. */
export function meterAt({ opened, events }: Session, event: SessionEvent): Meter {
  const before = events.slice(0, Math.max(0, events.indexOf(event)));
  const changed = before.findLast((one) => one.type === 'instruments-changed');
  return changed?.meter ?? opened.meter;
}
