/** Faults that come back from a repaired plug, from a chafed harness and from inside a sensor, and what else varies. */
import { describe, expect, test } from 'vitest';
import { knownCircuit, knownModel } from './known-car.ts';
import { look, number, testOf, volts } from './shipped.ts';
import { counts, KEYED_OFF, patternAt } from './suspect-tests.ts';

const faultOf = (name: string, id: string) =>
  knownCircuit(name).faults.find((fault) => fault.id === id);

describe('a signal wire that touches', () => {
  test.each([
    [
      'hall-module-fed',
      'wire.signal.short-to-ground-wire',
      'ground',
      'the signal wire is shorted to the ground wire',
    ],
    [
      'throttle-potentiometer',
      'wire.signal.short-to-ground-wire',
      'ground',
      'the signal wire is shorted to the ground wire',
    ],
    [
      'pedal-dual',
      'wire.signal-1.short-to-ground-1',
      'ground-1',
      'the signal 1 wire is shorted to the ground 1 wire',
    ],
    [
      'pedal-dual',
      'wire.signal-2.short-to-ground-2',
      'ground-2',
      'the signal 2 wire is shorted to the ground 2 wire',
    ],
    [
      'pedal-dual',
      'wire.signal-1.short-to-signal-2',
      'signal-2',
      'the signal 1 wire is shorted to the signal 2 wire',
    ],
  ])('of the %s: %s', (name, id, other, words) => {
    const [, own] = id.split('.');
    expect(faultOf(name, id)).toMatchObject({
      words,
      repair: `wire.${own}`,
      subject: [`wire.${own}`, 'harness', `wire.${other}`],
      class: 'wire',
      effect: { kind: 'wire-short', wire: own, to: { wire: other } },
    });
  });

  test('its own ground lies at nothing, and is no short to the body when the ground is off', () => {
    const hall = knownModel('hall-module-fed');
    const id = 'wire.signal.short-to-ground-wire';
    expect(number(hall, id, volts('module.signal'))).toBeCloseTo(0, 1);
    const between = (minus: string) =>
      testOf({ kind: 'ohms', plus: 'module.signal', minus }, KEYED_OFF);
    expect(number(hall, id, between('module.ground'))).toBeLessThan(3);
    expect(number(hall, id, between('battery.negative'))).toBeGreaterThan(1e6);
    expect(number(hall, 'wire.signal.short-to-ground', between('battery.negative'))).toBeLessThan(
      3,
    );
  });

  test('a ground that is another track’s runs beside it too', () => {
    expect(faultOf('pedal-dual', 'wire.signal-1.short-to-ground-2')?.words).toBe(
      'the signal 1 wire is shorted to the ground 2 wire',
    );
  });

  test('and so does a reference', () => {
    expect(faultOf('hall-module-fed', 'wire.feed.short-to-ground-wire')).toBeDefined();
    expect(faultOf('hall-relay-fed', 'wire.feed.short-to-ground-wire')).toBeUndefined();
  });
});

describe('a track shorted inside from feed to ground', () => {
  test.each([
    [
      'throttle-potentiometer',
      'sensor.main.shorted',
      'the track of the throttle position sensor is shorted inside from feed to ground',
    ],
    [
      'pedal-dual',
      'sensor.track-2.shorted',
      'track 2 of the accelerator pedal position sensor is shorted inside from feed to ground',
    ],
  ])('of the %s: %s', (name, id, words) => {
    expect(faultOf(name, id)).toMatchObject({ words, repair: 'sensor.replace', class: 'sensor' });
  });

  test('drags the reference down to what its limit gives over the short, and leaves the other track', () => {
    const pedal = knownModel('pedal-dual');
    const id = 'sensor.track-1.shorted';
    // by hand: 60 mA over sqrt(0.1 * high) ohm, and high is under 100 ohm
    expect(number(pedal, id, volts('sensor.feed-1', 'sensor.ground-1'))).toBeLessThan(0.06 * 3.2);
    expect(number(pedal, id, volts('sensor.feed-2', 'sensor.ground-2'))).toBeCloseTo(5, 1);
  });
});

describe('wires swapped at a plug', () => {
  test('of a sensor with three wires are three faults with one repair, together as rare as one', () => {
    const swapped = knownCircuit('throttle-potentiometer').faults.filter(
      ({ repair }) => repair === 'leads.swap',
    );
    expect(swapped.map(({ id }) => id)).toEqual([
      'sensor.feed.swapped-with-signal',
      'sensor.feed.swapped-with-ground',
      'sensor.signal.swapped-with-ground',
    ]);
    for (const fault of swapped)
      expect(fault).toMatchObject({
        class: 'connector',
        subject: ['sensor', 'connector.sensor'],
        repairWords:
          'Put the swapped wires at the connector of the throttle position sensor back into their own places.',
      });
    expect(swapped[0]!.words).toBe(
      'the feed and signal wires are swapped at the connector of the throttle position sensor',
    );
    const open = faultOf('throttle-potentiometer', 'contact.sensor.feed.open')!;
    // common practice, no source: three tenths of an open contact
    expect(swapped.reduce((sum, { weight }) => sum + weight, 0) / open.weight).toBeCloseTo(0.3, 9);
  });

  test('of a Hall sensor bring what belongs to one pin out at another', () => {
    const hall = knownModel('hall-module-fed');
    expect(
      hall.circuit.faults.filter(({ repair }) => repair === 'leads.swap').map(({ id }) => id),
    ).toEqual([
      'sensor.feed.swapped-with-signal',
      'sensor.feed.swapped-with-ground',
      'sensor.signal.swapped-with-ground',
    ]);
    const at = (pin: string, id: string) => number(hall, id, volts(`sensor.${pin}`));
    // by hand: 5 V behind half an ohm, a ground of some millivolts
    expect(at('signal', 'sensor.feed.swapped-with-signal')).toBeCloseTo(5, 1);
    expect(at('ground', 'sensor.feed.swapped-with-ground')).toBeCloseTo(5, 1);
    expect(at('signal', 'sensor.signal.swapped-with-ground')).toBeCloseTo(0, 1);
  });

  test('feed and ground turn a track round: closed reads as open', () => {
    const throttle = knownModel('throttle-potentiometer');
    const id = 'sensor.feed.swapped-with-ground';
    // by hand: (1 - 0.12) * 5 V
    expect(number(throttle, id, volts('module.signal'))).toBeCloseTo(4.4, 1);
    const wire = (minus: string) =>
      testOf({ kind: 'ohms', plus: 'module.reference', minus }, KEYED_OFF);
    expect(number(throttle, id, wire('sensor.feed'))).toBe(Number.POSITIVE_INFINITY);
    expect(number(throttle, id, wire('sensor.ground'))).toBeLessThan(1);
  });

  test('the pedal has each two of its six that its module notices: not its two feeds, not its two grounds', () => {
    const ids = knownCircuit('pedal-dual')
      .faults.filter(({ repair }) => repair === 'leads.swap')
      .map(({ id }) => id);
    expect(ids).toHaveLength(13);
    expect(ids).not.toContain('sensor.feed-1.swapped-with-feed-2');
    expect(ids).not.toContain('sensor.ground-1.swapped-with-ground-2');
  });

  test('of a wheel sensor leave it without current, and a spare does not help', () => {
    const wheel = knownModel('current-two-wire');
    const id = 'sensor.leads-swapped';
    expect(faultOf('current-two-wire', id)).toMatchObject({
      words: 'the two wires of the left front wheel speed sensor are swapped',
      repair: 'leads.swap',
    });
    // by hand: 12.6 V over 1 Mohm and 115 ohm
    expect(number(wheel, id, volts('module.signal'))).toBeLessThan(0.01);
    expect(look(wheel, id, counts('module.signal'))).toBe('still');
    expect(
      look(wheel, id, testOf(patternAt('module.signal'), { sensor: 'spare', target: 'moving' })),
    ).toBe('flat-low');
  });
});

test('a neighbour’s wire at battery voltage lifts the reference that it shares', () => {
  const throttle = knownModel('throttle-potentiometer');
  const id = 'wire.pressure-feed.short-to-battery';
  expect(faultOf('throttle-potentiometer', id)).toMatchObject({ repair: 'wire.pressure-feed' });
  expect(number(throttle, id, volts('module.reference'))).toBeGreaterThan(12);
});

describe('what else varies from car to car', () => {
  const spread = (name: string, at: ReturnType<typeof testOf>) => {
    const model = knownModel(name, 64);
    const all = Array.from({ length: 64 }, (_, sample) => number(model, 'healthy', at, sample));
    return { low: Math.min(...all), nominal: number(model, 'healthy', at), high: Math.max(...all) };
  };

  test('a test resistor is what it says within 5 %: common practice, no source', () => {
    const bridge = { from: 'sensor.signal', to: 'sensor.feed', through: { ohms: 1000 } } as const;
    const at = testOf(
      { kind: 'ohms', plus: 'module.signal', minus: 'module.reference' },
      { ...KEYED_OFF, bridges: [bridge] },
    );
    const { low, nominal, high } = spread('hall-module-fed', at);
    expect(nominal).toBeCloseTo(1000, -1);
    expect(low).toBeGreaterThan(949);
    expect(low).toBeLessThan(960);
    expect(high).toBeGreaterThan(1040);
    expect(high).toBeLessThan(1051);
  });

  test('before a gap that is too wide a spare gives no more than the sensor of this car', () => {
    const model = knownModel('reluctor-two-wire', 64);
    const counted = (sensor: 'fitted' | 'spare') =>
      testOf(
        { kind: 'counts', input: 'module.signal-plus' },
        { state: 'cranking', target: 'moving', sensor },
      );
    const seen = (sensor: 'fitted' | 'spare') =>
      Array.from({ length: 64 }, (_, car) => look(model, 'target.gap-wide', counted(sensor), car));
    expect(seen('spare')).toEqual(seen('fitted'));
    // Small waves are counted in some cars.
    expect(seen('fitted')).toContain('follows');
  });

  test('a coil has another resistance cold and hot, and a spare from the shelf only its own', () => {
    const coil = (sensor: 'fitted' | 'spare') =>
      testOf(
        { kind: 'ohms', plus: 'sensor.plus.pin', minus: 'sensor.minus.pin' },
        { ...KEYED_OFF, sensor },
      );
    const { low, nominal, high } = spread('reluctor-two-wire', coil('fitted'));
    expect(nominal).toBeCloseTo(900, 0);
    // by hand, copper against 25 degC: 0.827 at -20 degC and 1.328 at 110 degC, beside 15 % of its own
    expect(low).toBeGreaterThan(0.827 * 0.85 * 900);
    expect(low).toBeLessThan(0.84 * 900);
    expect(high).toBeLessThan(1.328 * 1.15 * 900);
    expect(high).toBeGreaterThan(1.2 * 900);
    const spare = spread('reluctor-two-wire', coil('spare'));
    expect(spare.low).toBeGreaterThan(0.85 * 900);
    expect(spare.high).toBeLessThan(1.15 * 900);
  });
});
