/** What a conclusion of a shipped procedure is said to rest on, to rule out, and to lack. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { presentConclusion, type Session } from '../../src/session/session.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { after, done, type Shop, shopFor, walkOn } from './walk-library.ts';
import { weighedWords } from './weighed-words.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

const WIRE = 'wire.signal.open';
const weigh = (session: Session, at = shop) => {
  const weighed = at.advisor.weigh(session, presentConclusion(session)?.faults ?? []);
  return { ...weighed, ...weighedWords(at.model, session, weighed) };
};

function read(session: Session, test: Test, value: number): Session {
  const shown = { kind: 'number', value, unit: 'V' } as const;
  return after(session, {
    type: 'record-test',
    test,
    typed: `${value} V`,
    shown,
    expected: null,
  });
}

const AT_MODULE = { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' } as const;

describe('what proves a conclusion', () => {
  it.each([
    ['with the sensor unplugged', setupOf({ unplugged: ['sensor'] })],
    ['with the sensor on', KEY_ON],
  ])('is not the pin that was read already, %s', (_, setup) => {
    const concluded = walkOn(shop, shop.begun, WIRE);
    expect(weigh(concluded)).toMatchObject({ proven: false, missing: 1 });
    // A sound wire and a wrong pin with 5 V on it would show the same.
    const again = weigh(read(concluded, { setup, probe: AT_MODULE }, 4.97));
    expect(again).toMatchObject({ proven: false, missing: 1 });
    expect(again.evidence.map(({ found }) => found)).not.toContain('4.97 V');
  });
  it('is not offered at that pin, and what is offered gives the missing piece', () => {
    const concluded = walkOn(shop, shop.begun, WIRE);
    const { wouldProve } = weigh(concluded);
    expect(wouldProve.map(({ words }) => words)).toContain('Wire from end to end: signal');
    for (const proposal of wouldProve) {
      const { probe } = proposal.test;
      expect('plus' in probe && [probe.plus, probe.minus].join()).not.toBe(
        'module.signal,battery.negative',
      );
      expect(weigh(done(shop, concluded, WIRE, proposal)).proven, proposal.words).toBe(true);
    }
  });
});

describe('what a conclusion rests on', () => {
  it('is the reading that decided it, and none that its faults cannot show', () => {
    const concluded = walkOn(shop, shop.begun, 'healthy', {
      'feed/across': 0,
      'feed/to-battery': 11.9,
    });
    expect(presentConclusion(concluded)?.id).toBe('feed-high');
    const { evidence, proven, unexplained } = weigh(concluded);
    expect(evidence.map(({ test, found }) => [test, found])).toEqual([
      ['Feed against the battery', '11.9 V'],
    ]);
    // 0 V a moment before, at the same wire: one of both is not what it seems
    expect(evidence.map(({ counted }) => counted)).toEqual([false]);
    expect(proven).toBe(false);
    expect(unexplained).toMatch(/^No single fault explains these readings/);
  });
  it('is the bad reading as well as the good ones', () => {
    const { evidence } = weigh(
      walkOn(shop, shop.begun, 'sensor.dead', {
        'feed/across': 4.97,
        'level/at-plug': 'cannot',
        'level/open-level': 4.9,
        'picture/scope': 'cannot',
        'picture/meter': 4.9,
        'spare/fitted': 'cannot',
      }),
    );
    expect(evidence.map(({ test, found }) => `${test}: ${found}`)).toEqual([
      "Feed against the sensor's own ground: 4.97 V",
      'Meter instead of the scope: 4.9 V',
    ]);
  });
});

describe('two wires that touch', () => {
  // The model sizes a short between 0.05 and 3 ohm, evenly in the logarithm; each seed draws another.
  const TOUCH = 'wire.signal-1.short-to-signal-2';
  const STEP = 'Do the two signal wires touch?';
  it('rest on the ohms between them, whatever those are', () => {
    const pedal = shopFor('pedal-position');
    const sizes: number[] = [];
    for (let seed = 1; seed <= 24; seed += 1) {
      const concluded = walkOn(pedal, pedal.begun, TOUCH, {}, seed);
      const { id, faults } = presentConclusion(concluded)!;
      expect(id).toBe('signals-touch');
      expect(faults.length).toBeGreaterThan(0);
      const { evidence, missing } = weigh(concluded, pedal);
      const ohms = evidence.find(({ test, counted }) => test === STEP && counted !== false);
      expect(ohms, `seed ${seed}`).toBeDefined();
      sizes.push(Number.parseFloat(ohms!.found));
      expect(missing).toBeLessThanOrEqual(1);
    }
    expect(Math.min(...sizes)).toBeLessThan(0.3);
    expect(Math.max(...sizes)).toBeGreaterThan(2);
  });
});

describe('what is ruled out', () => {
  const ruledOut = (fault: string) =>
    Object.fromEntries(
      weigh(walkOn(shop, shop.begun, fault)).ruledOut.map(({ words, by }) => [words, by]),
    );
  it('is what a reading tested, by that reading, and not what the wire only makes unlikely', () => {
    const found = ruledOut(WIRE);
    // With the sensor unplugged nothing was read of the sensor, its gap and its wheel; the module's input was not tried.
    for (const words of [
      'Replace the crankshaft position sensor.',
      'Seat the sensor and set the gap.',
      'Replace the wheel at the crankshaft.',
      'Set the wheel at the crankshaft right: timing, key, fastening.',
      'Replace the engine control module.',
    ])
      expect(found).not.toHaveProperty([words]);
    expect(found['Replace the throttle position sensor.']).toMatch(/^Feed against .*: 4\.97\d* V$/);
    expect(
      found[
        'Clean, refit or replace the terminals at the connector of the crankshaft position sensor.'
      ],
    ).toBe("Look into the sensor's connector: nothing wrong to be seen or felt");
  });
  it('names each reading that is needed for it', () => {
    const found = ruledOut('sensor.dead');
    expect(found['Replace the engine control module.']).toMatch(
      /^Known-good sensor in its place: .*; Pull the signal down at the plug: 0\.9\d* V$/,
    );
    expect(found['Repair or replace the signal wire.']).toMatch(
      /^Pull the signal down at the plug/,
    );
  });
});
