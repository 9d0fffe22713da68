/** The suspects of a session and the tests they are weighed by; what each test shows is set by hand. */
import { describe, expect, it } from 'vitest';
import type { Look, Shown, Test } from '../../src/circuit/test.ts';
import { type SpaceAsk, SuspectSpace } from '../../src/session/suspect-space.ts';
import { testTable } from '../../src/session/test-table.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
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

/** Two faults; the light at the feed is dark under the first, the one at the signal under the second. */
function space(part: Partial<SpaceAsk> = {}): SuspectSpace {
  return new SuspectSpace({
    model,
    table,
    candidates: ['feed', 'signal', 'healthy'].map((id) => ({ id, repair: id, weight: 1 })),
    faultsOf: (id) => (id === 'healthy' ? [] : id.split('+')),
    tests: [known(AT_FEED, 'feed'), known(AT_SIGNAL, 'signal'), WAKING],
    shows: (candidate, { id }) => lit(candidate !== id),
    samples: 4,
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
    const of = space({ shows: (candidate) => ohms(candidate === 'feed' ? Infinity : 1) });
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

describe('two faults at once', () => {
  const both = [reading(0, 'dark'), reading(1, 'dark')];
  it('are shown sample by sample, the first one first', () => {
    const asked: unknown[] = [];
    const { showsPair } = space({
      showsPair: (ids, test, sample) => {
        asked.push([...ids, test, sample]);
        return lit(false);
      },
    });
    expect(showsPair?.('feed', 'signal', 1)).toEqual([0, 1, 2, 3].map(() => lit(false)));
    expect(asked).toEqual([0, 1, 2, 3].map((sample) => ['feed', 'signal', AT_SIGNAL, sample]));
    expect(() => showsPair?.('feed', 'signal', 2)).toThrow('never woken');
  });
  it('are thought of where the space can tell of them, and else not', () => {
    const pairs = (of: SuspectSpace) => of.rank(both).pairs.map(({ ids }) => [...ids].sort());
    expect(pairs(space({ showsPair: () => lit(false) }))).toEqual([['feed', 'signal']]);
    expect(pairs(space())).toEqual([]);
    expect(space().showsPair).toBeUndefined();
  });
});
