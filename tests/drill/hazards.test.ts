/** Which refused tests the bench stops as dangerous, and for what (common practice, no source). */
import { describe, expect, it } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import type { Bridge, Probe, Setup, Test } from '../../src/circuit/test.ts';
import { dangerOf } from '../../src/drill/hazards.ts';
import { shipped, testOf } from '../circuit/shipped.ts';

const hall = shipped('hall-module-fed');
const danger = (test: Test) => dangerOf({ refusal: (one) => refuseTest(hall, one) }, test);
const probe = (kind: 'volts' | 'ohms' | 'light' | 'lamp', plus: string, minus: string): Probe => ({
  kind,
  plus,
  minus,
});
const bridged = (from: string, to: string, through: Bridge['through']): Partial<Setup> => ({
  bridges: [{ from, to, through }],
});
const FEED = ['sensor.feed', 'battery.negative'] as const;

describe('a test is stopped', () => {
  it.each<[string, Test, string | null]>([
    ['ohms with the key on', testOf(probe('ohms', ...FEED)), 'ohms-on-live'],
    [
      'ohms with the module on',
      testOf(probe('ohms', ...FEED), { state: 'key-off' }),
      'ohms-on-live',
    ],
    ['a lamp at the module', testOf(probe('lamp', ...FEED)), 'lamp-on-module'],
    [
      'a light from battery to an input',
      testOf(probe('light', 'battery.positive', 'sensor.signal')),
      'clipped-in',
    ],
    [
      'a lamp clipped in at an input',
      testOf(probe('volts', ...FEED), bridged('module.signal', 'battery.negative', 'lamp')),
      'lamp-on-module',
    ],
    [
      'a lead over a reference',
      testOf(probe('volts', ...FEED), bridged('sensor.feed', 'sensor.ground', 'lead')),
      'clipped-in',
    ],
    [
      'ten ohm from an input to ground',
      testOf(probe('volts', ...FEED), bridged('module.signal', 'battery.negative', { ohms: 10 })),
      'clipped-in',
    ],
    [
      'battery onto a 5 V reference through 1 kohm',
      testOf(probe('volts', ...FEED), bridged('sensor.feed', 'battery.positive', { ohms: 1000 })),
      'clipped-in',
    ],
    [
      "ohms at the sensor's own pins",
      testOf(probe('ohms', 'sensor.feed.pin', 'sensor.ground.pin'), {
        state: 'key-off',
        unplugged: ['sensor'],
      }),
      'ohms-on-live',
    ],
  ])('%s', (_, test, hazard) => {
    expect(danger(test)?.hazard).toBe(hazard);
  });

  it('for what its reason says, where two things are wrong', () => {
    const both = testOf(
      probe('ohms', ...FEED),
      bridged('module.signal', 'battery.negative', { ohms: 10 }),
    );
    expect(danger(both)).toMatchObject({
      hazard: 'clipped-in',
      reason: expect.stringContaining('10 ohm may draw too much'),
    });
  });
});

describe('a test is only refused', () => {
  it.each<[string, Test]>([
    ['a terminal that is not there', testOf(probe('ohms', 'sensor.fed', 'battery.negative'))],
    ['a pin inside its connector', testOf(probe('lamp', 'sensor.feed.pin', 'battery.negative'))],
    [
      'both ends at one place',
      testOf(probe('volts', ...FEED), bridged('sensor.feed', 'sensor.feed', 'lead')),
    ],
    [
      'a pattern of a still wheel',
      testOf({ kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' }),
    ],
  ])('%s', (_, test) => {
    expect(refuseTest(hall, test)).not.toBeNull();
    expect(danger(test)).toBeNull();
  });

  it('and a test that is fine is neither', () => {
    expect(danger(testOf(probe('volts', ...FEED)))).toBeNull();
  });
});
