/** Ways through a small tree over a model that shows what it is told to; where each sample ends is followed by hand. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import type { DiscriminatingTests } from '../../src/proof/discriminating-tests.ts';
import { judgeOf } from '../../src/proof/judge-ways.ts';
import { outcomeOf, walkFault, walkFaults } from '../../src/proof/walk-faults.ts';
import { KEY_ON } from '../circuit/setup.ts';
import {
  base,
  FAULTS,
  HEALTHY,
  light,
  measure,
  modelOf,
  range,
  STEPS,
  tree,
  volts,
} from './small-tree.ts';

describe('a way', () => {
  test('keeps together the samples that go the same way, with their share', () => {
    const model = modelOf({
      healthy: HEALTHY,
      wire: { feed: [volts(1), volts(5)], light: [light('lit'), light('dim'), light('dark')] },
    });
    const ways = walkFault(tree('prepare'), model, 'wire');
    expect(ways.map(({ samples, share, end: last }) => [samples, share, last])).toEqual([
      [[0], 0.25, { kind: 'concluded', step: 'broken' }],
      [[1], 0.25, { kind: 'concluded', step: 'broken' }],
      [[2, 3], 0.5, { kind: 'dead-end', step: 'light' }],
    ]);
    expect(ways[1]!.visits).toEqual([
      { step: 'prepare', outcome: null },
      { step: 'feed', outcome: 'good' },
      { step: 'light', outcome: 'dim' },
    ]);
    expect(ways.every(({ fault }) => fault === 'wire')).toBe(true);
  });

  test('may begin elsewhere and with some samples only', () => {
    const model = modelOf({ healthy: HEALTHY });
    const [way, ...others] = walkFault(tree('prepare'), model, 'healthy', {
      from: 'light',
      samples: [2, 3],
    });
    expect(way).toMatchObject({ samples: [2, 3], share: 1 });
    expect(others).toEqual([]);
  });

  test('is walked for the healthy circuit first, then for each fault in order', () => {
    const ways = walkFaults(tree('prepare'), modelOf({ healthy: HEALTHY }));
    expect(ways.map(({ fault }) => fault)).toEqual(['healthy', ...FAULTS.map(({ id }) => id)]);
  });

  test('that comes back to a step with nothing new has no end', () => {
    const back = measure('feed', { outcomes: [range('all', null, null, 'prepare')] });
    const [way] = walkFault(tree('prepare', { feed: back }), modelOf({ healthy: HEALTHY }), 'wire');
    expect(way).toMatchObject({ end: { kind: 'endless', step: 'prepare' }, share: 1 });
    expect(way!.visits.map(({ step }) => step)).toEqual(['prepare', 'feed']);
  });
});

describe('a question', () => {
  const ask = (usual: string | null, go = 'fine'): Step =>
    ({
      ...base,
      id: 'ask',
      kind: 'ask',
      minutes: 1,
      usual,
      outcomes: [
        { name: 'yes', words: '', go },
        { name: 'no', words: '', go: 'broken' },
      ],
    }) as Step;
  const ends = (step: Step, id = step.id) =>
    walkFault(tree(id, { [id]: step }), modelOf({ healthy: HEALTHY }), 'healthy').map(
      ({ share, end: last, visits }) => [visits.map(({ outcome }) => outcome), share, last.step],
    );
  test('is answered as usual, or each way in turn', () => {
    expect(ends(ask('no'))).toEqual([[['no'], 1, 'broken']]);
    expect(ends(ask(null))).toEqual([
      [['yes'], 0.5, 'fine'],
      [['no'], 0.5, 'broken'],
    ]);
  });
  test('that is come to again takes the answers that are left', () => {
    expect(ends(ask(null, 'ask'))).toEqual([
      [['yes', 'no'], 0.5, 'broken'],
      [['no'], 0.5, 'broken'],
    ]);
  });
  test('takes its own answers, whatever another question was answered by', () => {
    const second = { ...ask(null), id: 'second' } as Step;
    const first = ask(null, 'second');
    const ways = walkFault(
      tree('ask', { ask: first, second }),
      modelOf({ healthy: HEALTHY }),
      'healthy',
    );
    expect(ways.map(({ share, visits }) => [visits.map(({ outcome }) => outcome), share])).toEqual([
      [['yes', 'yes'], 0.25],
      [['yes', 'no'], 0.25],
      [['no'], 0.5],
    ]);
  });
  test('without an answer left has no end', () => {
    const both = { ...ask(null, 'ask') } as Extract<Step, { kind: 'ask' }>;
    const outcomes = both.outcomes.map((one) => ({ ...one, go: 'ask' }));
    expect(ends({ ...both, outcomes })).toEqual([
      [['yes', 'no'], 0.5, 'ask'],
      [['no', 'yes'], 0.5, 'ask'],
    ]);
  });
  test.each<[object | null, string]>([
    // the answer of a vehicle whose signal is as expected: nominal, else the middle, else the end there is
    [{ low: 0, nominal: 5, high: 6 }, 'good'],
    [{ low: 0, nominal: null, high: 6 }, 'low'],
    [{ low: 5, nominal: null, high: null }, 'good'],
    [{ low: 1, nominal: null, high: null }, 'low'],
    [{ low: 1, nominal: null, high: 9 }, 'good'],
    [{ low: null, nominal: null, high: 3 }, 'good'],
    [null, 'good'],
  ])('for a number outside the circuit with %o expected is "%s"', (expected, name) => {
    expect(ends(measure('feed', { probe: null, expected }))[0]![0]).toEqual(
      [name, 'lit'].slice(0, name === 'good' ? 2 : 1),
    );
  });
});

describe('an outcome', () => {
  const feed = STEPS['feed'] as Extract<Step, { kind: 'measure' }>;
  const look = STEPS['light'] as Extract<Step, { kind: 'look' }>;
  test('holds what is shown, or none does', () => {
    expect(outcomeOf(feed, volts(4))).toBe('good');
    expect(outcomeOf(feed, volts(6))).toBeNull();
    expect(outcomeOf(feed, light('lit'))).toBeNull();
    expect(outcomeOf(look, light('dim'))).toBe('dim');
    expect(outcomeOf(look, light('dark'))).toBeNull();
    expect(outcomeOf(look, volts(4))).toBeNull();
  });
  test('only a step with leads has a test, always the same one', () => {
    expect(testOf(feed)).toEqual({ setup: KEY_ON, probe: feed.probe });
    expect(testOf(feed)).toBe(testOf(feed));
    expect(testOf({ ...feed, probe: null })).toBeNull();
    expect(testOf(STEPS['prepare']!)).toBeNull();
    expect(testOf(STEPS['fine']!)).toBeNull();
  });
});

describe('a way is judged', () => {
  const discriminating = (seen: readonly number[]): DiscriminatingTests => ({
    detects: (_, sample) => seen.includes(sample),
    separator: () => null,
  });
  const verdicts = (
    fault: string,
    shows: Record<string, readonly Shown[]>,
    seen: readonly number[] = [0, 1, 2, 3],
    procedure = tree('feed'),
  ) => {
    const model = modelOf({ healthy: HEALTHY, [fault]: shows });
    const judge = judgeOf(procedure, model.circuit, discriminating(seen));
    return walkFault(procedure, model, fault)
      .flatMap(judge.judge)
      .map(({ verdict, share, lostAt, samples }) => ({ verdict, share, lostAt, samples }));
  };
  const feedLow = { step: 'feed', outcome: 'low' };
  const all = [0, 1, 2, 3];

  test('right where the conclusion names the fault, or one with the same repair', () => {
    const right = { verdict: 'right', share: 1, lostAt: null, samples: all };
    expect(verdicts('wire', { feed: [volts(1)] })).toEqual([right]);
    expect(verdicts('like-wire', { feed: [volts(1)] })).toEqual([right]);
    expect(verdicts('healthy', HEALTHY)).toEqual([right]);
  });
  test('wrong elsewhere, lost at the last step from which the right one could be come to', () => {
    expect(verdicts('healthy', { feed: [volts(1)] })).toMatchObject([
      { verdict: 'wrong', lostAt: feedLow },
    ]);
    const outcomes = [{ name: 'lit', words: '', looks: ['lit'], go: 'other' }];
    const more = { light: { ...STEPS['light'], outcomes } as unknown as Step };
    expect(verdicts('wire', HEALTHY, all, tree('feed', more))).toMatchObject([
      { verdict: 'wrong', lostAt: { step: 'feed', outcome: 'good' } },
    ]);
  });
  test('lost at the last step of all where nothing leads to the right conclusion', () => {
    expect(verdicts('fuse', { feed: [volts(1)] })).toMatchObject([
      { verdict: 'wrong', lostAt: feedLow },
    ]);
    expect(verdicts('lost', { feed: [volts(1)] })).toMatchObject([
      { verdict: 'wrong', lostAt: null },
    ]);
  });
  test('missed in the samples that some test shows, else inseparable', () => {
    expect(verdicts('wire', HEALTHY, [1])).toEqual([
      { verdict: 'missed', share: 0.25, samples: [1], lostAt: { step: 'light', outcome: 'lit' } },
      {
        verdict: 'inseparable',
        share: 0.75,
        samples: [0, 2, 3],
        lostAt: { step: 'light', outcome: 'lit' },
      },
    ]);
    expect(verdicts('wire', HEALTHY, []).map(({ verdict }) => verdict)).toEqual(['inseparable']);
    expect(verdicts('wire', HEALTHY, all).map(({ verdict }) => verdict)).toEqual(['missed']);
  });
  test('a dead end and a way without end as such', () => {
    expect(verdicts('wire', { feed: [volts(9)] })).toEqual([
      { verdict: 'dead-end', share: 1, samples: all, lostAt: null },
    ]);
    expect(verdicts('wire', { feed: [volts(9)] }, all, tree('prepare'))).toMatchObject([
      { verdict: 'dead-end', lostAt: { step: 'prepare', outcome: null } },
    ]);
  });
  test('the right conclusions name the fault, or else its repair', () => {
    const { rightFor } = judgeOf(
      tree('feed'),
      modelOf({ healthy: HEALTHY }).circuit,
      discriminating([]),
    );
    expect(['wire', 'like-wire', 'fuse', 'lost', 'healthy'].map(rightFor)).toEqual([
      ['broken'],
      ['broken'],
      ['other'],
      [],
      ['fine'],
    ]);
  });
});
