/** Time worked; by hand from the moments of the events. */
import { describe, expect, it } from 'vitest';
import type { SessionEvent, SessionOpened } from '../../src/session/events.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { clockMinutes, workedMs, workedTimes } from '../../src/session/worked-time.ts';
import { opened, sessionAfter } from './sample-tree.ts';

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
    [
      'leaves out the job before it, where the program was not left between',
      [{ ...opened(), elapsed: 525_000 }, at(528_000), at(530_000)],
      5000,
    ],
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
  it.each<[string, Partial<SessionOpened>, SessionEvent[], number | null]>([
    ['of a person at a vehicle is what the clock says', {}, [at(90_000)], 1.5],
    [
      'on a simulated vehicle is none',
      { vehicle: { kind: 'bench', fault: 'x', seed: 1 } },
      [],
      null,
    ],
    ['of a file is none', { by: 'answers-file' }, [at(90_000)], null],
    [
      'of what a program went on with is none',
      {},
      [at(90_000), { ...resumed(0), by: 'program' } as SessionEvent],
      null,
    ],
  ])('in minutes, %s', (_, more, events, minutes) => {
    const session = events.reduce(evolve, openSession({ ...opened(), ...more, elapsed: 0 }));
    expect(clockMinutes(session)).toBe(minutes);
  });
  it('in minutes ends with the conclusion: what comes after belongs to the repair', () => {
    const session = sessionAfter([
      { type: 'conclude', own: { words: 'a wire', faults: [] } },
      { type: 'add-note', text: 'later' },
    ]);
    // by hand: the conclusion is at 1 s, the note at 2 s
    expect(clockMinutes(session)).toBeCloseTo(1 / 60, 9);
  });
  it('is known at each event', () => {
    const events = [opened(), at(3000), resumed(0), at(2000)];
    const times = workedTimes(events);
    expect(events.map((event) => times.get(event))).toEqual([0, 3000, 3000, 5000]);
  });
});
