import { describe, expect, test } from 'vitest';
import { LOOK_WORDS } from '../../src/circuit/look-words.ts';
import type { Shown } from '../../src/circuit/test.ts';
import { corroborate } from '../../src/suspects/corroborate.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { expectedDrop, type ProposalAsk, proposeTests } from '../../src/suspects/next-test.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, type TableTest } from '../../src/suspects/prediction-table.ts';
import { entropyBits, rankSuspects } from '../../src/suspects/rank-suspects.ts';
import {
  ALL_MEANS,
  COSTS,
  canDo,
  type Situation,
  situationAfter,
  testCost,
} from '../../src/suspects/test-cost.ts';
import { longestPath, look, matrixTable, simpleTest } from './tables.ts';

const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
const KEY_ON: Situation = { state: 'key-on', unplugged: [], reached: [] };

describe('what a test costs', () => {
  const feed = simpleTest('feed', { minutes: 2, reaches: ['sensor'] });
  const cost = (asked: TableTest, now: Situation, helper = true) =>
    testCost(asked, now, COSTS, helper).minutes;
  test.each<[string, TableTest, Situation, number]>([
    // by hand from the named costs
    ['all in place', feed, { ...KEY_ON, reached: ['sensor'] }, 2],
    ['a place not yet reached', feed, KEY_ON, 2 + COSTS.accessMinutes],
    ['key to turn on', feed, { ...AT_THE_START, reached: ['sensor'] }, 2 + COSTS.keyMinutes],
    [
      'connectors off and on',
      { ...feed, unplugged: ['sensor'] },
      { ...KEY_ON, unplugged: ['module'], reached: ['sensor'] },
      2 + 2 * COSTS.plugMinutes,
    ],
    [
      'engine from key off',
      { ...feed, state: 'running' },
      { ...AT_THE_START, reached: ['sensor'] },
      2 + COSTS.keyMinutes + COSTS.engineMinutes,
    ],
    [
      'engine to stop',
      { ...feed, state: 'key-off' },
      { ...KEY_ON, state: 'running', reached: ['sensor'] },
      2 + COSTS.keyMinutes + COSTS.engineMinutes,
    ],
    [
      'cranking again',
      { ...feed, state: 'cranking' },
      { ...KEY_ON, state: 'cranking', reached: ['sensor'] },
      2 + COSTS.engineMinutes,
    ],
    [
      'after cranking the key is on',
      feed,
      { ...KEY_ON, state: 'cranking', reached: ['sensor'] },
      2,
    ],
    [
      'the engine runs on',
      { ...feed, state: 'running' },
      { ...KEY_ON, state: 'running', reached: ['sensor'] },
      2,
    ],
    [
      'engine to start after cranking',
      { ...feed, state: 'running' },
      { ...KEY_ON, state: 'cranking', reached: ['sensor'] },
      2 + COSTS.engineMinutes,
    ],
    [
      'engine to stop, with the key on',
      feed,
      { ...KEY_ON, state: 'running', reached: ['sensor'] },
      2 + COSTS.engineMinutes,
    ],
    [
      'key to turn off',
      { ...feed, state: 'key-off' },
      { ...KEY_ON, reached: ['sensor'] },
      2 + COSTS.keyMinutes,
    ],
    [
      'key off as it is',
      { ...feed, state: 'key-off' },
      { ...AT_THE_START, reached: ['sensor'] },
      2,
    ],
    [
      'cranking after the engine ran',
      { ...feed, state: 'cranking' },
      { ...KEY_ON, state: 'running', reached: ['sensor'] },
      2 + COSTS.engineMinutes,
    ],
    [
      'clips to take off',
      feed,
      { ...KEY_ON, reached: ['sensor'], arrangement: 'bridge' },
      2 + COSTS.arrangeMinutes,
    ],
    [
      'the same clips',
      { ...feed, arrangement: 'bridge' },
      { ...KEY_ON, reached: ['sensor'], arrangement: 'bridge' },
      2,
    ],
    [
      'connectors already off',
      { ...feed, unplugged: ['sensor'] },
      { ...KEY_ON, unplugged: ['sensor'], reached: ['sensor'] },
      2,
    ],
    [
      'cranking from key off',
      { ...feed, state: 'cranking' },
      { ...AT_THE_START, reached: ['sensor'] },
      2 + COSTS.keyMinutes + COSTS.engineMinutes,
    ],
    [
      'key off from cranking',
      { ...feed, state: 'key-off' },
      { ...KEY_ON, state: 'cranking', reached: ['sensor'] },
      2 + COSTS.keyMinutes,
    ],
    [
      'a place that is named twice is got at once',
      { ...feed, reaches: ['sensor', 'sensor'] },
      KEY_ON,
      2 + COSTS.accessMinutes,
    ],
    [
      'other clips',
      { ...feed, arrangement: 'bridge' },
      { ...KEY_ON, reached: ['sensor'] },
      2 + COSTS.arrangeMinutes,
    ],
  ])('%s', (_, asked, now, minutes) => {
    expect(cost(asked, now)).toBeCloseTo(minutes, 12);
  });
  test('minutes are told by what they go into', () => {
    const asked = simpleTest('x', {
      minutes: 2,
      state: 'running',
      unplugged: ['plug', 'other'],
      reaches: ['sensor', 'module', 'plug'],
      arrangement: 'bridge',
    });
    const now: Situation = { state: 'key-off', unplugged: ['third'], reached: ['module'] };
    // by hand: key 0.5, engine 1.5 and the walk 0.5; three plugs of 1, two places of 3, clips 0.5
    expect(testCost(asked, now, COSTS, false)).toEqual({
      minutes: 14,
      reading: 2,
      state: 2.5,
      plugs: 3,
      access: 6,
      arrange: 0.5,
    });
  });
  test('alone, a change of state costs the walk to the seat as well', () => {
    const now = { ...AT_THE_START, reached: ['sensor'] };
    expect(cost(feed, now, false) - cost(feed, now, true)).toBeCloseTo(COSTS.aloneMinutes, 12);
    const running = { ...feed, state: 'running' as const };
    expect(cost(running, now, false) - cost(running, now, true)).toBeCloseTo(
      COSTS.aloneMinutes,
      12,
    );
    expect(cost(feed, KEY_ON, false)).toBe(cost(feed, KEY_ON, true));
  });
  test('after a test its state, connectors, places and clips stand', () => {
    const asked = simpleTest('x', {
      state: 'running',
      unplugged: ['sensor', 'module'],
      reaches: ['sensor'],
      arrangement: 'clips',
    });
    const after = situationAfter(asked, { ...KEY_ON, reached: ['module'], arrangement: 'other' });
    expect(after).toEqual({
      state: 'running',
      unplugged: ['module', 'sensor'],
      reached: ['module', 'sensor'],
      arrangement: 'clips',
    });
    const first = { ...KEY_ON, reached: ['sensor'] };
    expect(situationAfter(simpleTest('z', { reaches: ['module', 'sensor'] }), first)).toEqual({
      ...KEY_ON,
      reached: ['module', 'sensor'],
    });
    expect(situationAfter(simpleTest('y'), after)).toEqual({
      state: 'key-on',
      unplugged: [],
      reached: ['module', 'sensor'],
    });
  });
  test('what is needed and not at hand, or not safe, rules a test out', () => {
    const asked = simpleTest('pattern', { needs: ['scope', 'helper'], state: 'cranking' });
    expect(canDo(asked, { has: ['meter'], helper: false, without: ['cranking'] })).toEqual({
      can: false,
      missing: ['scope', 'helper', 'cranking'],
    });
    expect(canDo(asked, { has: null, helper: true, without: [] }).can).toBe(true);
    expect(canDo(asked, { has: null, helper: false, without: [] }).missing).toEqual(['helper']);
    expect(canDo(asked, { has: ['scope'], helper: true, without: ['running'] })).toEqual({
      can: true,
      missing: [],
    });
  });
});

/** Signal wire open, sensor dead, module dead, wheel damaged; each test parts one off. */
const FAULTS = ['wire.signal.open', 'sensor.dead', 'module.dead', 'wheel.damaged'] as const;
const SHOWS: Record<string, readonly number[]> = {
  'pull-up at the sensor': [0, 5, 0, 5],
  'pull-up at the module': [5, 5, 0, 5],
  injection: [0, 1, 0, 1],
  bypass: [1, 0, 0, 1],
  spare: [0, 1, 0, 0],
  wheel: [1, 1, 1, 0],
};
const PLACES: Record<string, Partial<TableTest>> = {
  'pull-up at the sensor': { family: 'signal', reaches: ['sensor'], needs: ['meter'] },
  'pull-up at the module': { family: 'signal', reaches: ['module'], needs: ['meter'], minutes: 4 },
  injection: { reaches: ['sensor'], needs: ['test-light'] },
  bypass: { reaches: ['module', 'sensor'], needs: ['lead'], minutes: 3 },
  spare: { reaches: ['sensor'], needs: ['spare-sensor'] },
  wheel: { state: 'key-off', needs: ['eyes'], minutes: 6 },
};
const tests = Object.entries(PLACES).map(([id, more]) => simpleTest(id, more));
const candidates = FAULTS.map((id, index) => ({
  id,
  words: `the ${id.split('.')[0]} of fault ${index}`,
  repair: `repair ${id}`,
  weight: [4, 3, 0.5, 0.5][index]!,
}));
const table = buildTable(
  candidates,
  tests,
  (id, { id: asked }, sample) => {
    const value = SHOWS[asked]![FAULTS.indexOf(id as (typeof FAULTS)[number])]!;
    return asked.startsWith('pull-up') ? volts(value * (0.99 + 0.0003 * sample)) : look(value);
  },
  64,
);
const outcomes = outcomesOf(table);
const ask: ProposalAsk = { now: KEY_ON, means: ALL_MEANS, outcomes };
const named = (id: string) => tests.findIndex((one) => one.id === id);
/** What every test shows with the signal wire open. */
const wireOpen = (...ids: string[]): Reading[] =>
  ids.map((id) => ({ test: named(id), shown: table.shown(named(id), 0)[4]! }));

describe('proposals', () => {
  test('three at most, the best first, each with what the leaders would show and why', () => {
    const { best } = proposeTests(table, rankSuspects(table, []), ask);
    expect(best).toHaveLength(3);
    const [first] = best;
    expect(tests[first!.test]!.reaches).toEqual(['sensor']);
    expect(first!.shows.map(({ id }) => id).slice(0, 2)).toEqual([
      'wire.signal.open',
      'sensor.dead',
    ]);
    expect(first!.why).toMatch(
      /^if the wire of fault 0: (about 0.*V|the light stays off); if the sensor of fault 1: (about 5 V|the light is bright); takes 4 min, 3 of them to get there$/,
    );
    expect(best[1]!.minutesToRepair).toBeGreaterThanOrEqual(first!.minutesToRepair);
  });
  test('what is not at hand, not safe or already done is not proposed', () => {
    const means = { has: ['meter', 'lead', 'eyes'], helper: false, without: ['key-off'] as const };
    const { all } = proposeTests(table, rankSuspects(table, []), {
      ...ask,
      means,
      without: [named('bypass')],
    });
    expect(all.map(({ test: index }) => tests[index]!.id).sort()).toEqual([
      'pull-up at the module',
      'pull-up at the sensor',
    ]);
  });
  test('where one already is counts: at the module the module is measured first', () => {
    const now = { ...KEY_ON, reached: ['module'] };
    const bare = rankSuspects(table, [], Float64Array.from([0.3, 0.1, 0.5, 0.1]));
    const { best } = proposeTests(table, bare, { ...ask, now });
    expect(tests[best[0]!.test]!.id).toBe('pull-up at the module');
  });
  test('each test is worth its bits by its minutes, and no more than four suspects are told', () => {
    const many = Array.from({ length: 6 }, (_, index) => ({
      id: `f${index}`,
      repair: `r${index}`,
      weight: 1,
    }));
    const columns = [simpleTest('a', { minutes: 2 }), simpleTest('b', { minutes: 4 })];
    const wide = buildTable(many, columns, (id) => look(Number(id.slice(1)) % 2), 1);
    const { all, best } = proposeTests(wide, rankSuspects(wide, []), {
      ...ask,
      outcomes: outcomesOf(wide),
    });
    for (const { bits, bitsPerMinute, cost } of all) {
      expect(bits).toBeCloseTo(1, 12); // halves of six alike
      expect(bitsPerMinute).toBeCloseTo(bits / cost.minutes, 12);
    }
    expect(all.map(({ cost }) => cost.minutes)).toEqual([2, 4]);
    expect(best[0]!.shows).toHaveLength(4);
  });
  test('a strategy has only tests that can be done', () => {
    const means = { has: ['meter', 'lead'], helper: false, without: [] };
    const found = findOptimum(table, { start: KEY_ON, means });
    const used = new Set<string>();
    const walk = (at: typeof found.strategy): void => {
      if (at.kind === 'conclude') return;
      used.add(tests[at.test]!.id);
      for (const { next } of at.branches) walk(next);
    };
    walk(found.strategy);
    for (const id of used) expect(['meter', 'lead']).toContain(PLACES[id]!.needs![0]);
    expect(used.size).toBeGreaterThan(0);
    // of what is left when the unlikeliest are left out, the bound is per unit of chance
    const most = findOptimum(table, { start: KEY_ON, massKept: 0.8 });
    expect(most.cases.mass).toBeLessThan(0.95);
    expect(most.bound).toBeCloseTo(most.minutes, 9);
  });
  test('all tests that can be done are listed by bits per minute, of equals in their order', () => {
    const columns = [4, 1, 2, 1].map((minutes, index) => simpleTest(`c${index}`, { minutes }));
    const looks = matrixTable(
      ['a', 'b'].map((id) => ({ id, repair: id, weight: 1 })),
      [0, 1].map((shown) => columns.map(() => shown)),
      columns,
    );
    const proposed = proposeTests(looks, rankSuspects(looks, []), {
      ...ask,
      outcomes: outcomesOf(looks),
    });
    expect(proposed.all.map(({ test: index }) => index)).toEqual([1, 3, 2, 0]);
    // the job is done after any of them, so the cheapest are the best three
    expect(
      proposed.best.map(({ test: index, minutesToRepair }) => [index, minutesToRepair]),
    ).toEqual([
      [1, 1],
      [3, 1],
      [2, 2],
    ]);
  });
  test('of nine tests that tell the same the dearest is not followed, and comes last', () => {
    const columns = Array.from({ length: 9 }, (_, index) =>
      simpleTest(`c${index}`, { minutes: 9 - index }),
    );
    const looks = matrixTable(
      ['a', 'b'].map((id) => ({ id, repair: id, weight: 1 })),
      [0, 1].map((shown) => columns.map(() => shown)),
      columns,
    );
    const minutesOf = (...without: number[]) =>
      proposeTests(looks, rankSuspects(looks, []), {
        ...ask,
        outcomes: outcomesOf(looks),
        without,
      }).best.map(({ minutesToRepair }) => minutesToRepair);
    expect(minutesOf()).toEqual([1, 2, 3]);
    expect(minutesOf(3, 4, 5, 6, 7, 8)).toEqual([7, 8, 9]);
  });
  test('the best is the one after which the job is done soonest, not the one that tells most per minute', () => {
    const columns = [2, 3, 8].map((minutes, index) => simpleTest(`c${index}`, { minutes }));
    const looks = matrixTable(
      [1, 1, 2].map((weight, index) => ({ id: `f${index}`, repair: `r${index}`, weight })),
      [
        [1, 0, 1],
        [0, 0, 1],
        [0, 1, 0],
      ],
      columns,
    );
    const { all, best } = proposeTests(looks, rankSuspects(looks, []), {
      ...ask,
      outcomes: outcomesOf(looks),
    });
    // by hand: 0.81 bits in 2 minutes, 1 bit in 3, 1 bit in 8
    expect(all.map(({ test: index }) => index)).toEqual([0, 1, 2]);
    // then three quarters of the other's 3 minutes, or half of the other's 2
    expect(best.map(({ test: index, minutesToRepair }) => [index, minutesToRepair])).toEqual([
      [1, expect.closeTo(3 + 0.5 * 2, 9)],
      [0, expect.closeTo(2 + 0.75 * 3, 9)],
      [2, expect.closeTo(8 + 0.5 * 2, 9)],
    ]);
  });
  test('the unlikeliest are left out of the look ahead when that is asked for', () => {
    const columns = [5, 2].map((minutes, index) => simpleTest(`c${index}`, { minutes }));
    const looks = matrixTable(
      [6, 3, 1].map((weight, index) => ({ id: `f${index}`, repair: `r${index}`, weight })),
      [
        [0, 0],
        [1, 0],
        [1, 1],
      ],
      columns,
    );
    const minutesOf = (more: Partial<ProposalAsk>) =>
      proposeTests(looks, rankSuspects(looks, []), {
        ...ask,
        outcomes: outcomesOf(looks),
        ...more,
      }).best.find(({ test: index }) => index === 0)!.minutesToRepair;
    expect(minutesOf({})).toBeCloseTo(5 + 0.4 * 2, 9);
    expect(minutesOf({ massKept: 0.85 })).toBeCloseTo(5, 9); // without the last
  });
  test('minutes to the repair are per unit of the chance that is looked at', () => {
    const looks = matrixTable(
      [6, 3, 1].map((weight, index) => ({ id: `f${index}`, repair: `r${index}`, weight })),
      [[0], [1], [2]],
      [simpleTest('t', { minutes: 5 })],
    );
    const at = (massKept?: number) =>
      proposeTests(looks, rankSuspects(looks, []), {
        ...ask,
        outcomes: outcomesOf(looks),
        ...(massKept !== undefined && { massKept }),
      }).best.map(({ minutesToRepair }) => minutesToRepair);
    expect(at()).toEqual([expect.closeTo(5, 9)]);
    expect(at(0.85)).toEqual([expect.closeTo(5, 9)]);
  });
  test('why it is proposed sets the leader against the first suspect that would show something else', () => {
    const why = (
      suspects: readonly (readonly [id: string, repair: string, weight: number])[],
      shown: readonly number[],
      more: Partial<TableTest> = {},
    ) => {
      const looks = matrixTable(
        suspects.map(([id, repair, weight]) => ({ id, repair, weight, words: `words of ${id}` })),
        shown.map((one) => [one]),
        [simpleTest('t', more)],
      );
      const proposed = proposeTests(looks, rankSuspects(looks, []), {
        ...ask,
        outcomes: outcomesOf(looks),
      });
      return proposed.best[0]?.why;
    };
    const { dark, lit } = LOOK_WORDS;
    expect(
      why(
        [
          ['a', 'A', 3],
          ['a2', 'A', 2],
          ['b', 'B', 2],
          ['c', 'C', 1],
        ],
        [0, 1, 0, 1],
      ),
    ).toBe(`if words of a: ${dark}; if words of c: ${lit}; takes 1 min`);
    expect(
      why(
        [
          ['healthy', 'healthy', 3],
          ['b', 'B', 2],
        ],
        [0, 1],
        { reaches: ['far'] },
      ),
    ).toBe(
      `if the circuit is healthy: ${dark}; if words of b: ${lit}; takes 4 min, 3 of them to get there`,
    );
    expect(
      why(
        [
          ['b', 'B', 3],
          ['healthy', 'healthy', 2],
        ],
        [0, 1],
        { minutes: 1.26 },
      ),
    ).toBe(`if words of b: ${dark}; if the circuit is healthy: ${lit}; takes 1.3 min`);
    // only another fault with the leader's repair would show something else
    expect(
      why(
        [
          ['a', 'A', 3],
          ['a2', 'A', 2],
          ['b', 'B', 2],
        ],
        [0, 1, 0],
      ),
    ).toBe('tells the less likely suspects apart; 1 min');
  });
  test('the expected drop is what is unknown now less what each outcome leaves', () => {
    const faults = buildTable(
      [
        { id: 'a', repair: 'A', weight: 2 },
        { id: 'b1', repair: 'B', weight: 1 },
        { id: 'b2', repair: 'B', weight: 1 },
      ],
      [simpleTest('t')],
      (id, _, sample) => look(id === 'a' || (id === 'b1' && sample === 0) ? 0 : 1),
      2,
    );
    // dark: half of all by A and an eighth by B; lit: three eighths by B, so nothing is left to ask
    const left = (5 / 8) * entropyBits([4 / 5, 1 / 5]);
    const found = expectedDrop(faults, rankSuspects(faults, []), outcomesOf(faults)(0));
    expect(found).toBeCloseTo(1 - left, 12);
  });
  test('nothing is proposed when one repair is left', () => {
    const sure = rankSuspects(table, [], Float64Array.from([1, 0, 0, 0]));
    expect(proposeTests(table, sure, ask).best).toEqual([]);
  });
  test('the cheapest strategy parts all four repairs in three tests at most', () => {
    const found = findOptimum(table, { start: KEY_ON });
    expect(found.exact).toBe(true);
    expect(longestPath(found.strategy)).toBeLessThanOrEqual(3);
  });
});

describe('corroboration', () => {
  const weigh = (
    readings: readonly Reading[],
    concluded: readonly string[] = ['wire.signal.open'],
  ) =>
    corroborate(table, {
      concluded,
      readings,
      ranking: rankSuspects(table, readings),
      outcomes,
      now: KEY_ON,
      means: ALL_MEANS,
    });
  test('nothing measured, nothing proven', () => {
    expect(weigh([])).toMatchObject({ proven: false, missing: 3, evidence: [] });
  });
  test('one piece: two are missing, and tests that speak against the rival are offered, the cheapest first', () => {
    const found = weigh(wireOpen('pull-up at the sensor'));
    expect(found.evidence).toHaveLength(1);
    expect(found.evidence[0]).toMatchObject({ reading: 0, against: 'repair sensor.dead' });
    expect(found.missing).toBe(2);
    // The module shows 0 V there too; of what is left, only these two tell it from the wire.
    expect(found.rival!.repair).toBe('repair module.dead');
    expect(found.offers.map(({ test: index }) => tests[index]!.id)).toEqual([
      'pull-up at the module',
      'bypass',
    ]);
    expect(found.offers[0]!.minutes).toBe(4 + COSTS.accessMinutes);
  });
  test('three kinds of test prove the wire', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'pull-up at the module', 'injection'));
    expect(found.proven).toBe(true);
    expect(found.chance).toBeGreaterThan(0.9);
    expect(found.evidence.every(({ ratio }) => ratio >= 3)).toBe(true);
    expect(found.evidence.map(({ reading }) => reading).sort()).toEqual([0, 1, 2]);
    expect(found.ruledOut.find(({ repair }) => repair === 'repair module.dead')).toMatchObject({
      readings: [1],
    });
  });
  test('the order of the readings does not matter', () => {
    const ids = ['injection', 'wheel', 'bypass', 'pull-up at the sensor'];
    const one = weigh(wireOpen(...ids));
    const other = weigh(wireOpen(...[...ids].reverse()));
    const tested = (found: typeof one) =>
      found.evidence.map(({ test: index, against }) => [index, against]);
    expect(tested(other)).toEqual(tested(one));
    expect(other.proven).toBe(one.proven);
  });
  test('the same test twice is one piece', () => {
    const once = weigh(wireOpen('bypass', 'pull-up at the module'));
    const twice = weigh(wireOpen('bypass', 'bypass', 'pull-up at the module'));
    expect(twice.missing).toBe(once.missing);
    expect(twice.evidence).toHaveLength(once.evidence.length);
  });
  test('a reading that contradicts the conclusion is no evidence, and stops the proof', () => {
    const readings = wireOpen('pull-up at the sensor', 'pull-up at the module', 'injection');
    const odd = { test: named('bypass'), shown: look(0) };
    const found = weigh([...readings, odd]);
    expect(found.evidence.some(({ reading }) => reading === 3)).toBe(false);
    expect(found.proven).toBe(false);
  });
  test('a reading that the conclusion explains badly is no evidence, though the rival explains it worse', () => {
    // 5.31 V is three standard deviations above what the module's pull-up gives; a dead module gives 0 V.
    const odd = { test: named('pull-up at the module'), shown: volts(5.31) };
    const prior = Float64Array.from([0.5, 0, 0.5, 0]);
    const found = corroborate(table, {
      concluded: ['wire.signal.open'],
      readings: [odd],
      ranking: rankSuspects(table, [odd], prior),
      prior,
      outcomes,
      now: KEY_ON,
      means: ALL_MEANS,
    });
    expect(found.chance).toBeGreaterThan(0.75);
    expect(found.evidence).toEqual([]);
  });
  test('one strong reading does not stand for two: each rival must be contradicted in its turn', () => {
    const prior = Float64Array.from([4 / 7.8, 3 / 7.8, 0.5 / 7.8, 0.3 / 7.8]);
    const readings = ['pull-up at the sensor', 'spare', 'injection'].map((id) => ({
      test: named(id),
      shown: table.shown(named(id), 1)[4]!,
    }));
    const ranking = rankSuspects(table, readings, prior);
    const asked = {
      concluded: ['sensor.dead'],
      readings,
      ranking,
      prior,
      outcomes,
      now: KEY_ON,
      means: ALL_MEANS,
    };
    const found = corroborate(table, asked);
    expect(found.evidence.map(({ against }) => against)).toEqual([
      'repair wire.signal.open',
      'repair wire.signal.open',
      'repair wheel.damaged',
    ]);
    expect(found.proven).toBe(true);
    // The same three pieces, but a ranking in which the wheel still stands.
    const doubtful = rankSuspects(table, readings, Float64Array.from([0.005, 0.01, 0.005, 0.98]));
    const open = corroborate(table, { ...asked, ranking: doubtful });
    expect(open).toMatchObject({
      proven: false,
      missing: 1,
      rival: { repair: 'repair wheel.damaged', chance: doubtful.chances[3] },
    });
  });
  test('the wrong conclusion is never proven', () => {
    const readings = wireOpen(...Object.keys(PLACES));
    for (const id of FAULTS.slice(1)) expect(weigh(readings, [id]).proven).toBe(false);
    expect(weigh(readings).proven).toBe(true);
    expect(weigh(readings).offers).toEqual([]);
  });
  test('what is all but impossible is ruled out by the reading that spoke most against it', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'pull-up at the module'));
    for (const { repair, chance, readings } of found.ruledOut) {
      expect(chance).toBeLessThan(0.02);
      // the sensor and the wheel leave 5 V at both ends, the module 0 V at both
      expect(readings).toEqual([repair === 'repair module.dead' ? 1 : 0]);
    }
    expect(found.ruledOut.map(({ repair }) => repair)).not.toContain('repair wire.signal.open');
    expect(found.ruledOut.length).toBeGreaterThan(0);
    expect(weigh([]).ruledOut).toEqual([]);
  });
  test('what the repair touches anyway is not listed as ruled out', () => {
    const fault = (id: string, subject: string[] = []) => ({ id, repair: id, weight: 1, subject });
    const looks = matrixTable(
      [fault('both-wires', ['one', 'other']), fault('other'), fault('far')],
      [0, 1, 1].map((shown) => Array.from({ length: 6 }, () => shown)),
    );
    const readings = Array.from({ length: 6 }, (_, test) => ({ test, shown: look(0) }));
    const found = corroborate(looks, {
      concluded: ['both-wires'],
      readings,
      ranking: rankSuspects(looks, readings),
      outcomes: outcomesOf(looks),
      now: KEY_ON,
      means: ALL_MEANS,
    });
    expect(found.ruledOut.map(({ repair }) => repair)).toEqual(['far']);
  });
  test('what was hardly thinkable before is not ruled out by a reading that says nothing of it', () => {
    const unlikely = Float64Array.from([0.5, 0.25, 0.249, 0.001]); // the wheel
    const ruledOut = (...places: string[]) => {
      const readings = wireOpen(...places);
      const ranking = rankSuspects(table, readings, unlikely);
      const ask = { concluded: ['wire.signal.open'], readings, ranking, prior: unlikely };
      const found = corroborate(table, { ...ask, outcomes, now: KEY_ON, means: ALL_MEANS });
      return found.ruledOut.map(({ repair }) => repair);
    };
    // 5 V at the module whether the wire is open or the wheel damaged; at the sensor only then
    expect(ruledOut('pull-up at the module')).toEqual(['repair module.dead']);
    expect(ruledOut('pull-up at the sensor')).toContain('repair wheel.damaged');
  });
  test('no offer is a test that was done, that is like one that told, or that cannot be done', () => {
    const found = weigh(wireOpen('pull-up at the sensor', 'wheel'));
    const offered = found.offers.map(({ test: index }) => tests[index]!.id);
    expect(offered).not.toContain('wheel');
    expect(offered).not.toContain('pull-up at the sensor');
    const readings = wireOpen('pull-up at the sensor');
    const poor = corroborate(table, {
      concluded: ['wire.signal.open'],
      readings,
      ranking: rankSuspects(table, readings),
      outcomes,
      now: KEY_ON,
      means: { has: ['meter'], helper: false, without: [] },
    });
    expect(poor.offers.map(({ test: index }) => tests[index]!.id)).toEqual([
      'pull-up at the module',
    ]);
  });
  test('a test that was done and told nothing is not offered again', () => {
    // 2.5 V is neither what the wire nor what the module gives
    const odd = { test: named('pull-up at the module'), shown: volts(2.5) };
    const found = weigh([...wireOpen('pull-up at the sensor'), odd]);
    const offered = found.offers.map(({ test: index }) => tests[index]!.id);
    expect(offered).not.toContain('pull-up at the module');
    expect(offered).toContain('bypass');
  });
  test('the cheapest offer from where one stands comes first', () => {
    const readings = wireOpen('pull-up at the sensor');
    const { offers } = corroborate(table, {
      concluded: ['wire.signal.open'],
      readings,
      ranking: rankSuspects(table, readings),
      outcomes,
      now: { ...KEY_ON, reached: ['module', 'sensor'] },
      means: ALL_MEANS,
    });
    // all is reached already: 3 minutes for the bypass, 4 for the pull-up at the module
    expect(offers.map(({ test: index }) => tests[index]!.id)).toEqual([
      'bypass',
      'pull-up at the module',
    ]);
    for (const { chance } of offers) expect(chance).toBeCloseTo(1, 9);
  });
  test('when everything else is impossible nothing is missing', () => {
    const prior = Float64Array.from([1, 0, 0, 0]);
    const sure = corroborate(table, {
      concluded: ['wire.signal.open'],
      readings: [],
      ranking: rankSuspects(table, [], prior),
      prior,
      outcomes,
      now: KEY_ON,
      means: ALL_MEANS,
    });
    expect(sure).toMatchObject({ proven: true, missing: 0, rival: null, offers: [] });
  });
  test('a fault that is not in the circuit is a mistake of the caller', () => {
    expect(() => weigh([], ['nothing'])).toThrow('no such fault');
  });
});
