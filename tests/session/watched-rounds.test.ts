/** Rounds in the record against the answer to their step, before the repair and after it. */
import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { checkHistory } from '../../src/session/history.ts';
import { refusalWords } from '../../src/session/refusal.ts';
import { watchedLines } from '../../src/ui/screens/step-words.ts';
import { sessionAfter, when } from './sample-tree.ts';
import { WAKING, WIGGLE } from './waking-tree.ts';

const AT_WIGGLE = { ...WAKING, start: 'wiggle' };
const round = (place: string | null, drops: number, more: object = {}): Command => ({
  type: 'watch-waking',
  ...{ place, typed: 'x', unit: null, least: null, most: null, drops, minutes: 3 },
  ...more,
});
const choose = (outcome: string): Command => ({ type: 'choose-outcome', outcome });
const refusal = (before: readonly Command[], command: Command) => {
  const decision = decide(sessionAfter(before, AT_WIGGLE), command, when(9));
  return decision.ok ? null : decision.refusal;
};

describe('drops that were counted', () => {
  test.each<[string, readonly Command[], string, string | null]>([
    ['no drop, and none is said', [round('plug', 0)], 'nothing', null],
    ['drops, and none is said', [round('plug', 2)], 'nothing', 'drops-counted'],
    [
      'a later round without any leaves them',
      [round('plug', 1), round('plug', 0)],
      'nothing',
      'drops-counted',
    ],
    ['drops at the place that is said', [round('plug', 2)], 'plug', null],
    ['drops at another place', [round('plug', 2)], 'harness', 'drops-counted'],
    ['drops at no place that was named', [round(null, 1)], 'harness', null],
  ])('%s', (_, rounds, outcome, code) => {
    expect(refusal(rounds, choose(outcome))?.code ?? null).toBe(code);
  });

  test('the refusal says how many and where, and the way out where the count was wrong', () => {
    const { words, fix } = refusalWords(refusal([round('plug', 2)], choose('nothing'))!);
    expect(words).toBe('the rounds in the record counted 2 drops (plug)');
    expect(fix).toContain('"cannot be done" and why');
  });

  test('a file that an earlier version let stand so is read all the same', () => {
    const session = sessionAfter(
      [round('plug', 2), { ...choose('nothing'), saved: true } as Command],
      AT_WIGGLE,
    );
    expect(checkHistory(session.events).flaw).toBeNull();
  });
});

describe('after the repair', () => {
  const repaired = [round('plug', 2), choose('plug'), { type: 'conclude' }] as const;
  const again = { step: 'wiggle' };
  const retest = (outcome: string): Command => ({
    type: 'record-retest',
    ...{ step: 'wiggle', typed: '', value: null, look: null, outcome },
  });

  test('rounds are made again, and stand apart from those before it', () => {
    const session = sessionAfter([...repaired, round('plug', 0, again)], AT_WIGGLE);
    expect(watchedLines(session, WIGGLE)).toEqual([
      'Before the repair, one round: 2 drops, 3 min',
      'After it, one round: no drop, 3 min',
    ]);
    expect(checkHistory(session.events).flaw).toBeNull();
    const record = recordOf(session, { seq: 5, hash: 'a'.repeat(64) });
    expect(record.watched?.map(({ step }) => step)).toEqual([
      'Step wiggle',
      'Step wiggle, after the repair',
    ]);
  });

  test('drops before it speak against no test after it, and those after it do', () => {
    expect(refusal([...repaired, round('plug', 0, again)], retest('nothing'))).toBeNull();
    expect(refusal([...repaired, round('plug', 1, again)], retest('nothing'))?.code).toBe(
      'drops-counted',
    );
  });

  test('a round names its step then, and none before', () => {
    expect(refusal(repaired, round('plug', 0))?.code).toBe('not-open');
    expect(refusal([], round('plug', 0, again))?.code).toBe('not-open');
    expect(refusal(repaired, round('plug', 0, { step: 'pattern' }))?.code).toBe('no-waking');
  });
});
