/** What a test takes, and the candidates' weights; by hand from what each is. */

import { describe, expect, test } from 'vitest';
import type { Probe, Setup, Test } from '../../src/circuit/test.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { collectTests, needsOf, tableTest } from '../../src/session/test-table.ts';
import { withHealthy } from '../../src/suspects/prior.ts';
import { setupOf } from '../circuit/setup.ts';
import { METER, modelOf } from '../circuit/shipped.ts';
import { TREE } from './sample-tree.ts';

const model = modelOf('hall-module-fed', 4);
const ends = { plus: 'sensor.feed', minus: 'battery.negative' } as const;
const of = (probe: Probe, setup: Partial<Setup> = {}): Test => ({ setup: setupOf(setup), probe });
const words = { id: 'x', words: 'a test', family: 'signal', minutes: 1, needs: [] };

describe('what has to be at hand', () => {
  const bridge = (through: Setup['bridges'][number]['through']) =>
    of({ kind: 'volts', ...ends }, { bridges: [{ from: 'a.b', to: 'c.d', through }] });
  test.each<[string, Test, string[]]>([
    ['volts', of({ kind: 'volts', ...ends }), []],
    ['a pattern', of({ kind: 'pattern', ...ends }), ['scope']],
    ['timing', of({ kind: 'timing', ...ends }), ['scope']],
    ['a light', of({ kind: 'light', ...ends }), ['test-light']],
    ['a lamp', of({ kind: 'lamp', ...ends }), ['lamp']],
    ['a look with the eyes', of({ kind: 'inspect', of: 'target' }), []],
    ['a lead', bridge('lead'), []],
    ['a light as a bridge', bridge('test-light'), ['test-light']],
    ['a resistor', bridge({ ohms: 1000 }), ['resistor']],
    ['a spare sensor', of({ kind: 'volts', ...ends }, { sensor: 'spare' }), ['spare-sensor']],
  ])('for %s', (_, asked, needs) => {
    expect(needsOf(asked)).toEqual(needs);
  });
});

describe('a test in the table', () => {
  const uncertainty = (asked: Test, value: number) =>
    tableTest(model, asked, words).standardUncertainty?.(value);
  test('reaches the parts that its leads touch, and the battery costs no walk', () => {
    const reaches = (plus: string, minus: string) =>
      tableTest(model, of({ kind: 'volts', plus, minus }), words).reaches;
    expect(reaches('sensor.feed', 'battery.negative')).toEqual(['sensor']);
    expect(reaches('sensor.feed', 'sensor.ground')).toEqual(['sensor']);
    expect(reaches('sensor.feed', 'module.ground')).toEqual(['sensor', 'module']);
  });
  test('is as uncertain as the meter function behind it, and a look is not', () => {
    // 0.5 % of 5 V and 3 counts of 1 mV, 1 % of 500 ohm and 3 counts of 0.1 ohm, over the root of 3
    expect(uncertainty(of({ kind: 'volts', ...ends }), 5)).toBeCloseTo(0.028 / Math.sqrt(3), 9);
    expect(uncertainty(of({ kind: 'ohms', ...ends }), 500)).toBeCloseTo(5.3 / Math.sqrt(3), 9);
    expect(uncertainty(of({ kind: 'light', ...ends }), 5)).toBeUndefined();
    expect(METER.volts.counts).toBe(6000);
  });
  test.each<[string, Probe, string[]]>([
    ['the terminal under the one lead', { kind: 'volts', ...ends }, ['sensor.feed']],
    [
      'both, whichever lead is where',
      { kind: 'ohms', plus: 'sensor.signal', minus: 'module.signal' },
      ['module.signal', 'sensor.signal'],
    ],
    ['what is looked at', { kind: 'inspect', of: 'target' }, ['look target']],
    [
      'the input that is counted',
      { kind: 'counts', input: 'module.signal' },
      ['live data module.signal'],
    ],
  ])('is read at %s', (_, probe, reads) => {
    expect(tableTest(model, of(probe), words).reads).toEqual(reads);
  });
  test('keeps its words, state and connectors', () => {
    const asked = of({ kind: 'volts', ...ends }, { unplugged: ['sensor'] });
    expect(tableTest(model, asked, words)).toMatchObject({
      ...words,
      test: asked,
      state: 'key-on',
      unplugged: ['sensor'],
      arrangement: '',
    });
  });
});

describe('the tests collected', () => {
  const collected = collectTests(model, TREE);
  test("are the tree's under its own names, then the standard ones, each once", () => {
    expect(collected[0]).toMatchObject({ id: 'feed', words: 'Feed', family: 'reference' });
    expect(collected[1]).toMatchObject({ id: 'pattern', words: 'Pattern', needs: ['scope'] });
    const alone = collectTests(model, null);
    expect(alone.length).toBeGreaterThan(20);
    expect(collected.length - alone.length).toBeLessThanOrEqual(2);
    const keys = collected.map(({ test: one }) => JSON.stringify(one));
    expect(new Set(keys).size).toBe(keys.length);
    for (const { id, minutes } of alone) {
      expect(id).not.toBe('');
      expect(minutes).toBeGreaterThan(0);
    }
  });
  test('are none where the tree asks for a number outside the circuit', () => {
    const tree = { ...TREE, steps: { feed: { ...TREE.steps['feed']!, probe: null } as Step } };
    const ids = (of: typeof TREE | null) => collectTests(model, of).map(({ id }) => id);
    expect(ids(tree)).toEqual(ids(null));
  });
  test('are never one that the model refuses', () => {
    const feed = TREE.steps['feed']!;
    const probe = { kind: 'volts' as const, plus: 'sensor.nowhere', minus: 'battery.negative' };
    const tree = { ...TREE, steps: { feed: { ...feed, probe } as typeof feed } };
    expect(collectTests(model, tree).some(({ id }) => id === 'feed')).toBe(false);
  });
});

test('the healthy circuit has a twentieth of all weight', () => {
  const candidates = withHealthy(model.circuit.faults);
  const total = candidates.reduce((sum, { weight }) => sum + weight, 0);
  expect(candidates).toHaveLength(model.circuit.faults.length + 1);
  expect(candidates.at(-1)).toMatchObject({ id: 'healthy', repair: 'healthy', subject: [] });
  expect(candidates.at(-1)!.weight / total).toBeCloseTo(0.05, 12);
  const { id, words: said, repair, weight, subject } = model.circuit.faults[0]!;
  expect(candidates[0]).toMatchObject({ id, words: said, repair, weight, subject });
});
