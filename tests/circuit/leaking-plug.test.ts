/** Water between two pins of a sensor's plug. Expected values by hand from the circuit files. */
import { describe, expect, test } from 'vitest';
import { knownCircuit, knownModel } from './known-car.ts';
import { look, number, testOf, volts } from './shipped.ts';
import { counts, KEYED_OFF } from './suspect-tests.ts';

const leaksOf = (name: string) =>
  knownCircuit(name)
    .faults.filter(({ id }) => id.includes('.leaks-to-'))
    .map(({ id }) => id);

describe('a plug that leaks', () => {
  test.each([
    ['hall-relay-fed', ['contact.sensor.signal.leaks-to-ground']],
    ['reluctor-two-wire', ['contact.sensor.plus.leaks-to-minus']],
    ['current-two-wire', ['contact.sensor.feed.leaks-to-signal']],
    [
      'throttle-potentiometer',
      ['contact.sensor.feed.leaks-to-signal', 'contact.sensor.signal.leaks-to-ground'],
    ],
    [
      'pedal-dual',
      [
        'contact.sensor.feed-1.leaks-to-signal-1',
        'contact.sensor.signal-1.leaks-to-ground-1',
        'contact.sensor.feed-2.leaks-to-signal-2',
        'contact.sensor.signal-2.leaks-to-ground-2',
      ],
    ],
  ])('of the %s is a suspect between the pins where its module notices it', (name, ids) => {
    expect(leaksOf(name)).toEqual(ids);
  });

  test('is mended at the plug, seen there, and is no short of a wire', () => {
    const fault = knownCircuit('hall-relay-fed').faults.find(({ id }) => /leaks/.test(id))!;
    expect(fault).toMatchObject({
      words: 'the connector of the camshaft position sensor leaks from signal to ground',
      repair: 'connector.sensor',
      class: 'connector',
      visibleChance: 0.8,
    });
    const hall = knownModel('hall-relay-fed');
    expect(look(hall, fault.id, counts('module.signal'))).toBe('still');
    const between = testOf(
      { kind: 'ohms', plus: 'sensor.signal', minus: 'sensor.ground' },
      KEYED_OFF,
    );
    expect(number(hall, fault.id, between)).toBeGreaterThan(1000);
    // the pull-up over the leak, short of what counts as high, and far from nothing
    const high = number(hall, fault.id, volts('sensor.signal'));
    expect(high).toBeGreaterThan(0.5);
    expect(high).toBeLessThan(3.6);
  });
});
