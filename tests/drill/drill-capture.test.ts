/** Captures in a drill: what the scope saves, what it costs, what it proves, and that nobody can change it afterwards. */
import { describe, expect, test } from 'vitest';
import { leadPlaces } from '../../src/circuit/arrange-test.ts';
import type { Test } from '../../src/circuit/test.ts';
import { createVehicle } from '../../src/drill/drill-vehicle.ts';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { capturedFindingWords } from '../../src/session/capture-words.ts';
import type {
  LevelName,
  SessionEvent,
  StepCapture,
  TestRecorded,
} from '../../src/session/events.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { LONG } from '../campaign.ts';
import { setupOf } from '../circuit/setup.ts';
import { type DrillInTest, hash, library, measure, newDrill } from './students.ts';

const hall = library.circuits.get('hall-module-fed')!;
const SCOPE: Test = {
  setup: setupOf({ state: 'cranking', target: 'moving' }),
  probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
};
const FEED: Test = {
  setup: setupOf({ state: 'key-on' }),
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};

/** The first vehicle whose hidden fault is that one. */
function seedOf(fault: string, level: LevelName = 'unnamed'): number {
  for (let seed = 0; seed < 20_000; seed += 1)
    if (hideFault(hall, levelNamed(level), seed, hash)?.answer.faults[0] === fault) return seed;
  throw new Error(`no seed hides ${fault}`);
}

/** The last reading after a capture; its cautions are read first. */
function captured(begun: DrillInTest, asked = SCOPE): TestRecorded {
  begun.driver.perform({ type: 'acknowledge-cautions', test: asked });
  expect(begun.drill.act({ type: 'capture', test: asked }).refused).toBeNull();
  return begun.driver.session().tests.at(-1)!;
}

describe('a capture in a drill', () => {
  test.each([
    ['target.damaged', 'uneven', 'switched'],
    ['wire.feed.open', 'flat-high', 'steady'],
    ['wire.signal.open', 'flat-high', 'steady'],
  ])('of %s is measured as %s', (fault, look, kind) => {
    const reading = captured(newDrill(seedOf(fault)));
    expect(reading).toMatchObject({
      shown: { kind: 'look', look },
      capture: { from: 'bench', measures: { kind } },
    });
    // The circuit's own answer to the same scope, without a capture.
    const looked = newDrill(seedOf(fault));
    measure(looked, SCOPE);
    expect(looked.driver.session().tests[0]!.shown).toEqual(reading.shown);
  });

  test('shows the turning wheel: frequency, speed, and the missing tooth by its number', () => {
    const { capture } = captured(newDrill(seedOf('target.damaged')));
    const { measures, channels } = capture!;
    // By hand: 60 pitches at 200 rpm are 200 Hz.
    expect(measures.hertz).toBeCloseTo(200, 0);
    expect(measures.rpm).toBeCloseTo(200, 0);
    expect(capturedFindingWords(capture!).join()).toMatch(/tooth \d+ is missing/);
    expect(channels[0]!.points.length).toBeGreaterThan(100);
  });

  test('costs what any picture at this place costs', () => {
    const eye = newDrill(9);
    measure(eye, SCOPE);
    const saved = newDrill(9);
    captured(saved);
    expect(spentMinutes(saved.driver.session())).toBe(spentMinutes(eye.driver.session()));
    expect(spentMinutes(saved.driver.session())).toBeGreaterThan(0);
  });

  test('is evidence like any reading: it ranks, and it proves', () => {
    const chance = ({ advisor, driver }: DrillInTest) =>
      advisor!
        .suspects(driver.session())
        .rows.flatMap(({ faults }) => faults)
        .find(({ id }) => id === 'target.damaged')!.chance;
    const begun = newDrill(seedOf('target.damaged'));
    const before = chance(begun);
    captured(begun);
    expect(chance(begun)).toBeGreaterThan(5 * before);
    const looked = newDrill(seedOf('target.damaged'));
    measure(looked, SCOPE);
    expect(chance(begun)).toBe(chance(looked));
  });

  test('is the same each time, and there or not with a fault that comes and goes', () => {
    const again = () => captured(newDrill(9)).capture!.sha256;
    expect(again()).toBe(again());
    const begun = newDrill(seedOf('wire.signal.open', 'intermittent'), { level: 'intermittent' });
    const kinds = Array.from({ length: 12 }, () => captured(begun).capture!.measures.kind);
    expect(new Set(kinds)).toEqual(new Set(['steady', 'switched']));
    const moved = captured(begun, { ...SCOPE, wiggle: true });
    expect(moved.capture!.measures.kind).toBe('steady');
  });

  test.each<LevelName>(['double', 'misled'])('is to be had on the level %s', (level) => {
    const begun = newDrill(5, { level });
    expect(captured(begun).capture).toBeDefined();
    expect(verifyDrill(begun.driver.session().events, hash).problems).toEqual([]);
  });

  test('says nothing of good values on a level that hides them', () => {
    const seed = seedOf('target.damaged', 'blind');
    expect(captured(newDrill(seed, { level: 'blind' })).capture!.findings).toEqual([]);
  });

  test('is refused with another instrument, and before its cautions are read', () => {
    const { driver, drill } = newDrill(9);
    const refusal = (test: Test) => drill.act({ type: 'capture', test }).refused;
    expect(refusal(FEED)?.words).toBe('only the scope saves a capture');
    expect(refusal(SCOPE)?.code).toBe('caution-passed-over');
    expect(driver.session().passedOver).toHaveLength(1);
    const still = { ...SCOPE, setup: setupOf({ state: 'key-on' }) };
    expect(refusal(still)?.words).toContain('nothing is moving past the sensor');
  });
});

describe.each([...library.circuits.values()])('at every place of $name', (circuit) => {
  const turns = circuit.target !== null && circuit.target.turns > 0;
  const setup = setupOf({ state: turns ? 'cranking' : 'key-on', target: 'moving' });
  const places = leadPlaces(circuit).filter(({ id }) => !/\.pin$|battery\.negative/.test(id));
  const seeds = LONG ? 40 : 3;

  test('a capture looks as the screen does without one', () => {
    const otherwise: string[] = [];
    let captures = 0;
    const { meter } = STANDARD_SETTINGS;
    for (let seed = 0; seed < seeds; seed += 1) {
      const vehicle = createVehicle({ circuit, meter, level: 'unnamed', seed }, hash)!;
      for (const { id } of places) {
        const probe = { kind: 'pattern', plus: id, minus: 'battery.negative' } as const;
        const asked = { setup, probe };
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
  const reading = captured(newDrill(seedOf('target.damaged')), { ...SCOPE, probe });
  expect(reading.capture!.measures.kind).toBe('steady');
  expect(reading.capture!.findings).toEqual([]);
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
    const there = newDrill(seedOf('target.damaged'), { procedure });
    there.driver.perform({ type: 'acknowledge-cautions', test: SCOPE });
    expect(there.drill.act({ type: 'capture', test: SCOPE }).refused).toBeNull();
    expect(there.driver.session().answers[0]?.event).toMatchObject({ step: 'picture', go: 'end' });
    expect(there.driver.session().answers[0]?.event).toHaveProperty('capture');
    const probe = { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' } as const;
    const elsewhere = newDrill(seedOf('target.damaged'), { procedure });
    captured(elsewhere, { ...SCOPE, probe });
    expect(elsewhere.driver.session().answers).toEqual([]);
    expect(elsewhere.driver.session().trail.at(-1)?.step).toBe('picture');
  });
});

describe('in the file', () => {
  const begun = newDrill(seedOf('target.damaged'));
  captured(begun);
  type Loose = { -readonly [K in keyof TestRecorded]: unknown };
  const problemsWith = (change: (recorded: Loose) => void) => {
    const events = begun.driver.session().events.map((event): SessionEvent => {
      if (event.type !== 'test-recorded') return event;
      const copy = structuredClone(event);
      change(copy);
      return copy;
    });
    return verifyDrill(events, hash).problems.map(({ words }) => words);
  };

  test('it verifies as it was written', () => {
    expect(problemsWith(() => {})).toEqual([]);
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
      'saves a different capture',
    ],
    [
      'another finding',
      (event) => {
        event.capture = { ...(event.capture as StepCapture), findings: [] };
      },
      'saves a different capture',
    ],
    [
      'a reading by eye passed off as a capture',
      (event) => {
        event.capture = {
          ...(event.capture as object),
          measures: { kind: 'steady', low: 5, high: 5 },
        };
      },
      'saves a different capture',
    ],
    ...(
      [
        ['another tooth', { findings: [{ kind: 'missing-teeth', teeth: [24], seen: 57, of: 58 }] }],
        ['a finding of another kind', { findings: [{ kind: 'stuck-high', volts: 5 }] }],
        ['another frequency', { measures: { hertz: 100 } }],
        ['another speed of the engine', { measures: { rpm: 900 } }],
        ['no duty', { measures: { duty: null } }],
        ['a longer capture', { measures: { seconds: 12 } }],
        ['another file beside it', { second: { name: 'other.csv', sha256: '0'.repeat(64) } }],
        ['edges that come later', { shiftDegrees: 12 }],
      ] as const
    ).map(([what, more]): [string, (event: Loose) => void, string] => [
      what,
      (event) => {
        const capture = event.capture as StepCapture;
        const measures = { ...capture.measures, ...('measures' in more ? more.measures : {}) };
        event.capture = { ...capture, ...more, measures };
      },
      'saves a different capture',
    ]),
  ])('%s is found out', (_, change, words) => {
    expect(problemsWith(change).join()).toContain(words);
  });
});
