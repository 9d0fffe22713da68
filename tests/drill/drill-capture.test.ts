/** Captures in a drill: what the scope saves, what it costs, what it proves, and that nobody can change it afterwards. */
import { describe, expect, test } from 'vitest';
import { leadPlaces } from '../../src/circuit/arrange-test.ts';
import type { Drill } from '../../src/drill/drill.ts';
import type { DrillEvent } from '../../src/drill/drill-events.ts';
import type { DrillTest } from '../../src/drill/drill-test.ts';
import { createVehicle } from '../../src/drill/drill-vehicle.ts';
import { readingLine } from '../../src/drill/drill-words.ts';
import type { DrillWorld } from '../../src/drill/drill-world.ts';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { type LevelName, levelNamed } from '../../src/drill/levels.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { setupOf } from '../circuit/setup.ts';
import { doIt, hash, library, measure, newDrill } from './students.ts';

const hall = library.circuits.get('hall-module-fed')!;
const SCOPE: DrillTest = {
  setup: setupOf({ state: 'cranking', target: 'moving' }),
  probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
  wiggle: false,
};
const FEED: DrillTest = {
  setup: setupOf({ state: 'key-on' }),
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  wiggle: false,
};

/** The first vehicle whose hidden fault is that one. */
function seedOf(fault: string, level: LevelName = 'unnamed'): number {
  for (let seed = 0; seed < 20_000; seed += 1)
    if (hideFault(hall, levelNamed(level), seed, hash)?.answer.faults[0] === fault) return seed;
  throw new Error(`no seed hides ${fault}`);
}

function captured(begun: { drill: Drill; world: DrillWorld }, asked = SCOPE): Drill {
  const { world } = begun;
  const read = doIt(begun.drill, { type: 'acknowledge', test: asked }, world).drill;
  const done = doIt(read, { type: 'capture', test: asked }, world);
  expect(done.refused).toBeNull();
  return done.drill;
}

describe('a capture in a drill', () => {
  test.each([
    ['target.damaged', 'uneven', 'switched'],
    ['wire.feed.open', 'flat-high', 'steady'],
    ['wire.signal.open', 'flat-high', 'steady'],
  ])('of %s is measured as %s', (fault, look, kind) => {
    const begun = newDrill(seedOf(fault));
    const [reading] = captured(begun).readings;
    expect(reading).toMatchObject({
      shown: { kind: 'look', look },
      capture: { from: 'bench', measures: { kind } },
    });
    // The circuit's own answer to the same scope, without a capture.
    expect(measure(begun.drill, SCOPE, begun.world).readings[0]!.shown).toEqual(reading!.shown);
  });

  test('shows the turning wheel: frequency, speed, and the missing tooth by its number', () => {
    const [reading] = captured(newDrill(seedOf('target.damaged'))).readings;
    const { measures, words, channels } = reading!.capture!;
    // By hand: 60 pitches at 200 rpm are 200 Hz.
    expect(measures.hertz).toBeCloseTo(200, 0);
    expect(measures.rpm).toBeCloseTo(200, 0);
    expect(words.join()).toMatch(/tooth \d+ is missing/);
    expect(channels[0]!.points.length).toBeGreaterThan(100);
    expect(readingLine(reading!, hall)).toContain('captured: switched,');
  });

  test('costs what any picture at this place costs', () => {
    const begun = newDrill(9);
    const eye = measure(begun.drill, SCOPE, begun.world);
    const saved = captured(begun);
    expect(saved.minutes).toBe(eye.minutes);
    expect(saved.minutes).toBeGreaterThan(0);
  });

  test('is evidence like any reading: it ranks, and it proves', () => {
    const begun = newDrill(seedOf('target.damaged'));
    const mind = begun.world.mind([]);
    const after = captured(begun);
    const before = mind.rank([], null);
    const ranking = mind.rank(mind.readingsOf(after.readings), null);
    const chance = (of: typeof ranking) =>
      of.suspects.find(({ id }) => id === 'target.damaged')!.chance;
    expect(chance(ranking)).toBeGreaterThan(5 * chance(before));
    const looked = measure(begun.drill, SCOPE, begun.world);
    expect(chance(ranking)).toBe(chance(mind.rank(mind.readingsOf(looked.readings), null)));
  });

  test('is the same each time, and there or not with a fault that comes and goes', () => {
    const again = () => captured(newDrill(9)).readings[0]!.capture!.sha256;
    expect(again()).toBe(again());
    const begun = newDrill(seedOf('wire.signal.open', 'intermittent'), { level: 'intermittent' });
    let { drill } = begun;
    for (let count = 0; count < 12; count += 1) drill = captured({ ...begun, drill });
    const kinds = drill.readings.map(({ capture }) => capture!.measures.kind);
    expect(new Set(kinds)).toEqual(new Set(['steady', 'switched']));
    const moved = captured(begun, { ...SCOPE, wiggle: true });
    expect(moved.readings[0]!.capture!.measures.kind).toBe('steady');
  });

  test.each<LevelName>(['double', 'misled'])('is to be had on the level %s', (level) => {
    const begun = newDrill(5, { level });
    const drill = captured(begun);
    expect(drill.readings[0]!.capture).toBeDefined();
    expect(verifyDrill(drill.events, hash).problems).toEqual([]);
  });

  test('says nothing of good values on a level that hides them', () => {
    const seed = seedOf('target.damaged', 'blind');
    expect(captured(newDrill(seed, { level: 'blind' })).readings[0]!.capture!.words).toEqual([]);
  });

  test('is refused with another instrument, and before its cautions are read', () => {
    const { drill, world } = newDrill(9);
    expect(doIt(drill, { type: 'capture', test: FEED }, world).refused).toBe(
      'only the scope saves a capture',
    );
    const unread = doIt(drill, { type: 'capture', test: SCOPE }, world);
    expect(unread.refused).toContain('cautions');
    expect(unread.drill.passedOver).toHaveLength(1);
    const still = { ...SCOPE, setup: setupOf({ state: 'key-on' }) };
    expect(doIt(drill, { type: 'capture', test: still }, world).refused).toContain(
      'nothing passes the sensor',
    );
  });
});

describe.each([...library.circuits.values()])('at every place of $name', (circuit) => {
  const turns = circuit.target !== null && circuit.target.turns > 0;
  const setup = setupOf({ state: turns ? 'cranking' : 'key-on', target: 'moving' });
  const places = leadPlaces(circuit).filter(({ id }) => !/\.pin$|battery\.negative/.test(id));
  const seeds = process.env['OHMWARD_LONG'] === '1' ? 40 : 3;

  test('a capture looks as the screen does without one', () => {
    const otherwise: string[] = [];
    let captures = 0;
    for (let seed = 0; seed < seeds; seed += 1) {
      const { meter } = STANDARD_SETTINGS;
      const vehicle = createVehicle({ circuit, meter, level: 'unnamed', seed }, hash)!;
      for (const { id } of places) {
        const probe = { kind: 'pattern', plus: id, minus: 'battery.negative' } as const;
        const asked = { setup, probe, wiggle: false };
        if (vehicle.model.refusal(asked) !== null) continue;
        const { shown, words } = vehicle.captures(asked, 0);
        captures += 1;
        if (JSON.stringify(shown) !== JSON.stringify(vehicle.answers(asked, 0).shown))
          otherwise.push(`${vehicle.hidden.modelId} at ${id}: ${words}`);
      }
    }
    expect(otherwise).toEqual([]);
    expect(captures).toBeGreaterThan(seeds);
  });
});

test('where no signal belongs, a capture says so and blames nothing', () => {
  const probe = { kind: 'pattern', plus: 'sensor.feed', minus: 'battery.negative' } as const;
  const [reading] = captured(newDrill(seedOf('target.damaged')), { ...SCOPE, probe }).readings;
  expect(reading!.found).toContain('no signal belongs here; captured: a flat line, ');
  expect(reading!.capture!.words).toEqual([]);
});

describe('where the procedure asks for the picture', () => {
  const procedure = {
    name: 'small',
    title: 'Small',
    about: '',
    circuit: 'hall-module-fed',
    codes: [],
    start: 'picture',
    steps: {
      picture: {
        id: 'picture',
        kind: 'look' as const,
        title: 'Picture',
        family: 'pattern' as const,
        setup: SCOPE.setup,
        say: '',
        why: '',
        minutes: 5,
        cautions: [],
        cannot: null,
        probe: { kind: 'pattern' as const, plus: 'module.signal', minus: 'battery.negative' },
        expected: ['full' as const],
        outcomes: [
          { name: 'uneven', words: '', looks: ['uneven' as const], go: 'end' },
          {
            name: 'rest',
            words: '',
            looks: ['full', 'weak', 'flat-high', 'flat-middle', 'flat-low'] as const,
            go: 'picture',
          },
        ],
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

  test('a capture there answers the step, and one elsewhere does not', () => {
    const begun = newDrill(seedOf('target.damaged'), { more: { procedure } });
    const there = captured(begun);
    expect(there.readings[0]).toMatchObject({ step: 'picture', go: 'end' });
    expect(there.step).toBe('end');
    const probe = { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' } as const;
    const elsewhere = captured(begun, { ...SCOPE, probe });
    expect(elsewhere.readings[0]).toMatchObject({ step: null, go: null });
    expect(elsewhere.step).toBe('picture');
  });
});

describe('in the file', () => {
  const drill = captured(newDrill(seedOf('target.damaged')));
  const changed = (change: (measured: Extract<DrillEvent, { type: 'drill-measured' }>) => void) => {
    const events = structuredClone(drill.events) as DrillEvent[];
    for (const event of events) if (event.type === 'drill-measured') change(event);
    return verifyDrill(events, hash).problems;
  };
  type Loose = { -readonly [K in keyof Extract<DrillEvent, { type: 'drill-measured' }>]: unknown };

  test('it verifies as it was written', () => {
    expect(changed(() => {})).toEqual([]);
  });

  test.each<[string, (event: Loose) => void, string]>([
    [
      'a nicer look',
      (event) => {
        event.shown = { kind: 'look', look: 'full' };
      },
      'shows something else',
    ],
    [
      'another picture',
      (event) => {
        const capture = event.capture as { channels: { points: number[] }[] };
        capture.channels[0]!.points[50] = 12;
      },
      'saves another capture',
    ],
    [
      'another finding',
      (event) => {
        (event.capture as { words: string[] }).words = ['all is well'];
      },
      'saves another capture',
    ],
    [
      'a reading by eye passed off as a capture',
      (event) => {
        event.capture = {
          ...(event.capture as object),
          measures: { kind: 'steady', low: 5, high: 5 },
        };
      },
      'saves another capture',
    ],
  ])('%s is found out', (_, change, words) => {
    const problems = changed((event) => change(event as unknown as Loose));
    expect(problems.join()).toContain(words);
  });
});
