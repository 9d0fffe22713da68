/** The tests that the rules give. */
import { describe, expect, test } from 'vitest';
import type { Pull } from '../../src/circuit/circuit.ts';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { TEST_FAMILIES } from '../../src/circuit/test-list.ts';
import { modelOf, NAMES, number, shipped } from './shipped.ts';

test('a resistor in place of the fuse tells what is shorted behind it, without ohms across electronics', () => {
  const model = modelOf('hall-relay-fed', 64);
  const behind = (id: string, fault: string) => {
    const { test: one } = standardTests(shipped('hall-relay-fed')).find((each) => each.id === id)!;
    return number(model, fault, one);
  };
  for (const [fault, off] of [
    ['sensor.shorted', 'sensor'],
    ['speed-sensor.shorted', 'speed-sensor'],
  ] as const) {
    // by hand: at most 20 ohm behind 330 leave a sixteenth of the battery
    expect(behind('fuse.burden', fault)).toBeLessThan(1);
    expect(behind(`fuse.burden-without-${off}`, fault)).toBeGreaterThan(8);
  }
  expect(behind('fuse.alone', 'fuse.blown')).toBe(Number.POSITIVE_INFINITY);
});

test('where the module may pass the battery on, its feed is read with the key off too', () => {
  const off = (name: string) =>
    standardTests(shipped(name)).find(({ id }) => id === 'sensor.feed.off-volts');
  const model = modelOf('current-two-wire', 64);
  // by hand: nothing drives the wire but what it touches
  expect(number(model, 'healthy', off('current-two-wire')!.test)).toBeLessThan(0.1);
  expect(
    number(model, 'wire.feed.short-to-battery', off('current-two-wire')!.test),
  ).toBeGreaterThan(11);
  // 5 V with the key on are told from battery at once
  expect(off('hall-module-fed')).toBeUndefined();
});

describe.each(NAMES)('%s', (name) => {
  const options = standardTests(shipped(name));

  test('none is refused, ids are unique, each has words, minutes and needs', () => {
    const circuit = shipped(name);
    expect(new Set(options.map((option) => option.id)).size).toBe(options.length);
    for (const option of options) {
      expect(refuseTest(circuit, option.test), option.id).toBeNull();
      expect(option.words.length).toBeGreaterThan(10);
      expect(option.minutes).toBeGreaterThan(0);
      expect(option.needs.length).toBeGreaterThan(0);
      expect([...option.test.setup.unplugged]).toEqual([...option.test.setup.unplugged].sort());
    }
  });

  test('each needs the instrument that it reads and what is clipped in', () => {
    const reads = {
      volts: 'meter',
      ohms: 'meter',
      amps: 'milliammeter',
      light: 'test-light',
      lamp: 'lamp',
      pattern: 'scope',
      timing: 'scope',
      counts: 'live-data',
      inspect: 'eyes',
    } as const;
    for (const { id, needs, test: one } of options) {
      const clips = one.setup.bridges.map(({ through }) =>
        typeof through === 'object' ? 'resistor' : through,
      );
      const spare = one.setup.sensor === 'spare' ? ['spare-sensor'] : [];
      expect([...needs].sort(), id).toEqual(
        [...new Set([reads[one.probe.kind], ...clips, ...spare])].sort(),
      );
    }
  });

  test('ohms are told with the connectors that are off, and names as people write them', () => {
    for (const { id, words: whole, family, test: one } of options) {
      if (family !== 'continuity') continue;
      // A neighbour that the meter would meet is named behind.
      const words = whole.replace(/, the [a-z ]+ too$/, '');
      const too = words === whole ? 0 : 1;
      const off = ['sensor unplugged', 'both connectors off', 'all connectors off'];
      const said = /, (relay|module) unplugged$|, taken out$/.test(words)
        ? 1
        : off.findIndex((end) => words.endsWith(`, ${end}`)) + 1;
      expect(said, id).toBe(Math.min(3, one.setup.unplugged.length - too));
      expect(words, id).not.toContain('-');
    }
  });

  test('there are signal, pattern, spare, bypass, continuity and inspection tests', () => {
    const families = new Set(options.map((option) => option.family));
    for (const family of [
      'signal',
      'pattern',
      'spare',
      'bypass',
      'continuity',
      'inspection',
    ] as const)
      expect(families).toContain(family);
  });

  test('an injection moves the voltage at the input by half a volt, and a pull-down under its threshold', () => {
    const model = modelOf(name, 8);
    const injections = options.filter(({ id }) => id.includes('.injection-at-'));
    // A coil makes its own signal: there is nothing to inject.
    expect(injections.length > 0).toBe(name !== 'reluctor-two-wire');
    for (const { id, test: one } of injections) {
      const bare = { ...one, setup: { ...one.setup, bridges: [] } };
      const moved = number(model, 'healthy', one) - number(model, 'healthy', bare);
      expect(Math.abs(moved), id).toBeGreaterThan(0.5);
      const [clip] = one.setup.bridges;
      if (clip!.to === 'battery.negative') expect(model.pullsLow(one)?.pulls, id).toBe(true);
      else expect(moved, id).toBeGreaterThan(0);
    }
  });
});

test('a pull-up lent at the module lifts a wire whose own is missing, and none that is held down', () => {
  const model = modelOf('hall-module-fed', 8);
  const lent = standardTests(shipped('hall-module-fed')).find(({ id }) =>
    id.endsWith('.lent-volts'),
  )!.test;
  const volts = (fault: string) => number(model, fault, lent);
  // 5 V behind 1 kohm, on a sensor that rests high or, through 20 to 200 ohm, low
  expect(volts('module.signal.pull-missing')).toBeGreaterThan(0.09);
  expect(volts('contact.module.signal.open')).toBeGreaterThan(0.09);
  // 0.01 to 2 ohm, by hand: 5 V times 2 / 1002
  expect(volts('wire.signal.short-to-ground')).toBeLessThan(0.05);
});

test('the module-fed Hall circuit has every family', () => {
  const families = new Set(
    standardTests(shipped('hall-module-fed')).map((option) => option.family),
  );
  expect([...families].sort()).toEqual([...TEST_FAMILIES].sort());
});

// A load shows how strong a bias is; a wire of the coil that nothing pulls up has none. Common practice, no source.
test.each<[string, (pull: Pull | null) => Pull | null, boolean]>([
  ['a bias on both wires', (pull) => pull, true],
  ['no bias on one wire', () => null, false],
  ['one wire pulled to ground', (pull) => pull && { ...pull, to: { kind: 'ground' } }, false],
])('a coil with %s', (_, second, isLoaded) => {
  const circuit = shipped('reluctor-two-wire');
  const module = circuit.parts.find((part) => part.kind === 'module')!;
  const inside = module.inside.map((pin) =>
    pin.name === 'signal-minus' ? { ...pin, pull: second(pin.pull) } : pin,
  );
  const parts = circuit.parts.map((part) => (part === module ? { ...module, inside } : part));
  const ids = standardTests({ ...circuit, parts }).map(({ id }) => id);
  expect(ids.some((id) => id.includes('loaded-at-module'))).toBe(isLoaded);
  expect(ids.includes('sensor.loaded-coil')).toBe(isLoaded);
  expect(ids).toContain('sensor.coil-ohms');
});

/** `state target sensor [unplugged] kind plus minus` and, in brackets, what is clipped in. */
function arranged({ test: { setup, probe } }: ReturnType<typeof standardTests>[number]): string {
  const clips = setup.bridges.map(
    ({ from, to, through }) =>
      ` (${typeof through === 'object' ? through.ohms : through} ${from} ${to})`,
  );
  const places =
    'plus' in probe ? `${probe.plus} ${probe.minus}` : 'of' in probe ? probe.of : probe.input;
  return `${setup.state} ${setup.target} ${setup.sensor} [${setup.unplugged.join(' ')}] ${probe.kind} ${places}${clips.join('')}`;
}

// The rules of the trade, written out by hand for two circuits: common practice, no source.
test.each<[string, string, string, string]>([
  // circuit, test, what is needed, how it is arranged
  [
    'hall-module-fed',
    'sensor.feed.volts',
    'meter',
    'key-on still fitted [] volts sensor.feed battery.negative',
  ],
  [
    'hall-module-fed',
    'sensor.feed.open-to-ground',
    'meter',
    'key-on still fitted [sensor] volts sensor.feed sensor.ground',
  ],
  [
    'hall-module-fed',
    'sensor.feed.light',
    'test-light',
    'key-on still fitted [sensor] light sensor.feed battery.negative',
  ],
  [
    'hall-module-fed',
    'sensor.feed.loaded',
    'meter test-light',
    'key-on still fitted [sensor] volts sensor.feed battery.negative (test-light sensor.feed battery.negative)',
  ],
  [
    'hall-module-fed',
    'module.reference.volts',
    'meter',
    'key-on still fitted [] volts module.reference battery.negative',
  ],
  [
    'hall-module-fed',
    'sensor.ground.drop',
    'meter',
    'key-on still fitted [] volts sensor.ground battery.negative',
  ],
  [
    'hall-module-fed',
    'sensor.ground.light',
    'test-light',
    'key-on still fitted [sensor] light battery.positive sensor.ground',
  ],
  [
    'hall-module-fed',
    'sensor.ground.loaded-drop',
    'meter test-light',
    'key-on still fitted [sensor] volts sensor.ground battery.negative (test-light battery.positive sensor.ground)',
  ],
  [
    'hall-module-fed',
    'sensor.signal.open-volts',
    'meter',
    'key-on still fitted [sensor] volts sensor.signal battery.negative',
  ],
  [
    'hall-module-fed',
    'module.signal.pattern',
    'scope',
    'cranking moving fitted [] pattern module.signal battery.negative',
  ],
  [
    'hall-module-fed',
    'module.signal.counts',
    'live-data',
    'cranking moving fitted [] counts module.signal',
  ],
  [
    'hall-module-fed',
    'module.signal.timing',
    'scope',
    'cranking moving fitted [] timing module.signal battery.negative',
  ],
  [
    'hall-module-fed',
    'wire.signal.bypass',
    'lead live-data',
    'cranking moving fitted [] counts module.signal (lead sensor.signal module.signal)',
  ],
  [
    'hall-module-fed',
    'module.signal.injection-at-sensor',
    'meter resistor',
    'key-on still fitted [sensor] volts module.signal battery.negative (470 sensor.signal battery.negative)',
  ],
  [
    'hall-module-fed',
    'module.signal.spare',
    'spare-sensor live-data',
    'cranking moving spare [] counts module.signal',
  ],
  // Without live data: a fault inside the old sensor is gone, one of its plug is not.
  [
    'hall-module-fed',
    'sensor.signal.spare-pattern',
    'spare-sensor scope',
    'cranking moving spare [] pattern sensor.signal battery.negative',
  ],
  // At the module's end, where the sensor's plug cannot be reached.
  [
    'hall-module-fed',
    'module.ground.drop',
    'meter',
    'key-on still fitted [] volts module.ground battery.negative',
  ],
  [
    'hall-module-fed',
    'module.signal.lent-volts',
    'meter resistor',
    'key-on still fitted [] volts module.signal battery.negative (1000 module.reference module.signal) (330 module.reference battery.negative)',
  ],
  [
    'hall-module-fed',
    'module.signal.lent-pattern',
    'scope resistor',
    'cranking moving fitted [] pattern module.signal battery.negative (1000 module.reference module.signal) (330 module.reference battery.negative)',
  ],
  [
    // Refused through the electronics of a switch.
    'throttle-potentiometer',
    'module.signal.ohms-to-ground',
    'meter',
    'key-off still fitted [module] ohms module.signal battery.negative',
  ],
  [
    'reluctor-two-wire',
    'sensor.plus.spare-pattern',
    'spare-sensor scope',
    'cranking moving spare [] pattern sensor.plus sensor.minus',
  ],
  [
    'hall-module-fed',
    'wire.feed.ohms',
    'meter',
    'key-off still fitted [module sensor] ohms module.reference sensor.feed',
  ],
  [
    'hall-module-fed',
    'wire.feed.ohms-to-signal',
    'meter',
    'key-off still fitted [module sensor] ohms sensor.feed sensor.signal',
  ],
  [
    'hall-module-fed',
    'wire.signal.ohms-to-ground',
    'meter',
    'key-off still fitted [module sensor] ohms sensor.signal battery.negative',
  ],
  [
    'hall-module-fed',
    'sensor.feed.without-throttle-position',
    'meter',
    'key-on still fitted [throttle-position] volts sensor.feed battery.negative',
  ],
  [
    'hall-module-fed',
    'connector.module.inspection',
    'eyes',
    'key-off still fitted [] inspect connector.module',
  ],
  ['hall-module-fed', 'target.inspection', 'eyes', 'key-off still fitted [] inspect target'],
  [
    'hall-module-fed',
    'target.marks.inspection',
    'eyes',
    'key-off still fitted [] inspect target.marks',
  ],
  [
    'reluctor-two-wire',
    'sensor.plus.pattern',
    'scope',
    'cranking moving fitted [] pattern sensor.plus sensor.minus',
  ],
  [
    'reluctor-two-wire',
    'sensor.coil-ohms',
    'meter',
    'key-off still fitted [sensor] ohms sensor.plus.pin sensor.minus.pin',
  ],
  [
    'reluctor-two-wire',
    'module.loop-ohms',
    'meter',
    'key-off still fitted [module] ohms module.signal-plus module.signal-minus',
  ],
  [
    'reluctor-two-wire',
    'sensor.minus.volts',
    'meter',
    'key-on still fitted [] volts sensor.minus battery.negative',
  ],
])('%s: %s takes %s, %s', (name, id, needs, how) => {
  const option = standardTests(shipped(name)).find((one) => one.id === id)!;
  expect(option.needs.join(' ')).toBe(needs);
  expect(arranged(option)).toBe(how);
});

test.each([
  ['hall-relay-fed', true],
  ['reluctor-two-wire', true],
  ['current-two-wire', false],
  ['throttle-potentiometer', false],
  ['pedal-dual', false],
] as const)("%s has marks of the maker's to be turned to: %s", (name, has) => {
  const ids = standardTests(shipped(name)).map(({ id }) => id);
  expect(ids.includes('target.marks.inspection')).toBe(has);
});

test('a coil is fed by nothing, a neighbour has no inspection of its own, and no test is there twice', () => {
  const coil = standardTests(shipped('reluctor-two-wire'));
  expect(coil.some(({ family }) => family === 'reference' || family === 'ground')).toBe(false);
  const hall = standardTests(shipped('hall-module-fed')).map(({ id }) => id);
  expect(hall).not.toContain('connector.throttle-position.inspection');
  // ohms between two wires are measured once, from either end
  expect(hall).toContain('wire.feed.ohms-to-signal');
  expect(hall).not.toContain('wire.signal.ohms-to-feed');
});

test('a potentiometer is measured at rest and moved, and at its own pins', () => {
  const options = standardTests(shipped('throttle-potentiometer'));
  const by = (pattern: RegExp) => options.filter(({ id }) => pattern.test(id));
  expect(by(/\.moved$/).length).toBeGreaterThan(0);
  for (const { test: one } of by(/\.moved$/)) expect(one.setup.target).toBe('moving');
  for (const { test: one } of by(/(track|wiper)-ohms$/)) {
    expect(one.setup).toMatchObject({ state: 'key-off', unplugged: ['sensor'] });
    expect(one.probe).toMatchObject({ kind: 'ohms' });
  }
  expect(by(/track-ohms$/)).toHaveLength(1);
  expect(by(/wiper-ohms$/)).toHaveLength(1);
});

describe('the weight of a fault', () => {
  test('is its share among the faults of its class: common practice, no source', () => {
    const { faults } = shipped('hall-module-fed');
    const weight = (id: string) => faults.find((fault) => fault.id === id)!.weight;
    const open = weight('wire.feed.open');
    const share = (id: string) => weight(id) / open;
    expect(share('wire.feed.resistive')).toBeCloseTo(1.2, 9);
    expect(share('wire.feed.short-to-ground')).toBeCloseTo(0.5, 9);
    expect(share('wire.feed.short-to-battery')).toBeCloseTo(0.2, 9);
    expect(share('wire.signal.short-to-feed')).toBeCloseTo(0.3, 9);
    expect(share('wire.signal.open')).toBeCloseTo(1, 9);
    expect(
      weight('contact.sensor.feed.resistive') / weight('contact.sensor.feed.open'),
    ).toBeCloseTo(1.2, 9);
  });
  test('of a neighbour counts only where it drags the shared feed down or holds it up', () => {
    const { faults } = shipped('hall-module-fed');
    const ids = faults.map(({ id }) => id).filter((id) => id.includes('throttle'));
    expect(ids).toEqual([
      'wire.throttle-feed.short-to-ground',
      'wire.throttle-feed.short-to-battery',
      'throttle-position.shorted',
    ]);
  });
});
