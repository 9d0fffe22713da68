/** The suspects of a session and the tests they are weighed by; what each test shows is set by hand. */
import { describe, expect, it } from 'vitest';
import type { Look, Shown, Test } from '../../src/circuit/test.ts';
import { type SpaceAsk, SuspectSpace } from '../../src/session/suspect-space.ts';
import { tableTest } from '../../src/session/test-table.ts';
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
const known = (test: Test, id: string) =>
  tableTest(model, test, { id, words: id, family: 'signal', minutes: 1, needs: [] });
const WAKING = { ...known(AT_MODULE, 'moved'), test: null };
const lit = (isLit: boolean): Shown => ({ kind: 'look', look: isLit ? 'lit' : 'dark' });

/** Two faults; the light at the feed is dark under the first, the one at the signal under the second. */
function space(part: Partial<SpaceAsk> = {}): SuspectSpace {
  return new SuspectSpace({
    model,
    candidates: ['feed', 'signal', 'healthy'].map((id) => ({ id, repair: id, weight: 1 })),
    tests: [known(AT_FEED, 'feed'), known(AT_SIGNAL, 'signal'), WAKING],
    shows: (candidate, { id }) => lit(candidate !== id),
    samples: 4,
    prior: Float64Array.of(1 / 3, 1 / 3, 1 / 3),
    ...part,
  });
}
const reading = (test: number, look: Look) => ({ test, shown: { kind: 'look', look } as const });

describe('the place of a test', () => {
  it('is where the procedure or the circuit has it, whatever the words', () => {
    const of = space();
    expect([of.placeOf(AT_FEED, 'the feed'), of.placeOf(AT_SIGNAL, 'x')]).toEqual([0, 1]);
    expect(of.testAt(1).words).toBe('signal');
  });
  it('is taken once for one that a person thinks of, under its own words', () => {
    const of = space();
    const own = lightAt('module.reference');
    const other = lightAt('module.ground');
    expect([of.placeOf(own, 'my own'), of.placeOf(own, 'again'), of.placeOf(other, 'b')]).toEqual([
      3, 3, 4,
    ]);
    expect(of.testAt(3)).toMatchObject({
      words: 'my own',
      family: 'light',
      minutes: 1,
      needs: ['test-light'],
      test: own,
    });
    expect(of.testAt(3).id).not.toBe(of.testAt(4).id);
  });
  it('is nowhere for what the model cannot answer', () => {
    const of = space();
    expect(of.placeOf(lightAt('sensor.nowhere'), 'lost')).toBeNull();
    expect(of.placeOf(lightAt('module.reference'), 'found')).toBe(3);
  });
  it('of a step that wakes a fault is told by its id', () => {
    const of = space();
    expect([of.placeOfWaking('moved'), of.placeOfWaking('unknown')]).toEqual([2, null]);
    // the same leads in a test that reads something are another test
    expect(of.placeOf(AT_MODULE, 'read')).toBe(3);
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
