/** Invented events for the tests of the log. */
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';

/** The n-th event of a session that never happened; `fill` characters of note make it longer. */
export function sampleEvent(n: number, fill = 0) {
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

/** The text of a file with these events, chained as the program writes them, and its head. */
export function sealed(events: readonly object[]): {
  readonly text: string;
  readonly head: { readonly seq: number; readonly hash: string };
} {
  let prev: string | null = null;
  let text = '';
  for (const [index, event] of events.entries()) {
    const { line, hash } = sealEvent(event as LogEvent, index + 1, prev);
    text += `${line}\n`;
    prev = hash;
  }
  return { text, head: { seq: events.length, hash: prev ?? '' } };
}
