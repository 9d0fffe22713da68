/** What a conclusion of a shipped procedure is said to rest on, to rule out, and to lack. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import type { Proposal } from '../../src/session/advisor.ts';
import { openSession } from '../../src/session/evolve.ts';
import { presentConclusion, type Session, standingAnswers } from '../../src/session/session.ts';
import { LONG } from '../campaign.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { after, done, type Shop, shopFor, walkOn } from './walk-library.ts';
import { weighedWords } from './weighed-words.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

const WIRE = 'wire.signal.open';
const weigh = (session: Session, at = shop) => {
  const weighed = at.advisor.weigh(session, presentConclusion(session)?.faults ?? SIGNAL_WIRE());
  const { proven, missing, unexplained } = weighed;
  const words = weighedWords(at.model, session, weighed);
  return {
    ...{ proven, missing, unexplained, ...words },
    /** Half of the work, and few ask. */
    get wouldProve() {
      return weighed.wouldProve;
    },
  };
};

const SIGNAL_WIRE = () => {
  const step = shop.begun.opened.procedure?.steps['signal-wire'];
  return step?.kind === 'conclude' ? step.faults : [];
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

/** The tree reads these two pins and, with both leads on the wire, the module's against the plug's. */
const AT_PLUG = { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' } as const;
const AT_MODULE = { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' } as const;
const ALONG = { kind: 'volts', plus: 'module.signal', minus: 'sensor.signal' } as const;
/** The readings of a broken signal wire but for the one at the ground's pin, with which the tree proves it. */
function twoPieces(): Session {
  const bridge = { from: 'sensor.signal', to: 'battery.negative', through: { ohms: 330 } } as const;
  const setup = setupOf({ unplugged: ['sensor'], bridges: [bridge] });
  const feed = { kind: 'volts', plus: 'sensor.feed', minus: 'sensor.ground' } as const;
  const battery = { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' } as const;
  const begun = read(shop.begun, { setup: KEY_ON, probe: battery }, 12.6);
  const fed = read(begun, { setup: KEY_ON, probe: feed }, 4.99);
  return read(read(fed, { setup, probe: AT_PLUG }, 0), { setup, probe: ALONG }, 4.93);
}
const pins = ({ test: { probe } }: Proposal) =>
  'plus' in probe ? [probe.plus, probe.minus].sort().join() : null;

describe('what proves a conclusion', () => {
  it.each([
    ['with the sensor unplugged', setupOf({ unplugged: ['sensor'] })],
    ['with the sensor on', KEY_ON],
  ])('is not the pin that was read already, %s', (_, setup) => {
    const concluded = twoPieces();
    expect(weigh(concluded)).toMatchObject({ proven: false, missing: 1 });
    // A sound wire and a wrong pin with nothing on it would show the same.
    const again = weigh(read(concluded, { setup, probe: AT_PLUG }, 0.003));
    expect(again).toMatchObject({ proven: false, missing: 1 });
    // The tree pulled this pin down: one of both counts, and the other is only shown with it.
    const there = again.evidence.filter(({ where }) => where.endsWith('to battery negative'));
    expect(there.filter(({ counted }) => counted)).toHaveLength(1);
  });
  it('is one look at a new pin, however often it is looked at', () => {
    const concluded = twoPieces();
    const once = read(
      concluded,
      { setup: setupOf({ unplugged: ['sensor'] }), probe: AT_MODULE },
      4.97,
    );
    expect(weigh(once)).toMatchObject({ proven: true, missing: 0 });
    const { evidence } = weigh(read(once, { setup: KEY_ON, probe: AT_MODULE }, 4.96));
    const there = evidence.filter(({ found }) => found === '4.97 V' || found === '4.96 V');
    expect(there.filter(({ counted }) => counted)).toHaveLength(1);
  });
  it('is not offered at pins that were read, and what is offered gives the missing piece', () => {
    const concluded = twoPieces();
    const { wouldProve } = weigh(concluded);
    // The wire was read from end to end under load, and the plug against the battery.
    expect(wouldProve.map(pins)).toContain('battery.negative,module.signal');
    for (const proposal of wouldProve) {
      expect(pins(proposal)).not.toBe('battery.negative,sensor.signal');
      expect(pins(proposal)).not.toBe('module.signal,sensor.signal');
      expect(weigh(done(shop, concluded, WIRE, proposal)).proven, proposal.words).toBe(true);
    }
  });
});

const AT_FEED = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;

describe('what a conclusion rests on', () => {
  it('is the reading that decided it, and none that its faults cannot show', () => {
    const dead = read(shop.begun, { setup: KEY_ON, probe: AT_FEED }, 0);
    const concluded = walkOn(shop, dead, 'healthy', {
      // what the feed shows of this car when it touches the battery, which the tree read first
      'feed/across': 13,
      'which-high': 'cannot',
    });
    expect(presentConclusion(concluded)?.id).toBe('some-feed-high');
    const { evidence, proven, unexplained } = weigh(concluded);
    expect(evidence.map(({ test, found }) => [test, found])).toEqual([
      ["Feed against the sensor's own ground", '13 V'],
    ]);
    // Nothing else can lift this feed to the battery, so it counts; but with 0 V a moment before, at the same wire, one of
    // both is not what it seems, and nothing is proven.
    expect(evidence.map(({ counted }) => counted)).toEqual([true]);
    expect(proven).toBe(false);
    expect(unexplained).toMatch(/^No single fault explains these readings/);
  });
  it('is the bad reading as well as the good ones', () => {
    const { evidence } = weigh(
      walkOn(shop, shop.begun, 'sensor.dead', {
        'feed/across': 4.97,
        'level-counts/at-plug': 'cannot',
        'level-counts/open-level': 4.9,
        'picture/scope': 'cannot',
      }),
    );
    // where there is no scope, the module's count and a good sensor tell; a sensor that works there has shown feed and plug
    expect(evidence.map(({ test, found }) => `${test}: ${found}`).sort()).toEqual([
      "Feed against the sensor's own ground: 4.97 V",
      'Known-good sensor fitted: the live data follows',
      'Live data instead of the scope: the live data does not change',
      "Look into the sensor's connector: nothing wrong to be seen or felt",
    ]);
  });
});

describe('two wires that touch', () => {
  // The model sizes a short between 0.05 and 3 ohm, evenly in the logarithm; each seed draws another.
  const TOUCH = 'wire.signal-1.short-to-signal-2';
  const STEP = 'Do the two signal wires touch?';
  const ohmsRead = (session: Session) => {
    const read = standingAnswers(session).find(({ step }) => step.startsWith('tracks-touch'));
    return read?.type === 'reading-recorded' ? Number.parseFloat(read.typed) : Number.NaN;
  };
  it('rest on what was read between them, whatever the ohms are', () => {
    const pedal = shopFor('pedal-position');
    // From the two readings between the wires on: those before cost more than all the rest and are not between them.
    const begun = openSession({ ...pedal.begun.opened, from: 'touch-1' });
    // Of 24 vehicles those with the most and the least: 1.91 and 0.003 ohm.
    const vehicles = LONG ? Array.from({ length: 24 }, (_, at) => at + 1) : [13, 16];
    const sized = vehicles
      .map((vehicle) => walkOn(pedal, begun, TOUCH, {}, vehicle))
      .map((concluded) => ({ concluded, ohms: ohmsRead(concluded) }))
      .sort((a, b) => a.ohms - b.ohms);
    for (const { concluded } of sized) {
      const { id, faults } = presentConclusion(concluded)!;
      expect(id).toBe('signals-touch');
      expect(faults.length).toBeGreaterThan(0);
    }
    // Weighing takes seconds: the least and the most stand for all.
    for (const { concluded, ohms } of [sized[0]!, sized.at(-1)!]) {
      const { evidence, missing } = weigh(concluded, pedal);
      const between = evidence.filter(({ where }) => where.match(/signal 1 .* signal 2/));
      expect(
        between.map(({ test }) => test),
        `${ohms} ohm`,
      ).toContain(STEP);
      // The tree reads the volts between the same two pins before: at one place one piece, whichever tells more.
      expect(
        between.filter(({ counted }) => counted),
        `${ohms} ohm`,
      ).toHaveLength(1);
      // One piece of three.
      expect(missing).toBe(2);
    }
    const sizes = sized.map(({ ohms }) => ohms);
    expect(Math.min(...sizes)).toBeLessThan(0.3);
    expect(Math.max(...sizes)).toBeGreaterThan(1);
  });
});

describe('what is ruled out', () => {
  const SENSOR_PLUG =
    'Clean, refit or replace the terminals at the connector of the crankshaft position sensor.';
  const ruledOut = (fault: string) =>
    Object.fromEntries(
      weigh(walkOn(shop, shop.begun, fault)).ruledOut.map(({ words, by }) => [words, by]),
    );
  it('is what a reading tested, by that reading, and not what the wire only makes unlikely', () => {
    const found = ruledOut(WIRE);
    // Each simulated vehicle has a reference of its own.
    const answers = standingAnswers(walkOn(shop, shop.begun, WIRE));
    const across = answers.find(({ step }) => step === 'feed/across');
    const volts = across?.type === 'reading-recorded' ? across.typed : '';
    // With the sensor unplugged nothing was read of the sensor, its gap and its wheel; the module's input was not tried.
    for (const words of [
      'Replace the crankshaft position sensor.',
      'Seat the sensor and set the gap.',
      'Replace the wheel at the crankshaft.',
      'Correct the position of the wheel at the crankshaft: timing, key, fastening.',
      'Replace the engine control module.',
    ])
      expect(found).not.toHaveProperty([words]);
    expect(found['Replace the throttle position sensor.']).toBe(
      `Feed against the sensor's own ground: ${volts}`,
    );
    // Nor was its plug looked into: nothing is lost in its contacts while it is open.
    expect(found).not.toHaveProperty([SENSOR_PLUG]);
  });
  it('names each reading that is needed for it', () => {
    const found = ruledOut('sensor.dead');
    // A look can miss what is wrong; a good sensor in the same plug tells the rest.
    expect(found[SENSOR_PLUG]).toMatch(
      /Look into the sensor's connector: nothing wrong to be seen or felt$/,
    );
    // only the meter says that the feed is a right one
    expect(found['Replace the throttle position sensor.']).toMatch(
      /^Feed against the sensor's own ground: 4\.9\d* V$/,
    );
    expect(found['Replace the engine control module.']).toBe(
      'Known-good sensor fitted: the live data follows',
    );
    expect(found['Repair or replace the signal wire.']).toMatch(
      /^Pull the signal down at the connector/,
    );
  });
});
