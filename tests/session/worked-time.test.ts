/** Time worked; by hand from the moments of the events. */
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../src/session/events.ts';
import { workedMs, workedTimes } from '../../src/session/worked-time.ts';
import { opened } from './sample-tree.ts';

const at = (elapsed: number): SessionEvent => ({
  ...{ type: 'note-added', step: null, text: 'so', at: '2031-05-06T09:00:00+02:00' },
  elapsed,
});
const resumed = (elapsed: number): SessionEvent => ({
  ...{ type: 'session-resumed', program: '', format: 2, rules: 2, by: 'person' },
  ...{ at: '2031-05-06T09:00:00+02:00', elapsed },
});
const recovered = (elapsed: number): SessionEvent => ({
  ...{ type: 'recovered', bytes: 1, hash: '0', file: 'torn' },
  ...{ at: '2031-05-06T09:00:00+02:00', elapsed },
});

describe('time worked', () => {
  it.each<[string, SessionEvent[], number]>([
    ['is none without events', [], 0],
    ['is what has elapsed', [opened(), at(3000), at(5000)], 5000],
    ['begins anew at zero after a pause', [opened(), at(3000), resumed(0), at(2000)], 5000],
    [
      'leaves out what passed in the pause',
      [opened(), at(3000), resumed(60_000), at(61_000)],
      4000,
    ],
    [
      'leaves out what passed before the torn end of the file was found',
      [opened(), at(3000), recovered(60_000), resumed(60_010), at(61_010)],
      4000,
    ],
  ])('%s', (_, events, worked) => {
    expect(workedMs(events)).toBe(worked);
  });
  it('is known at each event', () => {
    const events = [opened(), at(3000), resumed(0), at(2000)];
    const times = workedTimes(events);
    expect(events.map((event) => times.get(event))).toEqual([0, 3000, 3000, 5000]);
  });
});
