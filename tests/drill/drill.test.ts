import { describe, expect, test } from 'vitest';
import { moduleOf } from '../../src/circuit/circuit.ts';
import { createModel, pairId } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Setup, Test } from '../../src/circuit/test.ts';
import { createVehicle } from '../../src/drill/drill-vehicle.ts';
import { commitmentOf, hideFault } from '../../src/drill/hidden-fault.ts';
import { LEVELS, levelNamed, levelOf } from '../../src/drill/levels.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { chanceOf, pickByWeight } from '../../src/session/chance-of.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { expectedShown } from '../../src/session/expected-shown.ts';
import { faultPairs } from '../../src/session/fault-pairs.ts';
import { pendingTestCautions } from '../../src/session/pending-cautions.ts';
import { SESSION_SAMPLES, SESSION_SEED } from '../../src/session/session-model.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { KEY_ON } from '../circuit/setup.ts';
import fc from '../seeded-check.ts';
import { drillText } from './drill-files.ts';
import { follow, hash, library, measure, newDrill } from './students.ts';

const hall = library.circuits.get('hall-module-fed')!;
const KEY_OFF: Setup = { ...KEY_ON, state: 'key-off' };
const volts = (plus: string, setup: Setup = KEY_ON): Test => ({
  setup,
  probe: { kind: 'volts', plus, minus: 'battery.negative' },
});

describe('what is hidden', () => {
  test('the same seed hides the same fault, and seeds hide many different ones', () => {
    const faultsOf = (level: 'unnamed' | 'double') =>
      Array.from({ length: 200 }, (_, seed) =>
        hideFault(hall, levelNamed(level), seed, hash)!.answer.faults.join(),
      );
    expect(faultsOf('unnamed')).toEqual(faultsOf('unnamed'));
    expect(new Set(faultsOf('unnamed')).size).toBeGreaterThan(20);
    expect(new Set(faultsOf('double')).size).toBeGreaterThan(80);
  });

  test('faults come as often as their weights say', () => {
    const total = hall.faults.reduce((sum, { weight }) => sum + weight, 0);
    const count = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed += 1) {
      const { answer } = hideFault(hall, levelNamed('unnamed'), seed, (text) => text)!;
      count.set(answer.faults[0]!, (count.get(answer.faults[0]!) ?? 0) + 1);
    }
    for (const { id, weight } of hall.faults) {
      const share = weight / total;
      // Five standard deviations of a binomial, and one count for rounding.
      const slack = 5 * Math.sqrt(6000 * share * (1 - share)) + 1;
      expect(Math.abs((count.get(id) ?? 0) - 6000 * share), id).toBeLessThan(slack);
    }
  });

  test('each level hides what it says', () => {
    for (const level of LEVELS)
      for (let seed = 0; seed < 40; seed += 1) {
        const { answer, earlierRepair } = hideFault(hall, level, seed, hash)!;
        expect(answer.faults).toHaveLength(level.faults);
        expect(new Set(answer.repairs).size).toBe(level.faults);
        expect(earlierRepair !== null).toBe(level.misled);
        if (!level.intermittent) continue;
        const kind = hall.faults.find(({ id }) => id === answer.faults[0])!.effect.kind;
        expect(kind.startsWith('wire-') || kind.startsWith('contact-')).toBe(true);
      }
    expect(levelOf('3')).toBe(levelOf('blind'));
    expect(levelOf('seven')).toBeNull();
  });

  test('the commitment binds the answer: another fault, another salt, another hash', () => {
    const { answer, salt, commitment } = hideFault(hall, levelNamed('named'), 9, hash)!;
    expect(commitmentOf(answer, salt, hash)).toBe(commitment);
    for (const { id, repair } of hall.faults) {
      if (id === answer.faults[0]) continue;
      expect(commitmentOf({ faults: [id], repairs: [repair] }, salt, hash)).not.toBe(commitment);
    }
    expect(commitmentOf(answer, `${salt}0`, hash)).not.toBe(commitment);
  });

  test('chances are even and weights are kept, whatever the seed', () => {
    fc.assert(
      fc.property(fc.nat(), fc.string(), (seed, words) => {
        const chance = chanceOf(seed, words);
        return chance >= 0 && chance < 1;
      }),
    );
    const mean =
      Array.from({ length: 4000 }, (_, seed) => chanceOf(seed, 'mean')).reduce((a, b) => a + b, 0) /
      4000;
    // Standard deviation of the mean of 4000 even numbers: 0.0046.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.023);
    expect(pickByWeight(['a', 'b'], (one) => (one === 'a' ? 0 : 1), 0)).toBe('b');
  });
});

describe('two faults at once', () => {
  const model = createModel(hall, { samples: 4, seed: 1, meter: STANDARD_SETTINGS.meter });
  const fault = (id: string) => hall.faults.find((one) => one.id === id)!;

  test('both show: a broken feed at the sensor and a broken signal at the module', () => {
    const id = pairId(fault('wire.feed.open'), fault('wire.signal.open'))!;
    expect(id).toBe(pairId(fault('wire.signal.open'), fault('wire.feed.open')));
    const at = (plus: string, faultId: string) => {
      const shown = model.shows(faultId, volts(plus), -1);
      return shown.kind === 'number' ? shown.value : Number.NaN;
    };
    // The feed ends in the broken wire, and the pull-up stands alone at the module: 0 V and the reference.
    expect(at('sensor.feed', id)).toBeLessThan(0.1);
    expect(at('module.signal', id)).toBeGreaterThan(4.8);
    // Either alone leaves one of the two readings good.
    expect(at('sensor.feed', 'wire.signal.open')).toBeGreaterThan(4.8);
  });

  test('a pair of effects that do not touch shows each as it shows alone', () => {
    const wire = 'wire.feed.open';
    const id = pairId(fault(wire), fault('target.damaged'))!;
    for (const { test: one } of standardTests(hall)) {
      if (one.probe.kind === 'inspect' || one.setup.target === 'moving') continue;
      expect(model.shows(id, one, 0)).toEqual(model.shows(wire, one, 0));
    }
  });

  test('no pair sits in the same thing, has one repair, or lies along one wire', () => {
    for (const circuit of library.circuits.values())
      for (const { first, second } of faultPairs(circuit)) {
        expect(first.repair).not.toBe(second.repair);
        expect(pairId(first, second)).not.toBeNull();
      }
    const ids = new Set(faultPairs(hall).map(({ id }) => id));
    expect(ids.has(pairId(fault('contact.sensor.feed.open'), fault('wire.signal.open'))!)).toBe(
      true,
    );
    const oneWire = pairId(fault('contact.sensor.feed.open'), fault('wire.feed.resistive'));
    expect(oneWire === null || ids.has(oneWire)).toBe(false);
    expect(pairId(fault('wire.feed.open'), fault('wire.feed.resistive'))).toBeNull();
  });
});

describe('the bench', () => {
  test('same seed and same actions give the same file to the byte', () => {
    const once = () => {
      const begun = newDrill(5);
      measure(begun, volts('sensor.feed'));
      measure(begun, volts('module.signal', { ...KEY_ON, unplugged: ['sensor'] }));
      begun.drill.act({ type: 'diagnose', repairs: ['wire.feed'] });
      // The name of the file, which is the id, has random digits.
      const [first, ...rest] = begun.driver.session().events;
      return drillText([{ ...first!, id: 'same' } as SessionEvent, ...rest]);
    };
    expect(once()).toBe(once());
  });

  test('the order of keys in a test does not change its answer', () => {
    const { world } = newDrill(5);
    const turned = JSON.parse(
      '{"probe":{"minus":"battery.negative","plus":"sensor.feed","kind":"volts"},"setup":{"target":"still","sensor":"fitted","bridges":[],"unplugged":[],"state":"key-on"}}',
    ) as Test;
    expect(world.vehicle.answers(turned, 0)).toEqual(
      world.vehicle.answers(volts('sensor.feed'), 0),
    );
  });

  test('readings differ from vehicle to vehicle with the same fault', () => {
    const same = Array.from({ length: 400 }, (_, seed) => seed).filter(
      (seed) =>
        hideFault(hall, levelNamed('named'), seed, hash)!.answer.faults[0] === 'wire.signal.open',
    );
    expect(same.length).toBeGreaterThan(3);
    const words = same.map(
      (seed) =>
        newDrill(seed, { level: 'named' }).world.vehicle.answers(volts('sensor.feed'), 0).words,
    );
    expect(new Set(words).size).toBeGreaterThan(1);
  });

  test('a fault that comes and goes is there in about half of the readings, always with the harness moved', () => {
    const seed = Array.from({ length: 300 }, (_, one) => one).find(
      (one) =>
        hideFault(hall, levelNamed('intermittent'), one, hash)!.answer.faults[0] ===
        'wire.feed.open',
    )!;
    const vehicle = createVehicle(
      { circuit: hall, meter: STANDARD_SETTINGS.meter, level: 'intermittent', seed },
      hash,
    )!;
    const reads = (wiggle: boolean) =>
      Array.from({ length: 200 }, (_, number) => {
        const moved = wiggle ? ({ wiggle } as const) : {};
        const { shown } = vehicle.answers({ ...volts('sensor.feed'), ...moved }, number);
        return shown.kind === 'number' && shown.value > 4;
      }).filter(Boolean).length;
    expect(reads(true)).toBe(0);
    // Half of 200 with a standard deviation of 7.
    expect(Math.abs(reads(false) - 100)).toBeLessThan(36);
  });

  test('minutes: the key, the walk and the access once, then only the reading', () => {
    const begun = newDrill(5);
    const taken = (test: Test) => {
      const before = spentMinutes(begun.driver.session());
      expect(measure(begun, test)).toBeNull();
      return spentMinutes(begun.driver.session()) - before;
    };
    // By hand: reading 1, access to the sensor 3, key 0.5, walk alone 0.5.
    expect(taken(volts('sensor.feed'))).toBe(5);
    expect(taken(volts('sensor.signal'))).toBe(1);
    // A connector off is one minute more.
    expect(taken(volts('sensor.signal', { ...KEY_ON, unplugged: ['sensor'] }))).toBe(2);
  });
});

describe('what the bench stops', () => {
  const module = moduleOf(hall).name;
  const clip = (from: string, to: string, through: Setup['bridges'][number]['through']): Test =>
    volts('module.signal', { ...KEY_ON, bridges: [{ from, to, through }] });
  test.each<[string, Test, string | null]>([
    [
      'ohms with the key on',
      {
        ...volts('sensor.feed'),
        probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'battery.negative' },
      },
      'ohms-on-live',
    ],
    [
      'ohms with the module plugged in',
      {
        setup: KEY_OFF,
        probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'battery.negative' },
      },
      'ohms-on-live',
    ],
    [
      'a filament lamp on the reference',
      {
        setup: KEY_ON,
        probe: { kind: 'lamp', plus: `${module}.reference`, minus: 'battery.negative' },
      },
      'lamp-on-module',
    ],
    [
      'a lamp clipped to the signal',
      clip('sensor.signal', 'battery.negative', 'lamp'),
      'lamp-on-module',
    ],
    [
      'battery voltage on the reference',
      clip('battery.positive', 'sensor.feed', 'lead'),
      'clipped-in',
    ],
    [
      'the signal straight to ground',
      clip('sensor.signal', 'battery.negative', 'lead'),
      'clipped-in',
    ],
    [
      'a scope at a target that stands still, beside a light that may be clipped in',
      {
        setup: {
          ...KEY_ON,
          unplugged: ['sensor'],
          bridges: [{ from: 'sensor.feed', to: 'battery.negative', through: 'test-light' }],
        },
        probe: { kind: 'pattern', plus: 'sensor.feed', minus: 'battery.negative' },
      },
      null,
    ],
    ['a terminal that is not there', volts('sensor.nothing'), null],
    ['a pin behind a plugged connector', volts('sensor.feed.pin'), null],
    ['a plain measurement', volts('sensor.feed'), null],
    ['a 470 ohm pull-down', clip('sensor.signal', 'battery.negative', { ohms: 470 }), null],
  ])('%s', (_name, wanted, hazard) => {
    const { driver, drill } = newDrill(5);
    const { refused } = drill.act({ type: 'make-test', test: wanted });
    const after = driver.session();
    expect(after.stopped[0]?.hazard ?? null).toBe(hazard);
    if (hazard) {
      expect(refused).toMatchObject({ code: 'test-stopped', disk: false });
      expect(refused!.fix.length).toBeGreaterThan(40);
      expect(after.tests).toHaveLength(0);
    }
  });

  test('a test before its cautions are acknowledged is noted and not done', () => {
    const begun = newDrill(5);
    const { refused } = begun.drill.act({ type: 'make-test', test: volts('sensor.feed') });
    expect(refused?.words).toContain('have not been acknowledged');
    expect(begun.driver.session().passedOver).toHaveLength(1);
    expect(begun.driver.session().tests).toHaveLength(0);
    expect(measure(begun, volts('sensor.feed'))).toBeNull();
    expect(begun.driver.session().tests).toHaveLength(1);
  });

  // A DANGER of a drive that is known stops each crank: see pending-cautions.
  test('what was read before cranking stops no second crank, and what was read of a live circuit neither', () => {
    const again = (setup: Setup) => {
      const begun = newDrill(5);
      const test = volts('sensor.feed', setup);
      measure(begun, test);
      return pendingTestCautions(begun.driver.session(), test).length;
    };
    expect(again({ ...KEY_ON, state: 'cranking', target: 'moving' })).toBe(0);
    expect(again(KEY_ON)).toBe(0);
  });
});

test('a diagnosis is one of the repairs, no more than there are faults, and ends the drill', () => {
  const { driver, drill } = newDrill(5);
  const tryIt = (repairs: string[]) => drill.act({ type: 'diagnose', repairs }).refused;
  expect(tryIt(['wire.nothing'])?.words).toContain('no repair');
  expect(tryIt(['wire.feed', 'wire.signal'])?.words).toContain('one fault');
  expect(tryIt(['wire.feed'])).toBeNull();
  const ended = driver.session();
  expect(ended.revealed).not.toBeNull();
  expect(tryIt(['wire.feed'])?.words).toContain('has ended');
  expect(drill.act({ type: 'make-test', test: volts('sensor.feed') }).refused?.code).toBe(
    'not-open',
  );
  expect(replay(ended.events)).toEqual(ended);
});

describe('what is good', () => {
  const procedure = {
    name: 'small',
    title: 'Small',
    about: '',
    circuit: 'hall-module-fed',
    codes: [],
    start: 'ground',
    steps: {
      ground: {
        id: 'ground',
        kind: 'measure' as const,
        title: 'Ground drop',
        family: 'ground' as const,
        setup: KEY_ON,
        say: '',
        why: '',
        minutes: 5,
        cautions: [],
        cannot: null,
        probe: { kind: 'volts' as const, plus: 'sensor.ground', minus: 'battery.negative' },
        unit: 'V' as const,
        expected: { low: null, nominal: null, high: 0.1, from: 'author' as const },
        outcomes: [{ name: 'any', words: '', from: null, to: null, go: 'end' }],
      },
      end: {
        id: 'end',
        kind: 'conclude' as const,
        title: 'End',
        faults: [],
        say: '',
        repair: '',
        customer: '',
        retest: [],
      },
    },
  };
  const model = createModel(hall, {
    samples: SESSION_SAMPLES,
    seed: SESSION_SEED,
    meter: STANDARD_SETTINGS.meter,
  });

  test('at a step that was followed is what the step says, at the same test taken freely what a session computes', () => {
    const begun = newDrill(11, { level: 'double', procedure });
    const free = { ...KEY_ON, unplugged: ['sensor'] };
    measure(begun, volts('sensor.ground', free));
    expect(follow(begun)).toBeNull();
    const session = begun.driver.session();
    expect(session.trail.at(-1)?.step).toBe('end');
    expect(session.answers[0]?.event).toMatchObject({ step: 'ground', judgement: {} });
    expect(session.tests[0]?.expected).toEqual(expectedShown(model, volts('sensor.ground', free)));
  });

  test('of a look is what can be seen', () => {
    const begun = newDrill(11, { level: 'named' });
    const probe = { kind: 'counts', input: 'module.signal' } as const;
    const setup = { ...KEY_ON, state: 'cranking', target: 'moving' } as const;
    measure(begun, { setup, probe });
    expect(begun.driver.session().tests.at(-1)?.expected).toEqual({
      kind: 'look',
      looks: ['follows'],
    });
  });
});
