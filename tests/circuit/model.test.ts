/** What the model shows: figures by hand, and the way faults show according to the trade notes (common practice, no source). */
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { LONG } from '../campaign.ts';
import { knownCircuit, knownModel } from './known-car.ts';
import { look, METER, modelOf, NAMES, number, shipped, testOf, volts } from './shipped.ts';

const hall = knownModel('hall-module-fed');
const OFF = { unplugged: ['sensor'] };
const CRANK = { state: 'cranking', target: 'moving' } as const;
const pattern = (plus: string, minus = 'battery.negative') =>
  testOf({ kind: 'pattern', plus, minus }, CRANK);
const counts = (input: string, part = {}) =>
  testOf({ kind: 'counts', input }, { ...CRANK, ...part });

describe('three-wire Hall switch fed by the module', () => {
  test('healthy figures by hand', () => {
    // Sensor 8 mA, throttle 1.25 mA and 0.05 mA of bleed through 0.5 ohm: 5 - 0.0047 V at the reference.
    expect(number(hall, 'healthy', volts('module.reference'))).toBeCloseTo(4.9953, 4);
    // 8 mA through the wire of 0.1129 ohm: 0.9 mV less at the sensor.
    expect(number(hall, 'healthy', volts('sensor.feed'))).toBeCloseTo(4.9953 - 0.0009, 3);
    // Unplugged: pull-up of 2.2 kohm against a meter of 10 Mohm, 5 V * (1 - 2.2e3 / 1e7) = 4.9989 V less 0.6 mV.
    expect(number(hall, 'healthy', volts('sensor.signal', 'battery.negative', OFF))).toBeCloseTo(
      4.9983,
      3,
    );
    // Wire end to end: 3 m of 0.5 mm2, 1/58 * 3 / 0.5 * 1.07 at 25 degC.
    const ohms = testOf(
      { kind: 'ohms', plus: 'module.signal', minus: 'sensor.signal' },
      { state: 'key-off', unplugged: ['module', 'sensor'] },
    );
    expect(number(hall, 'healthy', ohms)).toBeCloseTo((3 / 58 / 0.5) * 1.07 * (1 + 0.00393 * 5), 6);
  });

  test('wires spread evenly to both sides of their nominal resistance', () => {
    const ohms = testOf(
      { kind: 'ohms', plus: 'module.signal', minus: 'sensor.signal' },
      { state: 'key-off', unplugged: ['module', 'sensor'] },
    );
    const nominal = number(hall, 'healthy', ohms);
    const place = hall.quantities.findIndex(({ key }) => key === 'temperature');
    // copper at -20 to 110 degC against the file's 25 degC, 0.393 % a kelvin from 20 degC (IACS)
    const warmth = (sample: number) => {
      const at = hall.pointOf(sample)[place]!;
      const celsius = at < 0.5 ? -20 + 90 * at : 25 + 170 * (at - 0.5);
      return (1 + 0.00393 * (celsius - 20)) / (1 + 0.00393 * 5);
    };
    const drawn = Array.from(
      { length: 32 },
      (_, sample) => number(hall, 'healthy', ohms, sample) / warmth(sample),
    );
    // 15 % is allowed to each side; of 32 even draws the outermost lie beyond 12 %
    for (const [edge, sign] of [
      [Math.min(...drawn), -1],
      [Math.max(...drawn), 1],
    ] as const) {
      expect((sign * (edge - nominal)) / nominal).toBeGreaterThan(0.12);
      expect((sign * (edge - nominal)) / nominal).toBeLessThanOrEqual(0.15);
    }
  });

  test('at rest the sensor is on as often as its wheel says', () => {
    const { circuit } = hall;
    const share = (onChance: number) => {
      const target = { ...circuit.target!, onChance };
      const options = { samples: 64, seed: 1, meter: METER };
      const still = createModel({ ...circuit, target }, options);
      const low = Array.from({ length: 64 }, (_, sample) =>
        number(still, 'healthy', volts('sensor.signal'), sample),
      ).filter((value) => value < 2.5);
      return low.length / 64;
    };
    // an even sequence of 64 differs from the chance by less than 2 of 64
    for (const chance of [0.1, 0.5, 0.9])
      expect(Math.abs(share(chance) - chance)).toBeLessThan(2 / 64);
  });

  test('the output pulls the signal to 5 V * 50 / 2250 when on, and the module counts', () => {
    const { low, high } = hall.levels('healthy', pattern('module.signal'), -1);
    expect(low).toBeCloseTo((4.995 * 50) / 2250, 2);
    expect(high).toBeGreaterThan(4.9);
    expect(look(hall, 'healthy', pattern('module.signal'))).toBe('full');
    expect(look(hall, 'healthy', counts('module.signal'))).toBe('follows');
  });

  test.each([
    // fault, feed at the sensor, feed to its ground, signal at the sensor's plug (unplugged), at the module (unplugged)
    ['wire.feed.open', 0, 0, 5, 5],
    ['wire.signal.open', 5, 5, 0, 5],
    ['wire.signal.short-to-ground', 5, 5, 0, 0],
    ['wire.signal.short-to-battery', 5, 5, 12.6, 12.6],
    ['wire.ground.open', 5, 0, 5, 5],
    ['module.reference.dead', 0, 0, 0, 0],
    ['module.signal.pull-missing', 5, 5, 0, 0],
    ['contact.module.signal.open', 5, 5, 0, 0],
    ['sensor.dead', 5, 5, 5, 5],
  ])(
    '%s: feed %f V, to ground %f V, signal %f V at the plug, %f V at the module',
    (fault, feed, toGround, plug, module) => {
      expect(number(hall, fault, volts('sensor.feed'))).toBeCloseTo(feed, 1);
      expect(number(hall, fault, volts('sensor.feed', 'sensor.ground'))).toBeCloseTo(toGround, 1);
      expect(number(hall, fault, volts('sensor.signal', 'battery.negative', OFF))).toBeCloseTo(
        plug,
        1,
      );
      expect(number(hall, fault, volts('module.signal', 'battery.negative', OFF))).toBeCloseTo(
        module,
        1,
      );
      expect(look(hall, fault, counts('module.signal'))).toBe('still');
    },
  );

  test('a resistive feed reads full volts unloaded and falls with the sensor on it; the light does not shine', () => {
    for (let sample = 0; sample < hall.samples; sample += 1) {
      expect(
        number(hall, 'wire.feed.resistive', volts('sensor.feed', 'battery.negative', OFF), sample),
      ).toBeGreaterThan(4.85);
      expect(number(hall, 'wire.feed.resistive', volts('sensor.feed'), sample)).toBeLessThan(3.5);
    }
    const light = testOf({ kind: 'light', plus: 'sensor.feed', minus: 'sensor.ground' }, OFF);
    expect(look(hall, 'healthy', light)).toBe('lit');
    expect(look(hall, 'wire.feed.resistive', light)).toBe('dim');
    expect(look(hall, 'wire.feed.open', light)).toBe('dark');
  });

  test('a neighbour that drags the reference down lets go when it is unplugged', () => {
    expect(number(hall, 'throttle-position.shorted', volts('sensor.feed'))).toBeLessThan(1);
    expect(
      number(
        hall,
        'throttle-position.shorted',
        volts('sensor.feed', 'battery.negative', { unplugged: ['throttle-position'] }),
      ),
    ).toBeGreaterThan(4.9);
    expect(
      number(
        hall,
        'wire.throttle-feed.short-to-ground',
        volts('sensor.feed', 'battery.negative', { unplugged: ['throttle-position'] }),
      ),
    ).toBeLessThan(1);
  });

  test('a good spare puts right the sensor and nothing else', () => {
    const spare = counts('module.signal', { sensor: 'spare' });
    for (const fault of knownCircuit('hall-module-fed').faults) {
      const before = look(hall, fault.id, counts('module.signal'));
      const after = look(hall, fault.id, spare);
      if (fault.repair === 'sensor.replace') expect(after).toBe('follows');
      else expect(after).toBe(before);
    }
  });

  test('a temporary signal wire puts right an open or resistive signal wire, and no short', () => {
    const bypass = counts('module.signal', {
      bridges: [{ from: 'sensor.signal', to: 'module.signal', through: 'lead' as const }],
    });
    expect(look(hall, 'wire.signal.open', bypass)).toBe('follows');
    expect(look(hall, 'wire.signal.resistive', bypass)).toBe('follows');
    expect(look(hall, 'wire.signal.short-to-ground', bypass)).toBe('still');
    expect(look(hall, 'contact.sensor.signal.open', bypass)).toBe('still');
  });

  test('the module sees a right signal and does not count when its input is dead', () => {
    expect(look(hall, 'module.signal.input-dead', pattern('module.signal'))).toBe('full');
    expect(look(hall, 'module.signal.input-dead', counts('module.signal'))).toBe('still');
  });

  test('a flat line is high, low or in the middle by where the healthy signal lies', () => {
    expect(look(hall, 'wire.signal.open', pattern('module.signal'))).toBe('flat-high');
    expect(look(hall, 'wire.signal.open', pattern('sensor.signal'))).toBe('flat-low');
    expect(look(hall, 'wire.signal.short-to-ground', pattern('module.signal'))).toBe('flat-low');
    expect(look(hall, 'sensor.stuck-high', pattern('module.signal'))).toBe('flat-high');
    // the coil's ends both stand at 2.5 V: nothing between them is the middle of its wave
    const coil = knownModel('reluctor-two-wire', 1);
    const across = testOf({ kind: 'pattern', plus: 'sensor.plus', minus: 'sensor.minus' }, CRANK);
    expect(look(coil, 'healthy', across)).toBe('full');
    expect(look(coil, 'sensor.coil-open', across)).toBe('flat-middle');
  });

  test('wheel and timing: right electrically, wrong pattern or wrong position', () => {
    const timing = testOf(
      { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' },
      CRANK,
    );
    expect(look(hall, 'target.damaged', pattern('module.signal'))).toBe('uneven');
    expect(look(hall, 'target.displaced', pattern('module.signal'))).toBe('full');
    expect(look(hall, 'target.displaced', timing)).toBe('shifted');
    expect(look(hall, 'healthy', timing)).toBe('in-step');
    expect(look(hall, 'sensor.dead', timing)).toBe('no-signal');
  });

  test('the light does not pull a 2.2 kohm pull-up under 1.5 V, a resistor of 470 ohm does', () => {
    const at = (through: 'test-light' | { ohms: number }) =>
      hall.pullsLow(
        testOf(
          { kind: 'counts', input: 'module.signal' },
          { ...OFF, bridges: [{ from: 'sensor.signal', to: 'battery.negative', through }] },
        ),
      )!;
    expect(at('test-light').pulls).toBe(false);
    // The junction of the light alone takes about 1.7 V at 1.3 mA.
    expect(at('test-light').nominal).toBeGreaterThan(1.5);
    expect(at({ ohms: 470 }).pulls).toBe(true);
    // 5 V * 470 / 2670 = 0.880 V
    expect(at({ ohms: 470 }).nominal).toBeCloseTo(0.88, 2);
  });

  test('a pull-down goes from an input to ground through something; clipped either way it is the same', () => {
    const at = (from: string, to: string, through: 'lead' | { ohms: number } = { ohms: 470 }) =>
      hall.pullsLow(
        testOf(
          { kind: 'counts', input: 'module.signal' },
          { ...OFF, bridges: [{ from, to, through }] },
        ),
      );
    const down = at('sensor.signal', 'battery.negative');
    expect(down).toMatchObject({ input: 'module.signal', thresholdVolts: 1.5 });
    expect(at('battery.negative', 'sensor.signal')).toEqual(down);
    // the samples lie on both sides of the middle
    expect(down!.low).toBeLessThan(down!.nominal);
    expect(down!.high).toBeGreaterThan(down!.nominal);
    expect(at('sensor.signal', 'battery.negative', 'lead')).toBeNull();
    expect(at('sensor.signal', 'battery.positive')).toBeNull();
    expect(at('sensor.feed', 'battery.negative')).toBeNull();
    expect(hall.pullsLow(volts('sensor.signal'))).toBeNull();
  });

  test('a still wheel leaves the output on in about half of the samples', () => {
    const still = volts('module.signal');
    const low = Array.from({ length: 32 }, (_, sample) =>
      number(hall, 'healthy', still, sample),
    ).filter((value) => value < 1).length;
    expect(low).toBeGreaterThan(10);
    expect(low).toBeLessThan(22);
  });

  test('inspection finds a fault only where it sits, and not always', () => {
    const inspect = (of: string) => testOf({ kind: 'inspect', of }, { state: 'key-off' });
    const found = (fault: string, of: string) =>
      Array.from({ length: 32 }, (_, sample) => look(hall, fault, inspect(of), sample)).filter(
        (shown) => shown === 'faulty',
      ).length;
    expect(found('contact.sensor.feed.open', 'connector.sensor')).toBeGreaterThan(20);
    expect(found('contact.sensor.feed.open', 'connector.sensor')).toBeLessThan(32);
    expect(found('contact.sensor.feed.open', 'connector.module')).toBe(0);
    expect(found('healthy', 'connector.sensor')).toBe(0);
  });

  test("the maker's marks show a wheel that stands wrong on every car, and nothing else", () => {
    const seen = (model: typeof hall, fault: string, of: string) =>
      Array.from({ length: 32 }, (_, sample) =>
        look(model, fault, testOf({ kind: 'inspect', of }, { state: 'key-off' }), sample),
      ).filter((shown) => shown === 'faulty').length;
    const marks = 'target.marks';
    expect(seen(hall, 'target.displaced', marks)).toBe(32);
    expect(seen(hall, 'target.displaced', 'target')).toBeLessThan(20);
    for (const { id } of hall.circuit.faults)
      if (id !== 'target.displaced') expect(seen(hall, id, marks), id).toBe(0);
    // a scope calls swapped leads shifted as well; the marks do not
    const coil = knownModel('reluctor-two-wire');
    expect(seen(coil, 'target.displaced', marks)).toBe(32);
    expect(seen(coil, 'sensor.leads-swapped', marks)).toBe(0);
    expect(seen(coil, 'healthy', marks)).toBe(0);
  });
});

describe('12 V Hall switch through fuse and relay', () => {
  const relay = knownModel('hall-relay-fed');

  test('a shorted feed or neighbour blows the fuse, and the fuse stays blown with the sensor unplugged', () => {
    for (const fault of ['wire.feed.short-to-ground', 'fuse.blown']) {
      expect(number(relay, fault, volts('sensor.feed'))).toBeCloseTo(0, 3);
      expect(number(relay, fault, volts('fuse.out'))).toBeCloseTo(0, 3);
      expect(number(relay, fault, volts('fuse.in'))).toBeGreaterThan(12);
      expect(number(relay, fault, volts('fuse.out', 'battery.negative', OFF))).toBeCloseTo(0, 3);
    }
  });

  test('a bad ground point lifts the sensor ground, with the neighbour on it too', () => {
    expect(number(relay, 'healthy', volts('sensor.ground'))).toBeLessThan(0.1);
    expect(
      number(relay, 'contact.ground-point.eyelet.open', volts('sensor.ground')),
    ).toBeGreaterThan(12);
    expect(number(relay, 'wire.ground.open', volts('speed-sensor.ground'))).toBeLessThan(0.1);
  });
});

describe('two-wire variable reluctance sensor', () => {
  const coil = knownModel('reluctor-two-wire');
  const ohms = testOf(
    { kind: 'ohms', plus: 'sensor.plus.pin', minus: 'sensor.minus.pin' },
    { state: 'key-off', ...OFF },
  );

  test('coil in ohms, bias in volts', () => {
    expect(number(coil, 'healthy', ohms)).toBeCloseTo(900, 0);
    expect(number(coil, 'sensor.coil-open', ohms)).toBe(Number.POSITIVE_INFINITY);
    expect(number(coil, 'sensor.shorted-turns', ohms)).toBeLessThan(700);
    expect(number(coil, 'healthy', volts('sensor.plus', 'battery.negative', OFF))).toBeCloseTo(
      2.5,
      1,
    );
  });

  test('swapped leads are seen in the position only', () => {
    const at = { plus: 'module.signal-plus', minus: 'module.signal-minus' };
    expect(look(coil, 'sensor.leads-swapped', testOf({ kind: 'pattern', ...at }, CRANK))).toBe(
      'full',
    );
    expect(look(coil, 'sensor.leads-swapped', testOf({ kind: 'timing', ...at }, CRANK))).toBe(
      'shifted',
    );
    expect(look(coil, 'sensor.shorted-turns', testOf({ kind: 'pattern', ...at }, CRANK))).toBe(
      'weak',
    );
  });
});

describe('what is expected over the tolerances', () => {
  const model = knownModel('hall-module-fed', 6);
  const signal = pattern('module.signal');
  const all = [-1, 0, 1, 2, 3, 4, 5];

  test('of a number: the least and the greatest of every sample and the middle', () => {
    const feed = volts('sensor.feed');
    const values = all.map((sample) => number(model, 'wire.feed.resistive', feed, sample));
    expect(model.expected(feed, 'wire.feed.resistive')).toEqual({
      kind: 'number',
      unit: 'V',
      nominal: values[0],
      low: Math.min(...values),
      high: Math.max(...values),
    });
    expect(new Set(values).size).toBe(all.length);
  });

  test('of a look: how often each is seen in the samples, the most frequent first', () => {
    expect(model.expected(counts('module.signal'))).toEqual({
      kind: 'looks',
      looks: [{ look: 'follows', chance: 1 }],
    });
    for (const fault of ['sensor.shorted', 'target.gap-wide', 'module.reference.low']) {
      const seen = all.slice(1).map((sample) => look(model, fault, signal, sample));
      const expected = model.expected(signal, fault);
      if (expected.kind !== 'looks') throw new Error('looks expected');
      expect(expected.looks).toHaveLength(new Set(seen).size);
      expect(expected.looks.length).toBeGreaterThan(1);
      for (const { look: one, chance } of expected.looks)
        expect(chance).toBe(seen.filter((other) => other === one).length / seen.length);
      expect(expected.looks[0]!.chance).toBeGreaterThanOrEqual(expected.looks[1]!.chance);
    }
  });

  test('without samples the middle of all tolerances stands for them', () => {
    const bare = knownModel('hall-module-fed', 0);
    expect(bare.expected(signal)).toEqual({ kind: 'looks', looks: [{ look: 'full', chance: 1 }] });
  });

  test('what was computed once is kept', () => {
    expect(model.shows('healthy', signal, 2)).toBe(model.shows('healthy', signal, 2));
    // another object with the same words is the same test
    expect(model.shows('healthy', pattern('module.signal'), 2)).toBe(
      model.shows('healthy', signal, 2),
    );
    const pulled = testOf(
      { kind: 'counts', input: 'module.signal' },
      {
        ...CRANK,
        unplugged: ['sensor'],
        bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: 'test-light' }],
      },
    );
    expect(model.pullsLow(pulled)).not.toBeNull();
    expect(model.pullsLow(pulled)).toBe(model.pullsLow(pulled));
  });
});

describe('potentiometers', () => {
  const throttle = knownModel('throttle-potentiometer');
  const MOVED = { target: 'moving' } as const;

  test('0.5 to 0.7 V closed, 4.3 to 4.7 V open; a resistive ground lifts the closed voltage', () => {
    const closed = throttle.expected(volts('module.signal'));
    const open = throttle.expected(volts('module.signal', 'battery.negative', MOVED));
    expect(closed).toMatchObject({ kind: 'number', unit: 'V' });
    if (closed.kind !== 'number' || open.kind !== 'number') throw new Error('numbers expected');
    // 12 % +/- 2 % of 5 V +/- 2 %; 90 % +/- 3 % of it
    expect(closed.low).toBeGreaterThan(0.48);
    expect(closed.high).toBeLessThan(0.72);
    expect(open.low).toBeGreaterThan(4.2);
    expect(open.high).toBeLessThan(4.75);
    expect(number(throttle, 'wire.ground.resistive', volts('module.signal'))).toBeGreaterThan(1);
  });

  test('a worn spot drops out in the sweep and nowhere else', () => {
    const sweep = testOf(
      { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
      MOVED,
    );
    expect(look(throttle, 'sensor.main.worn-spot', sweep)).toBe('uneven');
    expect(number(throttle, 'sensor.main.worn-spot', volts('module.signal'))).toBe(
      number(throttle, 'healthy', volts('module.signal')),
    );
    expect(look(throttle, 'healthy', sweep)).toBe('full');
    expect(look(throttle, 'sensor.main.track-open', sweep)).toBe('uneven');
  });

  test('the second track of a pedal gives half of the first', () => {
    const pedal = knownModel('pedal-dual');
    for (const part of [{}, MOVED]) {
      const first = number(pedal, 'healthy', volts('module.signal-1', 'battery.negative', part));
      const second = number(pedal, 'healthy', volts('module.signal-2', 'battery.negative', part));
      expect(second / first).toBeCloseTo(0.5, 2);
    }
    // Each track has its own reference: a fault of one leaves the other as it was.
    expect(number(pedal, 'wire.feed-1.open', volts('module.signal-2'))).toBeCloseTo(
      number(pedal, 'healthy', volts('module.signal-2')),
      6,
    );
  });
});

describe('two-wire current sensor', () => {
  const active = knownModel('current-two-wire');

  test('7 and 14 mA over 115 ohm: 0.805 and 1.61 V', () => {
    const { low, high } = active.levels(
      'healthy',
      testOf(
        { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
        { target: 'moving' },
      ),
      -1,
    );
    expect(low).toBeCloseTo(0.805, 3);
    expect(high).toBeCloseTo(1.61, 3);
  });

  test('a dead sensor leaves 0 V at the module and battery voltage at its feed', () => {
    expect(number(active, 'sensor.dead', volts('module.signal'))).toBeCloseTo(0, 3);
    expect(number(active, 'sensor.dead', volts('sensor.feed'))).toBeGreaterThan(12);
  });
});

describe.each(NAMES)('%s', (name) => {
  const circuit = shipped(name);
  const short = process.env['OHMWARD_SHORT'] === '1' ? 1 : 2;
  const samples = LONG ? 32 : short;
  const model = modelOf(name, samples);
  const tests = standardTests(circuit).filter((_, at) => samples > 1 || at % 8 === 0);

  test('every fault, every standard test, every sample has an answer, and the healthy circuit follows', () => {
    // A hundred thousand answers: what is wrong is gathered and expected once.
    const wrong: unknown[] = [];
    for (const { test: one } of tests)
      for (const id of ['healthy', ...circuit.faults.map((fault) => fault.id)])
        for (let sample = -1; sample < samples; sample += 1) {
          const shown = model.shows(id, one, sample);
          const isNone = shown.kind === 'number' ? Number.isNaN(shown.value) : !shown.look;
          const isCounted = id === 'healthy' && one.probe.kind === 'counts';
          const isLost = isCounted && !(shown.kind === 'look' && shown.look === 'follows');
          if (isNone || isLost) wrong.push({ id, one, sample, shown });
        }
    expect(wrong).toEqual([]);
  });

  test('every fault shows in some standard test that is no inspection', () => {
    const whole = standardTests(circuit);
    for (const fault of samples > 1 ? circuit.faults : circuit.faults.slice(0, 4)) {
      const told = whole.some(({ test: one }) => {
        if (one.probe.kind === 'inspect') return false;
        const good = model.expected(one);
        return Array.from({ length: samples }, (_, sample) =>
          model.shows(fault.id, one, sample),
        ).some((shown) =>
          good.kind === 'number'
            ? shown.kind === 'number' &&
              (shown.value < good.low - 0.05 || shown.value > good.high + 0.05)
            : shown.kind === 'look' && !good.looks.some(({ look: one }) => one === shown.look),
        );
      });
      expect(told, fault.id).toBe(true);
    }
  });

  test('the same seed repeats every answer to the bit, in any order', () => {
    const again = createModel(circuit, { samples, seed: 1, meter: METER });
    const last = samples - 1;
    const different: unknown[] = [];
    for (const { test: one } of [...tests].reverse())
      for (const fault of [...circuit.faults].reverse())
        if (!isDeepStrictEqual(again.shows(fault.id, one, last), model.shows(fault.id, one, last)))
          different.push({ id: fault.id, one });
    expect(different).toEqual([]);
  });

  test('weights are positive and the repairs have words', () => {
    for (const fault of circuit.faults) {
      expect(fault.weight).toBeGreaterThan(0);
      expect(fault.words.length).toBeGreaterThan(5);
      expect(fault.repairWords).toMatch(/\.$/);
    }
    expect(new Set(circuit.faults.map((fault) => fault.id)).size).toBe(circuit.faults.length);
  });

  test('a circuit survives being stored as JSON', () => {
    expect(JSON.parse(JSON.stringify(circuit))).toEqual(circuit);
  });
});
