/** What is known of one car, put into its circuit. */
import { describe, expect, test } from 'vitest';
import { quantitiesOf } from '../../src/circuit/car-quantities.ts';
import { knowablesOf } from '../../src/circuit/knowable.ts';
import {
  type KnownValue,
  knownFlaw,
  readKnown,
  withKnown,
} from '../../src/circuit/known-values.ts';
import { isWords, readFrom, splitKnown } from '../../src/circuit/known-words.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { METER, NAMES, shipped, volts } from './shipped.ts';

function known(name: string, what: string, is: string): KnownValue {
  const read = readKnown(shipped(name), what, is);
  if (!read.ok) throw new Error(`${read.words}; ${read.fix}`);
  return { quantity: read.quantity, is: read.is };
}

function wrong(what: string, is: string) {
  const read = readKnown(shipped('hall-module-fed'), what, is);
  if (read.ok) throw new Error('it was read');
  return read;
}

function shows(name: string, values: readonly KnownValue[], plus: string): number {
  const circuit = withKnown(shipped(name), values);
  const model = createModel(circuit, { samples: 1, seed: 1, meter: METER });
  const shown = model.shows('healthy', volts(plus), -1);
  return shown.kind === 'number' ? shown.value : Number.NaN;
}

/** Copper, contacts and the test's own resistor are nobody's to know; the rest is a fault's or the weather's. */
const NOT_KNOWN = /^(wire|contact|target|bridge)\.|\.twin$|shorted$|^temperature$|\.substrate$/;

describe('what is known of a car', () => {
  test.each([
    // by hand: the middle of what is known, less than a per cent lost in the wires
    ['battery at rest', '12.4 V', 'hall-relay-fed', 'battery.positive', 12.4],
    ["voltage of the module's reference", '8 V +/- 3 %', 'hall-module-fed', 'sensor.feed', 8],
    ["voltage of the module's reference", 'battery', 'hall-module-fed', 'sensor.feed', 13.1],
  ])('%s is %s', (what, is, name, at, value) => {
    expect(shows(name, [known(name, what, is)], at)).toBeCloseTo(value, 0);
    expect(shows(name, [known(name, what, is)], at)).toBeGreaterThan(value - 0.3);
  });

  test('the pull-up and what it leads to are what an open signal stands at', () => {
    const open = volts('module.signal', 'battery.negative', { unplugged: ['sensor'] });
    const at = (...values: KnownValue[]) => {
      const circuit = withKnown(shipped('hall-module-fed'), values);
      const shown = createModel(circuit, { samples: 1, seed: 1, meter: METER }).shows(
        'healthy',
        open,
        -1,
      );
      return shown.kind === 'number' ? shown.value : Number.NaN;
    };
    expect(at(known('hall-module-fed', 'module.signal.pull-to', '8 V'))).toBeCloseTo(8, 1);
    expect(at(known('hall-module-fed', 'module.signal.bias', 'reference'))).toBeCloseTo(5, 1);
  });

  test('a pull-up is offered the outputs of its module, and no pin that gives no voltage', () => {
    const one = knowablesOf(shipped('hall-module-fed')).find(
      ({ key }) => key === 'module.signal.pull-to',
    );
    expect(one?.ways).toEqual(['battery', 'reference']);
    expect(wrong('module.signal.pull-to', 'throttle-ground')).toMatchObject({ code: 'bad-value' });
  });

  test('words that only one thing holds are enough', () => {
    expect(known('hall-module-fed', 'the battery at rest', '12 V').quantity).toBe('battery.rest');
    expect(known('reluctor-two-wire', 'coil', '900 ohm').quantity).toBe('sensor.ohms');
    expect(known('current-two-wire', 'sense resistor', '120 ohm').quantity).toBe(
      'module.signal.pull',
    );
  });

  test('of several things that the words hold, the one that alone can be what was said is meant', () => {
    expect(known('hall-module-fed', 'pull-up', '4.7 kohm').quantity).toBe('module.signal.pull');
    expect(known('hall-module-fed', 'the pull-up', '8 V').quantity).toBe('module.signal.pull-to');
    expect(known('hall-module-fed', 'pull-up', 'battery').quantity).toBe('module.signal.pull-to');
    expect(wrong('pull-up', 'unknown')).toMatchObject({ at: 'what', code: 'unknown-quantity' });
  });

  test('a value without a tolerance is taken within 2 %, and one with it as it stands', () => {
    const rest = (is: string) => known('hall-module-fed', 'battery.rest', is).is;
    expect(rest('12 V')).toEqual({ value: { nominal: 12, low: 11.76, high: 12.24, unit: 'V' } });
    expect(rest('12,4')).toMatchObject({ value: { nominal: 12.4 } });
    expect(rest('12 V +/- 0 V')).toMatchObject({ value: { low: 12, high: 12 } });
    expect(rest('11.8 V to 12.2 V')).toMatchObject({ value: { low: 11.8, high: 12.2 } });
    expect(known('hall-module-fed', 'module.signal.pull', '4.7k').is).toMatchObject({
      value: { nominal: 4700, unit: 'ohm' },
    });
    expect(known('throttle-potentiometer', 'position at rest', '12 %').is).toMatchObject({
      value: { nominal: 0.12, unit: '1' },
    });
  });

  test('the last word on a quantity counts, and "unknown" gives the circuit back', () => {
    const circuit = shipped('hall-module-fed');
    const [eight, five] = ['8 V', '5 V'].map((is) =>
      known('hall-module-fed', 'module.reference.volts', is),
    );
    expect(withKnown(circuit, [eight!, five!])).toEqual(withKnown(circuit, [five!]));
    const none = known('hall-module-fed', 'module.reference.feed', 'unknown');
    expect(none).toEqual({ quantity: 'module.reference.volts', is: null });
    expect(withKnown(circuit, [eight!, none])).toEqual(circuit);
  });

  test('a rail of two pins stays one', () => {
    const circuit = withKnown(shipped('reluctor-two-wire'), [
      known('reluctor-two-wire', 'module.signal-plus.pull-to', '3.3 V'),
    ]);
    const module = circuit.parts.find(({ kind }) => kind === 'module');
    const ends = module?.kind === 'module' ? module.inside.map(({ pull }) => pull?.to) : [];
    expect(ends.filter(Boolean)).toMatchObject([
      { kind: 'volts', volts: { nominal: 3.3 } },
      { kind: 'volts', volts: { nominal: 3.3 }, as: 'signal-plus' },
    ]);
  });

  test('how a sensor is built is one of a few ways and no number', () => {
    const pedal = shipped('pedal-dual');
    const made = withKnown(pedal, [
      known('pedal-dual', 'how track 2 runs beside track 1', 'opposite'),
      known('pedal-dual', 'which way round', 'turned'),
    ]);
    const sensor = made.parts.find(({ kind }) => kind === 'potentiometer')!;
    expect(sensor).toMatchObject({
      tracks: [{}, { beside: { track: 'track-1', runs: ['opposite'] } }],
      turned: { nominal: 1 },
    });
    expect(readKnown(pedal, 'sensor.track-2.runs', '50 %')).toMatchObject({
      ok: false,
      at: 'is',
      code: 'bad-value',
      fix: expect.stringContaining('half, opposite, lower'),
    });
  });

  test('outside what the circuit says is allowed, within reason', () => {
    expect(known('hall-module-fed', 'module.signal.pull', '470 ohm').is).toMatchObject({
      value: { nominal: 470 },
    });
    expect(wrong('battery.rest', '1200 V').code).toBe('out-of-reason');
    expect(wrong('battery.rest', '-12 V').code).toMatch(/not-positive|bad-value/);
  });

  test.each([
    ['batery at rest', '12 V', 'what', 'unknown-quantity', /battery at rest/],
    ['battery.rst', '12 V', 'what', 'unknown-quantity', /battery\.rest/],
    ['battery', '12 V', 'what', 'unknown-quantity', /battery at rest; battery while cranking/],
    ['wire.signal', '1 ohm', 'what', 'unknown-quantity', /what there is|they begin|did you/],
    ['battery at rest', '12 ohm', 'is', 'bad-value', /5 V/],
    ['battery at rest', 'flat', 'is', 'bad-value', /5 V/],
    ['module.reference.volts', 'ground', 'is', 'bad-value', /one of: battery/],
  ])('%s is %s is refused, with the place and a way out', (what, is, at, code, fix) => {
    const read = wrong(what, is);
    expect(read).toMatchObject({ at, code });
    expect(read.fix).toMatch(fix);
  });

  test.each(NAMES)('%s: all that can be outside can be known, and puts itself in', (name) => {
    const circuit = shipped(name);
    const knowables = knowablesOf(circuit);
    const covered = new Set(knowables.flatMap(({ key, also }) => [key, ...also]));
    const left = quantitiesOf(circuit)
      .filter(({ value, key }) => value !== null && !NOT_KNOWN.test(key))
      .map(({ key }) => key)
      .filter((key) => !covered.has(key));
    expect(left).toEqual([]);
    for (const one of knowables) {
      for (const is of one.described) {
        const made = one.put(is);
        expect(knownFlaw(circuit, { quantity: one.key, is })).toBeNull();
        expect(knowablesOf(made).map(({ key }) => key)).toEqual(knowables.map(({ key }) => key));
        const again = knowablesOf(made).find(({ key }) => key === one.key);
        expect(again?.described).toEqual([is]);
      }
      for (const way of one.ways) expect(one.put({ way })).not.toBe(circuit);
    }
  });

  test('a stored value that nobody could have given is told', () => {
    const circuit = shipped('hall-module-fed');
    const value = { nominal: 5, low: 4.9, high: 5.1, unit: 'V' } as const;
    expect(knownFlaw(circuit, { quantity: 'wire.feed', is: { value } })).toMatch(/does not have/);
    expect(knownFlaw(circuit, { quantity: 'battery.rest', is: { way: 'ground' } })).toMatch(
      /cannot be/,
    );
    for (const odd of [
      { ...value, low: 6 },
      { ...value, unit: 'ohm' as const },
      { ...value, high: 900 },
    ])
      expect(knownFlaw(circuit, { quantity: 'battery.rest', is: { value: odd } })).toMatch(
        /cannot have/,
      );
    expect(knownFlaw(circuit, { quantity: 'battery.rest', is: { value } })).toBeNull();
  });
});

describe('in words', () => {
  test('a sentence falls into what, value and source', () => {
    expect(splitKnown('BATTERY AT REST is 12.4 V from measured')).toEqual({
      what: 'BATTERY AT REST',
      is: '12.4 V',
      from: 'measured',
    });
    expect(splitKnown('battery.rest = 12.4 V')).toEqual({
      what: 'battery.rest',
      is: '12.4 V',
      from: '',
    });
    expect(splitKnown('battery 12.4 V')).toBeNull();
  });

  test('a source is one of four words, with more behind it', () => {
    expect(readFrom('the label on the module')).toEqual({
      kind: 'label',
      words: 'on the module',
    });
    expect(readFrom('measured: at the post')).toEqual({ kind: 'measured', words: 'at the post' });
    expect(readFrom('mesured')).toMatchObject({ fix: expect.stringContaining('"measured"') });
    expect(readFrom('')).toMatchObject({ words: expect.stringContaining('does not say') });
  });

  test('what is known reads as people say it', () => {
    const { is } = known('hall-module-fed', 'module.reference.volts', '8 V +/- 3 %');
    expect(isWords(is)).toBe('7.76 to 8.24 V');
    expect(isWords({ way: 'pressure-reference' })).toBe('pressure reference');
  });
});

test('a circuit file with a fixed voltage can be told that its feed is the battery', () => {
  const { value } = loadCircuit(
    `circuit: fixed
title: Everything fixed
parts:
  module:
    kind: module
    pins:
      reference: { reference: { volts: battery } }
      signal: { pull: { to: reference, ohms: 2 kohm }, input: { low-below: 1 V, high-above: 4 V } }
      ground: { ground: {} }
  sensor: { kind: hall-switch }
wires:
  feed: { from: module.reference, to: sensor.feed, size: 0.5 mm2, length: 3 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.5 mm2, length: 3 m }
target: { at: crankshaft, teeth: 60, missing: 2 }
`,
    'fixed.yaml',
  );
  const read = value && readKnown(value, 'module.reference.volts', '8 V');
  expect(read).toMatchObject({ ok: true, is: { value: { nominal: 8 } } });
});
