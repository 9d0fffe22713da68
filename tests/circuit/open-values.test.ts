/** What a circuit file leaves open: one of several pull-ups and feeds, a range of duty, levels that hang on the car. */
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import type { Test } from '../../src/circuit/test.ts';
import { METER, modelOf, testOf, volts } from './shipped.ts';

const HALL = `circuit: open-hall
title: A Hall switch of which little is known
parts:
  module:
    kind: module
    pins:
      reference:
        reference: { volts: 5 V, series: 0.5 ohm }
      signal:
        pull: { to: "one of: reference 50 %, 8 V 20 %, battery 30 %", ohms: 1 kohm to 22 kohm }
        input: { low-below: 30 %, high-above: 70 % }
      ground: { ground: {} }
  sensor: { kind: hall-switch, off: 2 Mohm }
wires:
  feed: { from: module.reference, to: sensor.feed, size: 0.5 mm2, length: 0.5 m to 5 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.35 mm2 to 0.75 mm2, length: 3 m }
target: { at: crankshaft, teeth: 60, missing: 2, on: 20 % to 80 % }
supply: { battery: 12.6 V }
`;

const COIL = `circuit: open-coil
title: A coil at one bias, over a ground that others use
parts:
  module:
    kind: module
    pins:
      signal-plus:
        pull: { to: 0.5 V to 2.5 V, ohms: 10 kohm }
        input: { swing: 0.4 V, against: signal-minus }
      signal-minus:
        pull: { to: same as signal-plus, ohms: 10 kohm }
      shield:
        ground: { ohms: 20 mohm, offset: 0.2 mV to 40 mV }
  post: { kind: ground-point, ohms: 1 ohm, offset: 5 mV }
  sensor: { kind: reluctor }
wires:
  plus: { from: module.signal-plus, to: sensor.plus, size: 0.5 mm2, length: 3 m }
  minus: { from: module.signal-minus, to: sensor.minus, size: 0.5 mm2, length: 3 m }
  screen: { from: module.shield, to: splice.end, size: 0.5 mm2, length: 3 m }
  drain: { from: splice.end, to: post.eyelet, size: 0.5 mm2, length: 3 m }
`;

const WHEEL = `circuit: open-wheel
title: A two-wire sensor of which little is known
parts:
  module:
    kind: module
    pins:
      feed:
        reference: { volts: "one of: battery 60 %, 8 V 40 %", series: 1 ohm, limit: 60 mA }
      signal:
        pull: { to: ground, ohms: 50 ohm to 300 ohm }
        input: { low-below: 9 mA, high-above: 10.5 mA }
  sensor: { kind: current-switch, low: 7 mA, high: 14 mA, minimum: 3 V }
wires:
  feed: { from: module.feed, to: sensor.feed, size: 0.5 mm2, length: 3 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
target: { at: left front wheel, teeth: 48, turns: 0 }
supply: { battery: 12.6 V }
`;

function loaded(text: string): Circuit {
  const { value, issues } = loadCircuit(text, 'open.yaml');
  if (!value) throw new Error(issues.map(({ words }) => words).join('\n'));
  return value;
}

const hall = createModel(loaded(HALL), { samples: 32, seed: 1, meter: METER });
const coil = createModel(loaded(COIL), { samples: 32, seed: 1, meter: METER });
const wheel = createModel(loaded(WHEEL), { samples: 32, seed: 1, meter: METER });

/** A car at the middle of everything but what is said. */
function car(model: Model, said: Readonly<Record<string, number>>): Float64Array {
  for (const key of Object.keys(said))
    if (!model.quantities.some((one) => one.key === key)) throw new Error(key);
  return Float64Array.from(model.quantities, ({ key }) => said[key] ?? 0.5);
}

function shown(
  model: Model,
  test: Test,
  said: Readonly<Record<string, number>>,
  fault = 'healthy',
) {
  const found = model.showsAt(fault, test, car(model, said));
  return found.kind === 'number' ? found.value : found.look;
}

const PULL_TO = 'module.signal.pull-to';
const open = volts('sensor.signal', 'battery.negative', { unplugged: ['sensor'] });
const CRANK = { state: 'cranking', target: 'moving' } as const;

describe('one of several pull-ups', () => {
  test.each([
    // share of the unit interval, volts at the open plug, through the nominal 4.69 kohm against 10 Mohm
    ['reference', 0.1, 5],
    ['8 V', 0.6, 8],
    ['battery', 0.9, 12.6],
  ])('to %s', (_, u, supply) => {
    const loading = 10e6 / (10e6 + Math.sqrt(1000 * 22000));
    expect(shown(hall, open, { [PULL_TO]: u })).toBeCloseTo(supply * loading, 3);
  });

  test('its resistance is even in the logarithm', () => {
    const through = { ohms: 1000 } as const;
    const loaded = volts('sensor.signal', 'battery.negative', {
      unplugged: ['sensor'],
      bridges: [{ from: 'sensor.signal', to: 'battery.negative', through }],
    });
    // by hand: 8 V over 1 kohm at the start, over 22 kohm at the end of the range
    expect(shown(hall, loaded, { [PULL_TO]: 0.6, 'module.signal.pull': 0 })).toBeCloseTo(4, 2);
    expect(shown(hall, loaded, { [PULL_TO]: 0.6, 'module.signal.pull': 1 })).toBeCloseTo(8 / 23, 2);
  });

  test('is that of the first place when nothing else is said, and gone when the resistor is', () => {
    const value = hall.shows('healthy', open, -1);
    expect(value.kind === 'number' && value.value).toBeCloseTo(5, 2);
    const missing = 'module.signal.pull-missing';
    for (const u of [0.1, 0.6, 0.9])
      expect(shown(hall, open, { [PULL_TO]: u }, missing)).toBeCloseTo(0, 6);
  });

  test('without key no way has a voltage', () => {
    const off = { ...open, setup: { ...open.setup, state: 'key-off' as const } };
    for (const u of [0.1, 0.6, 0.9]) expect(shown(hall, off, { [PULL_TO]: u })).toBeCloseTo(0, 6);
  });
});

describe('levels as a part of what the pull-up leads to', () => {
  const counts = testOf({ kind: 'counts', input: 'module.signal' }, CRANK);
  const levels = testOf(
    { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
    CRANK,
  );
  test.each([0.1, 0.6, 0.9])('a healthy car counts, whatever its pull-up leads to (%d)', (u) => {
    expect(shown(hall, counts, { [PULL_TO]: u })).toBe('follows');
    expect(shown(hall, levels, { [PULL_TO]: u })).toBe('full');
  });
  test('a pull-up to 8 V that only reaches 5.2 V is not high, one to 5 V that reaches 3.6 V is', () => {
    // by hand: 70 % of 8 V is 5.6 V, 70 % of 5 V is 3.5 V; a load of R gives V R / (R + 1 kohm)
    const loadedBy = (ohms: number) =>
      testOf(counts.probe, {
        ...CRANK,
        bridges: [{ from: 'module.signal', to: 'battery.negative', through: { ohms } }],
      });
    const pull = { 'module.signal.pull': 0 };
    expect(shown(hall, loadedBy(1860), { ...pull, [PULL_TO]: 0.6 })).toBe('still');
    expect(shown(hall, loadedBy(2570), { ...pull, [PULL_TO]: 0.1 })).toBe('follows');
    expect(shown(hall, loadedBy(2570), { ...pull, [PULL_TO]: 0.6 })).toBe('follows');
    expect(shown(hall, loadedBy(2200), { ...pull, [PULL_TO]: 0.1 })).toBe('still');
  });
});

test('the mean over a turning wheel follows the duty: part of a turn with the output on', () => {
  const mean = volts('sensor.signal', 'battery.negative', CRANK);
  const at = (u: number) => shown(hall, mean, { [PULL_TO]: 0.1, 'target.duty': u });
  const [on, off] = [0.05, 5];
  // by hand: 20, 50 and 80 % of the time near 0 V, the rest near 5 V
  for (const [u, duty] of [
    [0, 0.2],
    [0.5, 0.5],
    [1, 0.8],
  ] as const)
    expect(Math.abs(Number(at(u)) - (duty * on + (1 - duty) * off))).toBeLessThan(0.05);
});

test('a wire of unknown length or size has the copper of them all', () => {
  const end = (wire: string) =>
    testOf(
      {
        kind: 'ohms',
        plus: wire === 'feed' ? 'module.reference' : `module.${wire}`,
        minus: `sensor.${wire}`,
      },
      { state: 'key-off', unplugged: ['module', 'sensor'] },
    );
  // by hand: 1/58 * length / area * 1.07 * 1.01965, with 15 % to each side
  const copper = (metres: number, mm2: number) => (metres / 58 / mm2) * 1.07 * (1 + 0.00393 * 5);
  expect(shown(hall, end('feed'), { 'wire.feed': 0 })).toBeCloseTo(0.85 * copper(0.5, 0.5), 6);
  expect(shown(hall, end('feed'), { 'wire.feed': 1 })).toBeCloseTo(1.15 * copper(5, 0.5), 6);
  expect(shown(hall, end('ground'), { 'wire.ground': 0 })).toBeCloseTo(0.85 * copper(3, 0.75), 6);
  expect(shown(hall, end('ground'), { 'wire.ground': 1 })).toBeCloseTo(1.15 * copper(3, 0.35), 6);
});

describe('a two-wire sensor over any sense resistor', () => {
  const turning = { state: 'key-on', target: 'moving' } as const;
  const counts = testOf({ kind: 'counts', input: 'module.signal' }, turning);
  test.each([
    ['8 V', 0.2, 8],
    ['battery', 0.7, 12.6],
  ])('fed by %s', (_, u, supply) => {
    const feed = volts('module.feed', 'battery.negative', {});
    expect(Number(shown(wheel, feed, { 'module.feed.feed': u }))).toBeCloseTo(supply, 0);
    for (const sense of [0, 0.5, 0.9])
      expect(shown(wheel, counts, { 'module.feed.feed': u, 'module.signal.pull': sense })).toBe(
        'follows',
      );
  });

  test('keeps the complaint of every fault of the loop', () => {
    const ids = wheel.circuit.faults.map(({ id }) => id);
    for (const id of [
      'wire.feed.open',
      'wire.feed.resistive',
      'wire.signal.short-to-ground',
      'contact.sensor.signal.open',
      'sensor.dead',
      'sensor.stuck-low',
      'sensor.shorted',
      'module.feed.dead',
      'module.feed.low',
    ])
      expect(ids).toContain(id);
  });

  test('a weak feed is weak either way', () => {
    const feed = volts('module.feed', 'battery.negative', {});
    for (const u of [0.2, 0.7]) {
      const whole = Number(shown(wheel, feed, { 'module.feed.feed': u }));
      const weak = Number(shown(wheel, feed, { 'module.feed.feed': u }, 'module.feed.low'));
      expect(weak).toBeLessThan(0.5 * whole);
      expect(weak).toBeGreaterThan(0);
    }
  });
});

test('two resistors to one voltage have it in common', () => {
  const apart = (pin: string) =>
    volts(`module.${pin}`, 'battery.negative', { unplugged: ['sensor'] });
  for (const u of [0, 0.3, 1]) {
    const bias = 0.5 * 5 ** u;
    // 10 Mohm of the meter behind 10 kohm
    for (const pin of ['signal-plus', 'signal-minus'])
      expect(shown(coil, apart(pin), { 'module.signal-plus.bias': u })).toBeCloseTo(
        bias / 1.001,
        6,
      );
  }
  expect(coil.quantities.some(({ key }) => key === 'module.signal-minus.bias')).toBe(false);
});

test('a ground stands above battery negative by what others drop there, with the key on', () => {
  const at = (state: 'key-on' | 'key-off') =>
    volts('module.shield', 'battery.negative', { state, unplugged: ['post'] });
  const offset = 'module.shield.ground-volts';
  // by hand: the ends of the range, and their geometric middle
  for (const [u, above] of [
    [0, 0.0002],
    [0.5, Math.sqrt(0.0002 * 0.04)],
    [1, 0.04],
  ] as const)
    expect(shown(coil, at('key-on'), { [offset]: u })).toBeCloseTo(above, 7);
  expect(shown(coil, at('key-off'), { [offset]: 1 })).toBeCloseTo(0, 9);
  const bolt = (state: 'key-on' | 'key-off') =>
    volts('post.eyelet', 'battery.negative', { state, unplugged: ['module'] });
  expect(shown(coil, bolt('key-on'), {})).toBeCloseTo(0.005, 7);
  expect(shown(coil, bolt('key-off'), {})).toBeCloseTo(0, 9);
});

describe('two resistors of one kind', () => {
  const twins = createModel(
    loaded(
      COIL.replace('ohms: 10 kohm', 'ohms: 7 kohm to 100 kohm').replace(
        'same as signal-plus, ohms: 10 kohm',
        'same as signal-plus, ohms: same as signal-plus',
      ),
    ),
    { samples: 32, seed: 1, meter: METER },
  );
  const underLoad = (pin: string): Test =>
    volts(`module.${pin}`, 'battery.negative', {
      state: 'key-on',
      unplugged: ['sensor'],
      bridges: [{ from: `module.${pin}`, to: 'battery.negative', through: { ohms: 10_000 } }],
    });
  test('are one value of the car', () => {
    const keys = twins.quantities.map(({ key }) => key);
    expect(keys).toContain('module.signal-plus.pull');
    expect(keys).not.toContain('module.signal-minus.pull');
  });
  test('load a bias alike, wherever in its range it lies', () => {
    // by hand: 1.118 V in the middle of the logarithm, shared by 10 kohm and 7, 26.5 or 100 kohm
    for (const [u, ohms] of [
      [0, 7000],
      [0.5, Math.sqrt(7000 * 100_000)],
      [1, 100_000],
    ] as const)
      for (const pin of ['signal-plus', 'signal-minus'])
        expect(shown(twins, underLoad(pin), { 'module.signal-plus.pull': u })).toBeCloseTo(
          (Math.sqrt(0.5 * 2.5) * 10_000) / (10_000 + ohms),
          3,
        );
  });
});

test('behind an open wire a resistor to ground shows what the ground stands at, and nothing with the key off', () => {
  const raised = createModel(
    loaded(WHEEL.replace('kind: module', 'kind: module\n    offset: 0.2 mV to 40 mV')),
    { samples: 2, seed: 1, meter: METER },
  );
  const at = (state: 'key-on' | 'key-off', u: number) =>
    shown(
      raised,
      volts('module.signal', 'battery.negative', { state }),
      { 'module.ground-volts': u },
      'wire.signal.open',
    );
  expect(at('key-on', 0)).toBeCloseTo(0.0002, 5);
  expect(at('key-on', 1)).toBeCloseTo(0.04, 4);
  expect(at('key-off', 1)).toBeCloseTo(0, 5);
});

describe('mistakes', () => {
  test('the voltage of a pin that has none', () => {
    expect(issues('same as signal-plus', 'same as shield', COIL)[0]).toMatch(
      /^11:\d+ no-such-voltage the pin "shield" has no resistor to a voltage; name a pin/,
    );
  });
  const issues = (from: string, to: string, text = HALL) =>
    loadCircuit(text.replace(from, to), 'open.yaml').issues.map(
      ({ at, code, words, fix }) => `${at.line}:${at.column} ${code} ${words}; ${fix ?? ''}`,
    );
  const TO = 'one of: reference 50 %, 8 V 20 %, battery 30 %';
  test('the resistance of a pin that has none', () => {
    expect(
      issues(
        'same as signal-plus, ohms: 10 kohm',
        'same as signal-plus, ohms: same as shield',
        COIL,
      )[0],
    ).toMatch(
      /^11:\d+ no-such-resistor the pin "shield" has no resistor of its own; name a pin whose pull has ohms/,
    );
  });
  test('an unknown end in a list is named alone', () => {
    expect(issues(TO, 'one of: referenc, 8 V')).toEqual([
      expect.stringMatching(/^10:21 unknown-pin "referenc" is not a pin .*reference/),
    ]);
  });
  test('chances that do not come to 100 % say what they come to', () => {
    expect(issues(TO, 'one of: reference 50 %, battery 30 %')[0]).toMatch(
      /^10:21 bad-value .*come to 80 %; make them add up to 100 %/,
    );
  });
  test('levels in per cent need a pull-up, levels in ampere a resistor to ground', () => {
    expect(issues(`"${TO}"`, 'ground')).toEqual([
      expect.stringMatching(/^11:\d+ no-pull-up .*volts$/),
    ]);
    expect(
      issues('low-below: 30 %, high-above: 70 %', 'low-below: 1 mA, high-above: 2 mA'),
    ).toEqual([expect.stringMatching(/^11:\d+ no-sense-resistor .*volts$/)]);
  });
  test('levels have one unit, and stand in their order', () => {
    expect(issues('high-above: 70 %', 'high-above: 4 V')[0]).toMatch(
      /^11:\d+ bad-value "4 V" .*it is in V, and % is needed/,
    );
    expect(issues('high-above: 70 %', 'high-above: 30 %')[0]).toMatch(/bad-thresholds/);
  });
  test('a duty beyond a whole turn', () => {
    expect(issues('20 % to 80 %', '20 % to 120 %')[0]).toMatch(/^18:\d+ bad-share/);
  });
});

describe('quantities', () => {
  test('stand in the order of a point, with words for people', () => {
    const wordsOf = (model: Model, key: string) =>
      model.quantities.find((one) => one.key === key)?.words;
    expect(wordsOf(hall, 'module.signal.pull')).toBe("pull-up of the module's signal input");
    expect(wordsOf(wheel, 'module.signal.pull')).toBe(
      "sense resistor of the module's signal input",
    );
    expect(wordsOf(hall, 'battery.rest')).toBe('battery at rest');
    expect(wordsOf(hall, 'contact.sensor.feed')).toBe('contact at sensor.feed');
    expect(hall.quantities.find(({ key }) => key === PULL_TO)?.ways).toEqual([
      'reference',
      'voltage',
      'battery',
    ]);
    expect(hall.quantities.find(({ key }) => key === 'module.signal.bias')?.value?.nominal).toBe(8);
    expect(new Set(hall.quantities.map(({ key }) => key)).size).toBe(hall.quantities.length);
    for (const { words, value, unit } of [...hall.quantities, ...wheel.quantities]) {
      expect(words).not.toBe('');
      if (value) expect(value.unit).toBe(unit);
    }
  });

  test('the car at the point of a sample is the car of that sample', () => {
    for (const model of [hall, wheel])
      for (const fault of ['healthy', ...model.circuit.faults.map(({ id }) => id)])
        for (const one of [
          volts('sensor.signal'),
          testOf({ kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' }, CRANK),
          testOf({ kind: 'counts', input: 'module.signal' }, CRANK),
        ])
          for (const sample of [0, 7, 31])
            expect(model.showsAt(fault, one, model.pointOf(sample, fault))).toEqual(
              model.shows(fault, one, sample),
            );
  });

  test('a fuse that blows in one car does not blow in the next by that', () => {
    const model = modelOf('hall-relay-fed', 32);
    const feed = volts('fuse.out');
    const fault = 'wire.feed.short-to-ground';
    const point = model.pointOf(3);
    const size = model.quantities.findIndex(({ key }) => key === 'fault.size');
    // 12.6 V over 0.05 ohm and the wires is far above the 6.75 A of the fuse, over 3 ohm far below
    point[size] = 0;
    expect(model.showsAt(fault, feed, point)).toMatchObject({ value: expect.closeTo(0, 2) });
    point[size] = 1;
    const whole = model.showsAt(fault, feed, point);
    expect(whole.kind === 'number' && whole.value).toBeGreaterThan(10);
  });

  test('a point of another length is refused', () => {
    expect(() => hall.showsAt('healthy', open, new Float64Array(3))).toThrow(/a point has/);
  });
});
