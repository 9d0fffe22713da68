/** Rounds of moving and warming: what is typed, what a long capture shows, and what the record keeps of them. */
import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/records/session-record.ts';
import { captureAnswer, takesCapture } from '../../src/session/capture-step.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { checkHistory } from '../../src/session/history.ts';
import { readWatched, type WatchedAsked } from '../../src/session/read-watched.ts';
import { roundsAt } from '../../src/session/watched-rounds.ts';
import { watchedInAll, watchedWords } from '../../src/session/watched-words.ts';
import { findDrops } from '../../src/waveform/find-drops.ts';
import { measureChannel } from '../../src/waveform/measure-channel.ts';
import { channel, fileOf, known, RATE } from './drawn-capture.ts';
import { sessionAfter, when } from './sample-tree.ts';
import { WAKING, WIGGLE } from './waking-tree.ts';

const ASKED: WatchedAsked = {
  places: ['plug', 'harness', 'module-plug'],
  unit: 'V',
  limits: { low: 4.8, high: 5.2 },
};

describe('what is typed', () => {
  test.each<[string, object]>([
    [
      'plug: 4.9 V to 5.1 V, 0 drops, 3 min',
      { place: 'plug', least: 4.9, most: 5.1, drops: 0, minutes: 3 },
    ],
    // by hand: 0.3 V is beyond 4.8 to 5.2 V, the other two are not
    [
      'harness: 4.98, 5.01, 0.3',
      { place: 'harness', least: 0.3, most: 5.01, drops: 1, minutes: null },
    ],
    ['mod: 2 drops', { place: 'module-plug', unit: null, least: null, most: null, drops: 2 }],
    ['no drops; 10 min', { place: null, unit: null, drops: 0, minutes: 10 }],
    ['Module plug: 4.9 V', { place: 'module-plug', least: 4.9 }],
  ])('%s', (text, expected) => {
    expect(readWatched(text, ASKED)).toMatchObject({ type: 'watch-waking', ...expected });
  });

  test.each(['', '3 min', 'roof: 5 V', 'plug: often', 'plug: 5 ohm'])('"%s" is refused', (text) => {
    expect(readWatched(text, ASKED)).toMatchObject({
      words: expect.any(String),
      fix: expect.any(String),
    });
  });

  test('without a meter only drops are understood', () => {
    const asked = { ...ASKED, unit: null, limits: null };
    expect(readWatched('plug: 5 V', asked)).toMatchObject({
      fix: expect.stringContaining('0 drops'),
    });
    expect(readWatched('plug: 1 drop', asked)).toMatchObject({ drops: 1 });
  });
});

describe('a long capture', () => {
  const dropsIn = (at: (sample: number) => number) => {
    const made = channel(at);
    return findDrops(made.samples, measureChannel(made, RATE));
  };
  // by hand: 40 samples and 10 samples of 10,000 a second are 4 ms and 1 ms
  test('of a level that stands counts what is far below it, the shortest and the longest', () => {
    const found = dropsIn((i) => ((i >= 500 && i < 540) || (i >= 2000 && i < 2010) ? 0 : 5));
    expect(found).toMatchObject({ count: 2, least: 0, most: 5, limit: 4 });
    expect(found.longestSeconds).toBeCloseTo(0.004, 6);
    expect(found.shortestSeconds).toBeCloseTo(0.001, 6);
  });

  test('of a level that stands still has none', () => {
    expect(dropsIn(() => 5)).toMatchObject({
      count: 0,
      shortestSeconds: null,
      longestSeconds: null,
    });
  });

  // by hand: a pulse every 10 ms, ten of them missing: 110 ms between edges, of which 10 ms are as usual
  test('of a signal that toggles counts where its edges stay away', () => {
    const found = dropsIn((i) => (i >= 1000 && i < 2000 ? 0 : i % 100 < 50 ? 5 : 0));
    expect(found).toMatchObject({ count: 1, limit: null });
    expect(found.longestSeconds).toBeCloseTo(0.1, 2);
  });
});

const AT_WIGGLE = { ...WAKING, start: 'wiggle' };
const round = (more: object = {}): Command => ({
  type: 'watch-waking',
  ...{ place: 'plug', typed: 'x', unit: 'V', least: 4.9, most: 5.1, drops: 0, minutes: 3 },
  ...more,
});

test('rounds add up, and leave the step to be answered', () => {
  const second = round({ place: 'harness', least: 0.2, drops: 2, minutes: 7 });
  const session = sessionAfter([round(), second], AT_WIGGLE);
  expect(session.watched.map(watchedWords)).toEqual([
    'plug: 4.9 V to 5.1 V, no drop, 3 min',
    'harness: 0.2 V to 5.1 V, 2 drops, 7 min',
  ]);
  expect(watchedInAll(roundsAt(session, 'wiggle'))).toBe('0.2 V to 5.1 V, 2 drops, 10 min');
  expect(session.trail.at(-1)).toMatchObject({ step: 'wiggle', answer: null });
  expect(checkHistory(session.events).flaw).toBeNull();
  const record = recordOf(session, { seq: 3, hash: 'a'.repeat(64) });
  expect(record.watched?.map(({ found }) => found)).toEqual(session.watched.map(watchedWords));
});

test('a round is of a step that wakes something, at a place of it', () => {
  const refusal = (command: Command, start = 'wiggle') => {
    const decision = decide(sessionAfter([], { ...WAKING, start }), command, when(1));
    return decision.ok ? null : decision.refusal.code;
  };
  expect(refusal(round())).toBeNull();
  expect(refusal(round({ place: 'nothing' }))).toBe('no-such-outcome');
  expect(refusal(round(), 'question')).toBe('no-waking');
});

test('a long capture is a round of its own, and another number with it is not believed', () => {
  const step = { ...WIGGLE, watched: [{ kind: 'volts', plus: 'a.b', minus: 'c.d' } as const] };
  expect(takesCapture(step)).toBe(true);
  const lost = channel((i) => (i >= 500 && i < 540 ? 0 : 5));
  const found = captureAnswer({ kind: 'step', step }, fileOf([lost]), known());
  if (!found.ok || found.command.type !== 'watch-waking') throw new Error('it is a round');
  expect(found.command).toMatchObject({ drops: 1, least: 0, most: 5, unit: 'V', place: null });
  expect(found.lines.at(-1)).toBe('1 drop, of 4 ms, below 4 V.');
  const tree = { ...AT_WIGGLE, steps: { ...AT_WIGGLE.steps, wiggle: step } };
  const session = sessionAfter([found.command], tree);
  expect(session.watched[0]?.capture?.drops?.count).toBe(1);
  const other = decide(session, { ...found.command, drops: 0 }, when(2));
  expect(other).toMatchObject({ ok: false, refusal: { code: 'no-capture' } });
});

test('after the repair it is a round of the test that is made again', () => {
  const step = { ...WIGGLE, watched: [{ kind: 'volts', plus: 'a.b', minus: 'c.d' } as const] };
  const tree = { ...AT_WIGGLE, steps: { ...AT_WIGGLE.steps, wiggle: step } };
  const quiet = captureAnswer({ kind: 'retest', step }, fileOf([channel(() => 5)]), known());
  if (!quiet.ok || quiet.command.type !== 'watch-waking') throw new Error('it is a round');
  expect(quiet.command).toMatchObject({ step: 'wiggle', drops: 0 });
  const woken: Command = { type: 'choose-outcome', outcome: 'plug' };
  const repaired = sessionAfter([woken, { type: 'conclude' }], tree);
  const decision = decide(repaired, quiet.command, when(2));
  expect(decision).toMatchObject({ ok: true, events: [{ type: 'waking-watched', drops: 0 }] });
});
