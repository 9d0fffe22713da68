/** What people type for a measurement, keys of tests, values of files, roles of wires, what hangs in the air; all by hand. */
import { describe, expect, test } from 'vitest';
import { valuesOf } from '../../src/circuit/car-quantities.ts';
import type { Part, Wire } from '../../src/circuit/circuit.ts';
import { floatingIslands } from '../../src/circuit/floating-islands.ts';
import type { Element } from '../../src/circuit/netlist.ts';
import { joinedTo } from '../../src/circuit/nets.ts';
import { parseBridge, parseMeasure } from '../../src/circuit/parse-measure.ts';
import type { Plan } from '../../src/circuit/plan.ts';
import { NOMINAL_DRAW } from '../../src/circuit/plan.ts';
import { addBridges } from '../../src/circuit/plan-netlist.ts';
import { readToleranced } from '../../src/circuit/read-value.ts';
import { shownOf } from '../../src/circuit/shown-of.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { arrangementKey, testKey } from '../../src/circuit/test-key.ts';
import { wireRoles } from '../../src/circuit/wire-roles.ts';
import type { Unit } from '../../src/quantity/quantity.ts';
import { setupOf } from './setup.ts';
import { shipped } from './shipped.ts';

describe('a measurement as it is typed', () => {
  test.each<[string, Probe]>([
    ['volts a.b c.d', { kind: 'volts', plus: 'a.b', minus: 'c.d' }],
    ['  ohms   a.b\tc.d ', { kind: 'ohms', plus: 'a.b', minus: 'c.d' }],
    ['light a.b c.d', { kind: 'light', plus: 'a.b', minus: 'c.d' }],
    ['lamp a.b c.d', { kind: 'lamp', plus: 'a.b', minus: 'c.d' }],
    ['pattern a.b c.d', { kind: 'pattern', plus: 'a.b', minus: 'c.d' }],
    ['timing a.b c.d', { kind: 'timing', plus: 'a.b', minus: 'c.d' }],
    ['counts a.b', { kind: 'counts', input: 'a.b' }],
    ['inspect target', { kind: 'inspect', of: 'target' }],
  ])('%s', (text, value) => {
    expect(parseMeasure(text)).toEqual({ value });
  });
  test.each([
    ['volt a.b c.d', /did you mean "volts"/],
    ['weigh a.b', /one of: volts, ohms, light, lamp, pattern, timing, amps, counts, inspect$/],
    ['', /^"" is not a measurement/],
    ['volts a.b', /needs two terminals/],
    ['volts', /needs two terminals/],
    ['volts a.b c.d e.f', /needs two terminals/],
    ['counts', /needs one name, for example "counts module\.signal"/],
    ['counts a.b c.d', /needs one name/],
    ['inspect', /needs one name, for example "inspect connector\.sensor"/],
  ])('"%s" is none', (text, words) => {
    expect(parseMeasure(text)).toEqual({ words: expect.stringMatching(words) });
  });
});

describe('a bridge as it is typed', () => {
  test.each([
    ['a.b c.d lead', 'lead'],
    [' a.b  c.d test-light ', 'test-light'],
    ['a.b c.d lamp', 'lamp'],
    ['a.b c.d 470ohm', { ohms: 470 }],
    ['a.b c.d 1 kohm', { ohms: 1000 }],
  ])('%s', (text, through) => {
    expect(parseBridge(text)).toEqual({ value: { from: 'a.b', to: 'c.d', through } });
  });
  test.each(['', 'a.b', 'a.b c.d', 'a.b c.d wire', 'a.b c.d 5 V', 'a.b c.d 0 ohm', 'a.b c.d OL'])(
    '"%s" is none',
    (text) => {
      expect(parseBridge(text)).toHaveProperty('words');
    },
  );
});

describe('the key of a test', () => {
  const probe: Probe = { kind: 'volts', plus: 'a.b', minus: 'c.d' };
  const clip = { from: 'a.b', to: 'c.d', through: 'lead' } as const;
  const setups: Setup[] = [
    setupOf(),
    setupOf({ state: 'key-off' }),
    setupOf({ unplugged: ['sensor'] }),
    setupOf({ target: 'moving' }),
    setupOf({ sensor: 'spare' }),
    setupOf({ bridges: [clip] }),
    setupOf({ bridges: [{ ...clip, through: 'lamp' }] }),
    setupOf({ bridges: [{ ...clip, through: { ohms: 470 } }] }),
    setupOf({ bridges: [{ ...clip, through: { ohms: 1000 } }] }),
    setupOf({ bridges: [{ ...clip, from: 'e.f' }] }),
    setupOf({ bridges: [{ ...clip, to: 'e.f' }] }),
    setupOf({ bridges: [clip], sensor: 'spare' }),
  ];
  const probes: Probe[] = [
    probe,
    { ...probe, minus: 'e.f' },
    { ...probe, plus: 'e.f' },
    { kind: 'ohms', plus: 'a.b', minus: 'c.d' },
    { kind: 'counts', input: 'a.b' },
    { kind: 'counts', input: 'c.d' },
    { kind: 'inspect', of: 'a.b' },
    { kind: 'inspect', of: 'harness' },
  ];
  test('is equal for equal tests and for no others', () => {
    const keys = [
      ...setups.map((setup) => testKey({ setup, probe })),
      ...probes.slice(1).map((one) => testKey({ setup: setups[0]!, probe: one })),
    ];
    expect(new Set(keys).size).toBe(keys.length);
    const { minus, plus, kind } = probe;
    const turned = Object.fromEntries(Object.entries(setupOf()).reverse()) as unknown as Setup;
    expect(testKey({ setup: turned, probe: { minus, plus, kind } })).toBe(keys[0]);
  });
  test('of an arrangement is empty without clips and with the own sensor', () => {
    expect(arrangementKey(setupOf({ state: 'cranking', unplugged: ['sensor'] }))).toBe('');
    const keys = setups.slice(4).map(arrangementKey);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).not.toContain('');
  });
});

describe('a value of a circuit file', () => {
  test('is read in the unit that is meant', () => {
    expect(readToleranced('2 kohm +/- 5 %', 'ohm')).toEqual({
      ok: true,
      value: { nominal: 2000, low: 1900, high: 2100, unit: 'ohm' },
    });
  });
  test.each<[string, Unit, RegExp, RegExp]>([
    ['rubbish', 'V', /not a value/, /5 V \+\/- 2 %$/],
    ['5 V', 'ohm', /is in V, and ohm is needed/, /2\.2 kohm/],
    ['OL', 'ohm', /not finite/, /2\.2 kohm/],
    ['5 V', 'Hz', /is in V/, /like 1 Hz$/],
    ['one of: 5 V', 'V', /needs 2 to 12 choices/, /one of: 5 V 70 %, 8 V 30 %/],
    ['one of: 5 V 70 %, 8 V 70 %', 'V', /the chances come to 140 %/, /100 %/],
    ['one of: 5 V 100 %, 8 V', 'V', /leave nothing for the others/, /100 %/],
    ['one of: 5 V 100 %, 8 V 0 %', 'V', /0 % is not a choice/, /leave it out/],
    [
      'one of: 5 V, sky',
      'V',
      /"sky" is not a value with a unit/,
      /"one of: 5 V \+\/- 2 %, \.\.\."/,
    ],
    ['one of: 5 V, 8 A', 'V', /its units differ/, /one of/],
    ['one of: 5 V, 8 V', 'ohm', /is in V, and ohm is needed/, /2\.2 kohm/],
  ])('"%s" in %s is none', (text, unit, words, fix) => {
    expect(readToleranced(text, unit)).toEqual({
      ok: false,
      words: expect.stringMatching(words),
      fix: expect.stringMatching(fix),
    });
  });
});

test('a wire carries what it leads to, through splices, fuses and joined pins', () => {
  const pin = (name: string, more: object = {}) => ({
    name,
    reference: null,
    ground: null,
    joinedTo: null,
    ...more,
  });
  const parts = [
    {
      kind: 'module',
      name: 'module',
      inside: [
        pin('reference', { reference: {} }),
        pin('twin', { joinedTo: 'reference' }),
        pin('ground', { ground: {} }),
        pin('signal'),
      ],
    },
    { kind: 'fuse', name: 'fuse', pins: ['in', 'out'] },
    { kind: 'relay', name: 'relay', pins: ['in', 'out'] },
    { kind: 'ground-point', name: 'body', pins: ['eyelet'] },
    { kind: 'hall-switch', name: 'sensor', pins: ['feed', 'signal', 'ground'] },
  ] as unknown as Part[];
  const wire = (name: string, from: string, to: string) => ({ name, from, to }) as Wire;
  const roles = wireRoles(
    [
      wire('reference', 'module.reference', 'sensor.feed'),
      wire('twin', 'other.feed', 'module.twin'),
      wire('ground', 'sensor.ground', 'module.ground'),
      wire('signal', 'module.signal', 'sensor.signal'),
      wire('to-fuse', 'battery.positive', 'fuse.in'),
      wire('to-relay', 'relay.in', 'fuse.out'),
      wire('fed', 'relay.out', 'splice.one'),
      wire('branch', 'splice.one', 'sensor.heater'),
      wire('earth', 'sensor.case', 'body.eyelet'),
      wire('post', 'battery.negative', 'other.ground'),
    ],
    parts,
  );
  expect(Object.fromEntries(roles)).toEqual({
    reference: 'reference',
    twin: 'reference',
    ground: 'ground',
    signal: 'signal',
    'to-fuse': 'supply',
    'to-relay': 'supply',
    fed: 'supply',
    branch: 'supply',
    earth: 'ground',
    post: 'ground',
  });
});

describe('nodes', () => {
  const resistor = (a: number, b: number): Element => ({ kind: 'resistor', a, b, ohms: 1 });
  const nodes = ['0', '1', '2', '3', '4', '5'];
  test('without a way to ground are named once for each island', () => {
    const elements = [resistor(0, 1), resistor(2, 3), resistor(3, 4)];
    expect(floatingIslands({ nodes, elements })).toEqual([2, 5]);
    const current: Element = { kind: 'current', from: 5, to: 0, amps: 1 };
    expect(floatingIslands({ nodes, elements: [...elements, current] })).toEqual([2, 5]);
    expect(
      floatingIslands({ nodes, elements: [...elements, resistor(5, 4), resistor(5, 0)] }),
    ).toEqual([]);
  });
});

describe('what is joined by metal', () => {
  const hall = shipped('hall-module-fed');
  const relay = shipped('hall-relay-fed');
  const joined = (terminal: string, part: Partial<Setup> = {}, circuit = hall) =>
    joinedTo(circuit, setupOf(part), terminal);
  const clip = { from: 'sensor.signal', to: 'battery.negative' };

  test('a wire, from pin to pin', () => {
    expect([...joined('sensor.signal')].sort()).toEqual([
      'module.signal',
      'module.signal.pin',
      'sensor.signal',
      'sensor.signal.pin',
    ]);
  });
  test('not the part whose connector is off', () => {
    expect([...joined('sensor.signal', { unplugged: ['sensor', 'module'] })].sort()).toEqual([
      'module.signal',
      'sensor.signal',
    ]);
  });
  test('what a lead is clipped to, and nothing through a lamp or a resistor', () => {
    const through = (how: 'lead' | 'lamp' | { ohms: number }) =>
      joined('module.signal', { bridges: [{ ...clip, through: how }] }).has('battery.negative');
    expect([through('lead'), through('lamp'), through({ ohms: 470 })]).toEqual([
      true,
      false,
      false,
    ]);
  });
  test('pins of the module that share a rail, and its ground', () => {
    expect(joined('sensor.feed').has('throttle-position.feed')).toBe(true);
    expect(joined('sensor.ground').has('battery.negative')).toBe(true);
    expect(joined('sensor.ground', { unplugged: ['module'] }).has('battery.negative')).toBe(false);
  });
  test('the fuse always, the relay with the key on, the body at its eyelet', () => {
    expect(joined('sensor.feed', {}, relay).has('battery.positive')).toBe(true);
    const off = joined('sensor.feed', { state: 'key-off' }, relay);
    expect([off.has('fuse.in'), off.has('battery.positive')]).toEqual([true, false]);
    expect(joined('sensor.ground', {}, relay).has('battery.negative')).toBe(true);
  });
});

test('what a record keeps of a reading is the reading, with OL as infinity', () => {
  expect(shownOf({ kind: 'look', look: 'dim' })).toEqual({ kind: 'look', look: 'dim' });
  expect(shownOf({ kind: 'number', value: 0, unit: 'V' })).toEqual({
    kind: 'number',
    value: 0,
    unit: 'V',
  });
  expect(shownOf({ kind: 'number', value: null, unit: 'ohm' })).toEqual({
    kind: 'number',
    value: Number.POSITIVE_INFINITY,
    unit: 'ohm',
  });
});

describe('bridges in a netlist', () => {
  const clipped = (through: Bridge['through'], from = 'a.b', to = 'c.d') => {
    const names: string[] = [];
    const node = (name: string) =>
      names.includes(name) ? names.indexOf(name) : names.push(name) - 1;
    const find = (name: string) => (names.includes(name) ? names.indexOf(name) : undefined);
    const makers: Plan['makers'] = [];
    const asked: unknown[] = [];
    addBridges(
      { nodes: names, makers, node, find, value: valuesOf(shipped('hall-module-fed')) },
      setupOf({ bridges: [{ from, to, through }] }),
      (...of) => {
        asked.push(of);
        return { kind: 'resistor', a: of[1], b: of[2], ohms: 1 };
      },
    );
    return { asked, made: makers.map((make) => make(NOMINAL_DRAW)) };
  };
  const plain = (ohms: number) => [{ kind: 'resistor', a: 0, b: 1, ohms }];

  test('a lead is 50 milliohm, a resistor is itself and never less than a lead', () => {
    expect(clipped('lead').made).toEqual(plain(0.05));
    expect(clipped({ ohms: 470 }).made).toEqual(plain(470));
    expect(clipped({ ohms: 1e-6 }).made).toEqual(plain(0.05));
  });
  test('an LED light glows whichever way it is clipped, a lamp is the same both ways', () => {
    expect(clipped('test-light').asked).toEqual([
      ['test-light', 0, 1],
      ['test-light', 1, 0],
    ]);
    expect(clipped('test-light').made).toHaveLength(2);
    expect(clipped('lamp').asked).toEqual([['lamp', 0, 1]]);
    expect(clipped('lamp').made).toHaveLength(1);
  });
  test('from a place to itself is nothing', () => {
    expect(clipped('lead', 'a.b', 'a.b').made).toEqual([]);
  });
});
