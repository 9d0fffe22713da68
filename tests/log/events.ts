/** Invented events for the tests of the log. */
import type { LogEvent } from '../../src/log/event-line.ts';

/** The n-th event of a session that never happened; `fill` characters of note make it longer. */
export function sampleEvent(n: number, fill = 0): LogEvent {
  const at = new Date(Date.UTC(2031, 4, 6, 7, 8, 9) + n * 4000).toISOString();
  return {
    type: n === 0 ? 'session-begun' : 'reading-recorded',
    at,
    elapsed: n * 4000.5,
    id: n,
    step: 'feed',
    reading: { typed: '4,98 V', volts: 4.98, instrument: 'meter' },
    note: `é€😂${'x'.repeat(fill)}`,
  };
}

export const NAME = '20310506T070809Z-hall-no-signal-0badcafe.jsonl';
