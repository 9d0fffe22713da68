/** The one table of tests: what each takes, in how many minutes; and the candidates' weights. By hand from what each is. */

import { describe, expect, test } from 'vitest';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Probe, Setup, Test } from '../../src/circuit/test.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { withHealthy } from '../../src/suspects/prior.ts';
import { COSTS, testCost } from '../../src/suspects/test-cost.ts';
import { needsOf, ownEntry, type TestEntry, testEntries } from '../../src/suspects/test-entries.ts';
import { setupOf } from '../circuit/setup.ts';
import { METER, modelOf, NAMES } from '../circuit/shipped.ts';
import { shipped } from '../library/shipped.ts';
import { TREE } from '../session/sample-tree.ts';

const model = modelOf('hall-module-fed', 4);
const { circuit } = model;
const ends = { plus: 'sensor.feed', minus: 'battery.negative' } as const;
const of = (probe: Probe, setup: Partial<Setup> = {}): Test => ({ setup: setupOf(setup), probe });
const own = (test: Test): TestEntry => ownEntry(circuit, test, METER, null);
const entries = (procedure: Procedure | null) => testEntries(circuit, procedure, METER);

test('getting at the module takes twice as long as at the sensor, and once', () => {
  const cost = (plus: string, reached: string[] = []) =>
    testCost(
      own(of({ kind: 'volts', plus, minus: 'battery.negative' })),
      { state: 'key-on', unplugged: [], reached },
      COSTS,
      false,
    ).access;
  expect([cost('sensor.feed'), cost('module.signal')]).toEqual([3, 6]);
  expect(cost('module.signal', ['module'])).toBe(0);
});

describe('what has to be at hand', () => {
  const bridge = (through: Setup['bridges'][number]['through']) =>
    of({ kind: 'volts', ...ends }, { bridges: [{ from: 'a.b', to: 'c.d', through }] });
  test.each<[string, Test, string[]]>([
    ['volts', of({ kind: 'volts', ...ends }), ['meter']],
    ['ohms', of({ kind: 'ohms', ...ends }), ['meter']],
    ['live data', of({ kind: 'counts', input: 'module.signal' }), ['live-data']],
    ['a pattern', of({ kind: 'pattern', ...ends }), ['scope']],
    ['timing', of({ kind: 'timing', ...ends }), ['scope']],
    ['a light', of({ kind: 'light', ...ends }), ['test-light']],
    ['a lamp', of({ kind: 'lamp', ...ends }), ['lamp']],
    ['a look with the eyes', of({ kind: 'inspect', of: 'target' }), []],
    ['a lead', bridge('lead'), ['meter', 'lead']],
    ['a light as a bridge', bridge('test-light'), ['meter', 'test-light']],
    ['a resistor', bridge({ ohms: 1000 }), ['meter', 'resistor']],
    [
      'a spare sensor',
      of({ kind: 'volts', ...ends }, { sensor: 'spare' }),
      ['meter', 'spare-sensor'],
    ],
  ])('for %s', (_, asked, needs) => {
    expect(needsOf(asked)).toEqual(needs);
  });
});

test.each(NAMES)('by one rule for every standard test of %s, as the test itself says', (name) => {
  for (const { id, needs, test: one } of standardTests(modelOf(name, 1).circuit))
    expect(new Set(needsOf(one)), id).toEqual(new Set(needs.filter((need) => need !== 'eyes')));
});

describe('a test in the table', () => {
  const uncertainty = (asked: Test, value: number) => own(asked).standardUncertainty?.(value);
  test('reaches the parts that its leads and clips touch, and the battery costs no walk', () => {
    const reaches = (plus: string, minus: string, setup: Partial<Setup> = {}) =>
      own(of({ kind: 'volts', plus, minus }, setup)).reaches;
    expect(reaches('sensor.feed', 'battery.negative')).toEqual(['sensor']);
    expect(reaches('sensor.feed', 'sensor.ground')).toEqual(['sensor']);
    expect(reaches('sensor.feed', 'module.ground')).toEqual(['module', 'sensor']);
    const bridges = [{ from: 'sensor.signal', to: 'battery.negative', through: 'lead' as const }];
    expect(reaches('module.signal', 'battery.negative', { bridges })).toEqual(['module', 'sensor']);
  });
  test('reaches nothing for live data, which are read at the plug of the tester', () => {
    expect(own(of({ kind: 'counts', input: 'module.signal' })).reaches).toEqual([]);
    // what is one piece of evidence goes by the place all the same
    expect(own(of({ kind: 'counts', input: 'module.signal' })).parts).toEqual(['module']);
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
    expect(own(of(probe)).reads).toEqual(reads);
  });
  test('is arranged anew for clips, a spare sensor and a target that is moved by hand', () => {
    const arranged = (setup: Partial<Setup>) =>
      own(of({ kind: 'volts', ...ends }, setup)).arrangement;
    const bridges = [{ from: 'sensor.feed', to: 'battery.negative', through: 'lamp' as const }];
    expect(arranged({ unplugged: ['sensor'] })).toBe('');
    expect(arranged({ state: 'cranking', target: 'moving' })).toBe('');
    const others = [{ bridges }, { sensor: 'spare' as const }, { target: 'moving' as const }];
    const found = others.map(arranged);
    expect(new Set([...found, '']).size).toBe(4);
  });
  test('keeps its state and connectors', () => {
    const asked = of({ kind: 'volts', ...ends }, { unplugged: ['sensor'] });
    expect(own(asked)).toMatchObject({
      key: testKey(asked),
      test: asked,
      step: null,
      family: 'volts',
      words: 'volts, red at sensor.feed, black at battery.negative',
      state: 'key-on',
      unplugged: ['sensor'],
      arrangement: '',
    });
  });
});

describe('the tests of the table', () => {
  const collected = entries(TREE);
  test("are the tree's under its own names, then the standard ones, each once", () => {
    expect(collected[0]).toMatchObject({ id: 'feed', words: 'Feed', step: 'feed' });
    expect(collected[1]).toMatchObject({ id: 'pattern', words: 'Pattern', needs: ['scope'] });
    const alone = entries(null);
    expect(alone.length).toBeGreaterThan(20);
    expect(collected.length - alone.length).toBeLessThanOrEqual(2);
    expect(new Set(collected.map(({ key }) => key)).size).toBe(collected.length);
    for (const { id, minutes, step } of alone) {
      expect(id).not.toBe('');
      expect(minutes).toBeGreaterThan(0);
      expect(step).toBeNull();
    }
  });
  test('are none where the tree asks for a number outside the circuit', () => {
    const tree = { ...TREE, steps: { feed: { ...TREE.steps['feed']!, probe: null } as Step } };
    const ids = (procedure: typeof TREE | null) => entries(procedure).map(({ id }) => id);
    expect(ids(tree)).toEqual(ids(null));
  });
  test('are never one that the circuit refuses', () => {
    const feed = TREE.steps['feed']!;
    const probe = { kind: 'volts' as const, plus: 'sensor.nowhere', minus: 'battery.negative' };
    const tree = { ...TREE, steps: { feed: { ...feed, probe } as typeof feed } };
    expect(entries(tree).some(({ id }) => id === 'feed')).toBe(false);
  });
  test('are moved where the step moves the harness', () => {
    const steps = { feed: { ...TREE.steps['feed']!, family: 'wiggle' } as Step };
    const found = entries({ ...TREE, steps }).find(({ id }) => id === 'feed')!;
    expect(found.test.wiggle).toBe(true);
  });
});

describe('minutes', () => {
  /** The volts at the feed, key on, by an author who gives so many minutes; another step asks for the same. */
  const feedOf = (minutes: number, other?: number) => {
    const feed = { ...TREE.steps['feed']!, minutes } as Step;
    const twin = { ...feed, id: 'twin', minutes: other } as Step;
    const steps = other === undefined ? { feed } : { feed, twin };
    return entries({ ...TREE, steps }).find(({ id }) => id === 'feed')!;
  };
  // by hand: to the feed at the start of a job 0.5 for the key, 0.5 for the walk and 3 to get at the sensor
  test.each<[string, number, number]>([
    ['keep what getting there leaves', 12, 8],
    ['keep what the reading usually takes, where getting there leaves less', 4.5, 1],
    ["are the author's own, where they are fewer than a reading usually takes", 0.5, 0.5],
    ['are half a minute where the author gives none', 0, 0.5],
  ])('%s', (_, author, reading) => {
    expect(feedOf(author).minutes).toBe(reading);
  });
  test.each([12, 7, 5])('of a job that begins with it are those of the author: %d', (author) => {
    expect(testCost(feedOf(author), AT_THE_START, COSTS, false).minutes).toBe(author);
  });
  test('are the larger of two steps of one test, under the name of the first', () => {
    expect(feedOf(6, 12)).toMatchObject({ minutes: 8, step: 'feed' });
    expect(feedOf(12, 6)).toMatchObject({ minutes: 8, step: 'feed' });
  });
  // as the standard tests have them; a spare sensor 5 more, a lead laid 4, a moved harness half a minute
  test.each<[string, Test, number]>([
    ['volts', of({ kind: 'volts', ...ends }), 1],
    ['ohms', of({ kind: 'ohms', ...ends }), 2],
    ['a scope', of({ kind: 'pattern', ...ends }), 3],
    ['a spare sensor', of({ kind: 'volts', ...ends }, { sensor: 'spare' }), 6],
    [
      'a lead laid',
      of(
        { kind: 'counts', input: 'module.signal' },
        { bridges: [{ from: 'a.b', to: 'c.d', through: 'lead' }] },
      ),
      5,
    ],
    ['a moved harness', { ...of({ kind: 'volts', ...ends }), wiggle: true }, 1.5],
  ])("of the person's own test go by the instrument: %s", (_, asked, minutes) => {
    expect(own(asked).minutes).toBe(minutes);
  });
  test('of a known test with the harness moved are half a minute more, and its words say so', () => {
    const known = feedOf(12);
    const asked: Test = { ...known.test, wiggle: true };
    const moved = ownEntry(circuit, asked, METER, known);
    expect(moved).toMatchObject({
      minutes: 8.5,
      words: 'Feed, moving the harness',
      step: 'feed',
      key: testKey(asked),
    });
    expect(moved.id).not.toBe(known.id);
  });
  test('of the wheel and its gap are those that the shipped procedure gives', () => {
    const { linked } = shipped('hall-no-signal');
    const step = Object.values(linked.procedure.steps).find(
      (one) => one.kind === 'look' && one.probe.kind === 'inspect' && one.probe.of === 'target',
    )!;
    const author = 'minutes' in step ? step.minutes : 0;
    const entry = testEntries(linked.circuit!, linked.procedure, METER).find(
      (one) => one.step === step.id,
    )!;
    // to look at it nothing is to be got at first: all of them are the look's own
    expect(author).toBe(12);
    expect(entry.minutes).toBe(author);
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
