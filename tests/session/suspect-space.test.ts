/** The suspects of a session and the tests they are weighed by; what each test shows is set by hand. */
import { describe, expect, it } from 'vitest';
import type { Look, Shown, Test } from '../../src/circuit/test.ts';
import { type Answers, type SpaceAsk, SuspectSpace } from '../../src/session/suspect-space.ts';
import { testTable } from '../../src/session/test-table.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import type { CarsOf } from '../../src/suspects/suspect-cars.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';

const model = modelOf('hall-module-fed', 4);
const lightAt = (plus: string): Test => ({
  setup: setupOf(),
  probe: { kind: 'light', plus, minus: 'battery.negative' },
});
const [AT_FEED, AT_SIGNAL, AT_MODULE] = ['sensor.feed', 'sensor.signal', 'module.signal'].map(
  lightAt,
) as [Test, Test, Test];
const table = testTable(model.circuit, null, model.meter);
const known = (test: Test, id: string) => ({
  ...table.entryOf(test),
  ...{ id, words: id, family: 'signal', minutes: 1, needs: [] },
});
const WAKING = { ...known(AT_MODULE, 'moved'), test: null };
const lit = (isLit: boolean): Shown => ({ kind: 'look', look: isLit ? 'lit' : 'dark' });

type Fixed = Extract<Answers, { over: 'samples' }>;
const fixed = (shows: Fixed['shows']): Answers => ({ over: 'samples', samples: 4, shows });

/** Two faults; the light at the feed is dark under the first, the one at the signal under the second. */
function space(part: Partial<SpaceAsk> = {}): SuspectSpace {
  return new SuspectSpace({
    model,
    table,
    candidates: ['feed', 'signal', 'healthy'].map((id) => ({ id, repair: id, weight: 1 })),
    faultsOf: (id) => (id === 'healthy' ? [] : id.split('+')),
    tests: [known(AT_FEED, 'feed'), known(AT_SIGNAL, 'signal'), WAKING],
    answers: fixed((candidate, { id }) => lit(candidate !== id)),
    prior: Float64Array.of(1 / 3, 1 / 3, 1 / 3),
    ...part,
  });
}
const reading = (test: number, look: Look) => ({ test, shown: { kind: 'look', look } as const });

describe('the place of a test', () => {
  it('is where the procedure or the circuit has it', () => {
    const of = space();
    expect([of.placeOf(AT_FEED), of.placeOf(AT_SIGNAL)]).toEqual([0, 1]);
    expect(of.testAt(1).words).toBe('signal');
  });
  it('is taken once for one that a person thinks of, as the table has it', () => {
    const of = space();
    const own = lightAt('module.reference');
    const other = lightAt('module.ground');
    expect([of.placeOf(own), of.placeOf(own), of.placeOf(other)]).toEqual([3, 3, 4]);
    expect(of.testAt(3)).toBe(table.entryOf(own));
    expect(of.testAt(3).id).not.toBe(of.testAt(4).id);
  });
  it('is another one where the harness is moved', () => {
    const of = space();
    expect(of.placeOf({ ...AT_FEED, wiggle: true })).toBe(3);
  });
  it('is nowhere for what the model cannot answer', () => {
    const of = space();
    expect(of.placeOf(lightAt('sensor.nowhere'))).toBeNull();
    expect(of.placeOf(lightAt('module.reference'))).toBe(3);
  });
  it('of a step that wakes a fault is told by its id', () => {
    const of = space();
    expect([of.placeOfWaking('moved'), of.placeOfWaking('unknown')]).toEqual([2, null]);
    // the same leads in a test that reads something are another test
    expect(of.placeOf(AT_MODULE)).toBe(3);
  });
});

describe('the chances', () => {
  it('are computed once for the same readings, and anew for others', () => {
    const of = space();
    const dark = of.rank([reading(0, 'dark')]);
    expect(of.rank([reading(0, 'dark')])).toBe(dark);
    expect(dark.suspects[0]?.id).toBe('feed');
    const others = [[reading(0, 'lit')], [reading(1, 'dark')], []].map((list) => of.rank(list));
    expect(new Set([dark, ...others]).size).toBe(4);
    expect(others[1]!.suspects[0]?.id).toBe('signal');
  });
  it('of numbers tell an over-limit from a value', () => {
    const ohms = (value: number): Shown => ({ kind: 'number', value, unit: 'ohm' });
    const of = space({ answers: fixed((candidate) => ohms(candidate === 'feed' ? Infinity : 1)) });
    const first = (value: number) =>
      of.rank([{ test: 0, shown: ohms(value), standardUncertainty: 0.1 }]).suspects[0]!;
    expect(first(1).id).not.toBe('feed');
    expect(first(Infinity).id).toBe('feed');
  });
});

describe('what is offered', () => {
  const standing = (of: SuspectSpace, ...readings: ReturnType<typeof reading>[]) => ({
    readings,
    ranking: of.rank(readings),
    now: AT_THE_START,
    means: ALL_MEANS,
  });
  const proposed = (of: SuspectSpace, ...readings: ReturnType<typeof reading>[]) =>
    of.propose(standing(of, ...readings)).best.map(({ test }) => test);
  it('is a test of the table that was not done, and no step that wakes a fault', () => {
    const of = space();
    expect(of.offered()).toEqual([0, 1]);
    expect(proposed(of).sort()).toEqual([0, 1]);
    expect(proposed(of, reading(0, 'lit'))).toEqual([1]);
  });
  it('is never one that a person thought of, which would be offered once and not the next time', () => {
    const of = space();
    of.placeOf(lightAt('module.reference'));
    expect(of.offered()).toEqual([0, 1]);
    const { offers } = of.weigh(['feed'], standing(of))!;
    expect(offers.length).toBeGreaterThan(0);
    for (const { test } of offers) expect(test).toBeLessThan(2);
  });
  it('is planned once', () => {
    const of = space();
    expect(of.plan()).toBe(of.plan());
    expect(of.plan().strategy.kind).toBe('test');
  });
});

describe('the candidates that a conclusion names', () => {
  const of = space({
    candidates: ['feed', 'signal', 'feed+signal', 'healthy'].map((id) => ({
      id,
      repair: id,
      weight: 1,
    })),
    prior: Float64Array.of(0.25, 0.25, 0.25, 0.25),
  });
  it.each<[string, string[], string[]]>([
    ['are its faults', ['feed'], ['feed']],
    ['are all that its faults make up', ['feed', 'signal'], ['feed', 'signal', 'feed+signal']],
    ['are the healthy circuit where it names none', [], ['healthy']],
    ['are none where it names others', ['elsewhere'], []],
  ])('%s', (_, faults, named) => {
    expect(of.namedBy(faults)).toEqual(named);
  });
  it('are all with one of two faults where only one was found', () => {
    const two = space({
      candidates: ['feed+signal', 'feed+ground', 'signal+ground'].map((id) => ({
        id,
        repair: id,
        weight: 1,
      })),
    });
    expect(two.namedBy(['feed'])).toEqual(['feed+signal', 'feed+ground']);
    expect(two.namedBy([])).toEqual([]);
  });
  it('weigh nothing where there are none', () => {
    const ranking = of.rank([]);
    const now = { readings: [], ranking, now: AT_THE_START, means: ALL_MEANS };
    expect(of.weigh([], now)).toBeNull();
    expect(of.weigh(['feed'], now)).not.toBeNull();
  });
});

/** The same over cars: `both` says what two faults show together, a point of one value for each car. */
describe('over all cars', () => {
  const BOTH = [reading(0, 'dark'), reading(1, 'dark')];
  type Both = (first: string, second: string, test: string) => Shown;
  function overCars(both: Both | null, asked: unknown[] = []): SuspectSpace {
    return space({
      answers: {
        over: 'cars',
        sampler: (testAt) => {
          const cars = (shows: (test: string) => Shown): CarsOf => ({
            start: (count) => Float64Array.from({ length: count }, (_, at) => (at + 0.5) / count),
            isPossible: () => true,
            ways: (test, point) => {
              asked.push(point[0]);
              return [{ shown: shows(testAt(test).id), share: 1 }];
            },
            outside: null,
          });
          return {
            dims: 1,
            cars: (candidate) => cars((test) => lit(candidate !== test)),
            pair: both && ((first, second) => cars((test) => both(first, second, test))),
          };
        },
      },
    });
  }

  it('the tests are asked of cars all over the cube', () => {
    const asked: number[] = [];
    expect(overCars(null, asked).rank([reading(0, 'dark')]).suspects[0]?.id).toBe('feed');
    expect(Math.min(...asked)).toBeLessThan(0.02);
    expect(Math.max(...asked)).toBeGreaterThan(0.98);
  });
  it('two faults at once are thought of where cars can have them, and else not', () => {
    const pairs = (of: SuspectSpace) => of.rank(BOTH).pairs.map(({ ids }) => [...ids].sort());
    expect(pairs(overCars(() => lit(false)))).toContainEqual(['feed', 'signal']);
    expect(pairs(overCars(null))).toEqual([]);
  });
  it('and the ranking shows them, car by car', () => {
    const ranking = overCars((...ids) => lit(ids.includes('healthy'))).rank(BOTH);
    const { samples } = ranking.table;
    expect(ranking.showsPair?.('feed', 'signal', 1)).toEqual(Array(samples).fill(lit(false)));
    expect(ranking.showsPair?.('feed', 'healthy', 1)).toEqual(Array(samples).fill(lit(true)));
    expect(overCars(null).rank(BOTH).showsPair).toBeUndefined();
  });
  it('what is good is asked of the sound circuit, and is unknown where cars are', () => {
    const good = overCars(null).soundShows([reading(0, 'dark')], 0);
    expect(new Set(good?.map((one) => JSON.stringify(one)))).toEqual(
      new Set([JSON.stringify(lit(true))]),
    );
    expect(space().soundShows([], 0)).toBeNull();
  });
});
