/** Steps that wake a fault which comes and goes, in a small tree of our own: what they test, show and say. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { carSampler } from '../../src/session/car-sampler.ts';
import type { Command } from '../../src/session/command.ts';
import type { Answer } from '../../src/session/events.ts';
import {
  canWake,
  faultIdOf,
  intermittentCodeChance,
  isIntermittent,
  isWilling,
  ON_A_DRILL,
  ON_THE_ROAD,
  presentAt,
  wakes,
  wakingFaults,
  wakingReadings,
  wakingTests,
  withIntermittent,
} from '../../src/session/intermittent.ts';
import type { TestEntry } from '../../src/suspects/test-entries.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';
import { sessionAfter, when } from './sample-tree.ts';
import { QUESTION, WAKING, WIGGLE } from './waking-tree.ts';

describe('a step wakes a fault', () => {
  it.each<[string, boolean, string]>([
    ['when it moves a place that has faults', true, 'wiggle'],
    ['when it warms one', true, 'heat'],
    ['not when it only asks', false, 'question'],
    ['not when no answer names a place', false, 'shake'],
    ['not when it is work to do', false, 'prepare'],
    ['not when an instrument is read meanwhile', false, 'watch'],
  ])('%s: %s', (_, expected, id) => {
    expect(canWake(WAKING, WAKING.steps[id]!)).toBe(expected);
  });

  it('by the answers that lead to a conclusion with faults, and no others', () => {
    const names = ['plug', 'harness', 'nothing', 'unsure', 'no such answer'];
    expect(names.filter((name) => wakes(WAKING, WIGGLE, name))).toEqual(['plug', 'harness']);
    expect(wakes(WAKING, QUESTION, 'dead')).toBe(false);
  });
});

it('each place is a test of at least a minute, and nobody has it at hand', () => {
  const needs = ['the step of the tree'];
  const still = { test: null, state: 'key-on', unplugged: [], needs } as const;
  const wiggle = { ...still, words: 'Step wiggle', family: 'wiggle', minutes: 1, shownTwice: true };
  expect(wakingTests(WAKING)).toEqual([
    { ...wiggle, id: 'wiggle: plug', reaches: ['plug'] },
    { ...wiggle, id: 'wiggle: harness', reaches: ['harness'] },
    {
      ...still,
      id: 'heat: drops',
      words: 'Step heat',
      family: 'actuation',
      minutes: 3,
      state: 'running',
      unplugged: ['relay'],
      reaches: ['drops'],
    },
  ]);
});

describe('suspects that come and go', () => {
  const CIRCUIT = {
    faults: [
      { id: 'wire.a.open', class: 'open' },
      { id: 'wire.b.open', class: 'open' },
      { id: 'target.damaged', class: 'target' },
    ],
  } as unknown as Circuit;
  const suspect = (id: string, words?: string) => ({
    id,
    repair: id,
    weight: 10,
    ...(words === undefined ? {} : { words }),
  });

  it('take four fifths of the weight of those that can; a wheel and the healthy circuit cannot', () => {
    const given = [
      suspect('wire.a.open', 'wire a open'),
      suspect('wire.b.open'),
      suspect('target.damaged'),
      suspect('healthy'),
    ];
    // by hand: of 10 a fifth stays; of the other eight six tenths can be woken
    const [stays, woken, asleep] = [2, 4.8, 3.2].map((one) => expect.closeTo(one, 9));
    const words = 'wire a open, intermittently';
    const found = withIntermittent(CIRCUIT, given, ON_THE_ROAD);
    expect(found).toEqual([
      { ...given[0], weight: stays },
      { ...given[0], id: 'wire.a.open~', words, weight: woken },
      { ...given[0], id: 'wire.a.open~~', words, weight: asleep },
      { ...given[1], weight: stays },
      { ...given[1], id: 'wire.b.open~', weight: woken },
      { ...given[1], id: 'wire.b.open~~', weight: asleep },
      given[2],
      given[3],
    ]);
    expect(Object.keys(found[4]!)).not.toContain('words');
  });

  it('are the fault they come from', () => {
    const ids = ['wire.a.open', 'wire.a.open~', 'wire.a.open~~'];
    expect(ids.map(faultIdOf)).toEqual(Array(3).fill('wire.a.open'));
    expect(ids.map(isWilling)).toEqual([false, true, false]);
  });

  it('are called intermittent in four of five cases, and else as they look while they are there', () => {
    const chance = intermittentCodeChance((fault, kind) =>
      fault !== 'wire.a.open' ? 0.9 : kind === 'low' ? 0.25 : 0.5,
    );
    expect(chance('wire.a.open~', 'intermittent')).toBe(0.8);
    expect(chance('wire.a.open~', 'low')).toBe(0.25);
    expect(chance('wire.a.open', 'intermittent')).toBe(0.5);
    expect(chance('wire.a.open', 'low')).toBe(0.25);
  });
});

describe('what is shown by a suspect that comes and goes', () => {
  const model = modelOf('hall-module-fed', 4);
  const point = model.pointOf(0);
  // Eyes see what there is to be seen.
  point[model.quantities.findIndex(({ key }) => key === 'fault.visible')] = 0;
  const bent = model.circuit.faults.find(({ visibleChance }) => visibleChance > 0)!;
  // With the sensor unplugged where the wheel stands changes nothing.
  const setup = setupOf({ unplugged: ['sensor'] });
  const tests: TestEntry['test'][] = [
    { setup, probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } },
    { setup: KEY_ON, probe: { kind: 'inspect', of: bent.subject[0]! } },
  ];
  const moved = { ...tests[0]!, wiggle: true };
  const places = wakingTests(WAKING);
  const entries = [
    ...[...tests, moved].map((test) => ({ id: 'any', test }) as TestEntry),
    ...places,
  ];
  const [VOLTS, EYES, MOVED, PLUG, HARNESS] = [0, 1, 2, 3, 4];
  // A car on which such a fault is seldom there by itself; behind its values stands how seldom.
  const SELDOM = 0.5;
  const ways = (candidate: string, place: number, how = ON_THE_ROAD, unit = SELDOM) =>
    carSampler({
      ...{ model, procedure: WAKING, intermittent: how },
      testAt: (at) => entries[at]!,
    })
      .cars(candidate)
      .ways(place, Float64Array.of(...point, ...(how.present === null ? [unit] : [])));
  const shown = (fault: string, place: number) => model.showsAt(fault, tests[place]!, point);
  const FLEETING = 'wire.feed.open~';
  const OPEN = shown('wire.feed.open', VOLTS!);
  const SOUND = shown('healthy', VOLTS!);

  it('is mostly a healthy circuit to every instrument, and the fault to the eyes', () => {
    expect(OPEN).not.toEqual(SOUND);
    for (const id of [FLEETING, `${FLEETING}~`]) {
      expect(ways(id, VOLTS!)).toEqual([
        { shown: OPEN, share: expect.closeTo(0.15, 12) },
        { shown: SOUND, share: expect.closeTo(0.85, 12) },
      ]);
      expect(ways(id, VOLTS!, ON_THE_ROAD, 0)).toEqual([{ shown: SOUND, share: 1 }]);
    }
    expect(ways('wire.feed.open', VOLTS!)).toEqual([{ shown: OPEN, share: 1 }]);
    const seen = shown(bent.id, EYES!);
    expect(seen).not.toEqual(shown('healthy', EYES!));
    expect(ways(bent.id, EYES!)).toEqual([{ shown: seen, share: 1 }]);
    // Of one that comes and goes how often it is seen is no matter of the car.
    for (const id of [`${bent.id}~`, `${bent.id}~~`])
      expect(ways(id, EYES!)).toEqual([
        { shown: { kind: 'look', look: 'faulty' }, share: bent.visibleChance },
        { shown: { kind: 'look', look: 'sound' }, share: 1 - bent.visibleChance },
      ]);
  });

  it('is the fault while the harness is moved, on a road in nine of ten readings if hands can wake it', () => {
    expect(ways(FLEETING, MOVED!)).toEqual([
      { shown: OPEN, share: expect.closeTo(0.9, 12) },
      { shown: SOUND, share: expect.closeTo(0.1, 12) },
    ]);
    expect(ways(`${FLEETING}~`, MOVED!)).toEqual(ways(`${FLEETING}~`, VOLTS!));
    expect(ways('wire.feed.open', MOVED!)).toEqual([{ shown: OPEN, share: 1 }]);
  });
  it('is the fault on a drill in half of the readings, and in every one with the harness moved', () => {
    expect(ways(FLEETING, VOLTS!, ON_A_DRILL)).toEqual([
      { shown: OPEN, share: 0.5 },
      { shown: SOUND, share: 0.5 },
    ]);
    expect(ways(FLEETING, MOVED!, ON_A_DRILL)).toEqual([{ shown: OPEN, share: 1 }]);
  });

  it('is there by itself from never to six in ten readings of a car, one in five in the mean', () => {
    const cars = Array.from({ length: 1000 }, (_, car) => presentAt((car + 0.5) / 1000));
    expect([presentAt(0), presentAt(1)]).toEqual([0, 0.6]);
    // By hand: 0.6 times the mean of a square from 0 to 1, a third.
    expect(cars.reduce((sum, share) => sum + share, 0) / 1000).toBeCloseTo(0.2, 5);
  });

  const woken = (candidate: string, place: number) =>
    Object.fromEntries(
      ways(candidate, place).map(({ shown: it, share }) => [
        it.kind === 'look' ? it.look : '',
        Number(share.toFixed(9)),
      ]),
    );
  const NEVER = { sound: 1 };
  it('is woken in nine of ten cases where its own place is moved', () => {
    expect(woken('wire.signal.open~', HARNESS!)).toEqual({ faulty: 0.9, sound: 0.1 });
    expect(woken('contact.feed.open~', PLUG!)).toEqual({ faulty: 0.9, sound: 0.1 });
  });
  it('is shaken awake from the place beside it in one of twenty', () => {
    expect(woken('wire.signal.open~', PLUG!)).toEqual({ faulty: 0.05, sound: 0.95 });
    expect(woken('contact.feed.open~', HARNESS!)).toEqual({ faulty: 0.05, sound: 0.95 });
  });
  it('is not woken where no hand wakes it, nor is a fault that stays', () => {
    expect(woken('wire.signal.open~~', HARNESS!)).toEqual(NEVER);
    expect(woken('wire.signal.open', HARNESS!)).toEqual(NEVER);
    expect(woken('healthy', HARNESS!)).toEqual(NEVER);
  });
  it('wakes the faults of the conclusion that its answer leads to', () => {
    expect(wakingFaults(WAKING, 'wiggle: harness')).toContain('wire.signal.open');
    expect(wakingFaults(WAKING, 'wiggle: plug')).toContain('contact.feed.open');
    expect(wakingFaults(WAKING, 'no such place')).toEqual([]);
  });
});

describe('an answer to a step that wakes says', () => {
  const answered = (step: string, outcome: string): Answer => ({
    type: 'look-recorded',
    step,
    look: null,
    outcome,
    go: 'fine',
    ...when(1),
  });
  const said = (answer: Answer) =>
    wakingReadings(WAKING, answer).map(({ test, shown, found }) => [
      test,
      shown.kind === 'look' && shown.look,
      found,
    ]);
  it.each<[string, Answer, string[][]]>([
    [
      'that the first place woke it, and nothing of the others',
      answered('wiggle', 'plug'),
      [['wiggle: plug', 'faulty', 'it is plug']],
    ],
    [
      'that those before were moved in vain',
      answered('wiggle', 'harness'),
      [
        ['wiggle: plug', 'sound', 'it is harness'],
        ['wiggle: harness', 'faulty', 'it is harness'],
      ],
    ],
    [
      'that all were moved in vain',
      answered('wiggle', 'nothing'),
      [
        ['wiggle: plug', 'sound', 'it is nothing'],
        ['wiggle: harness', 'sound', 'it is nothing'],
      ],
    ],
    ['nothing when it is none of its answers', answered('wiggle', 'other'), []],
    ['nothing when it answers another question', answered('question', 'dead'), []],
    ['nothing when it is a look', answered('pattern', 'full'), []],
    ['nothing when it is work', { type: 'step-done', step: 'prepare', go: 'feed', ...when(1) }, []],
    [
      'nothing when it could not be done',
      { type: 'step-impossible', step: 'wiggle', reason: 'no room', go: 'fine', ...when(1) },
      [],
    ],
  ])('%s', (_, answer, expected) => {
    expect(said(answer)).toEqual(expected);
  });
});

describe('somebody speaks of a fault that comes and goes', () => {
  const choose = (outcome: string): Command => ({ type: 'choose-outcome', outcome });
  it.each<[string, boolean, string, readonly Command[]]>([
    ['when a place woke it', true, 'wiggle', [choose('harness')]],
    ['not when none did', false, 'wiggle', [choose('nothing')]],
    ['when the answer says so', true, 'question', [choose('fleeting')]],
    ['not when the answer says otherwise', false, 'question', [choose('dead')]],
    ['not when the answer says nothing', false, 'question', [choose('unknown')]],
    ['not before an answer', false, 'question', []],
    ['not in work that was done', false, 'prepare', [{ type: 'mark-done' }]],
  ])('%s: %s', (_, expected, start, commands) => {
    expect(isIntermittent(sessionAfter(commands, { ...WAKING, start }))).toBe(expected);
  });

  // SAE J2012: P0339 intermittent
  it.each<[string, boolean, string]>([
    ['by the code where the answer says nothing', true, 'unknown'],
    ['not by the code where the answer says otherwise', false, 'dead'],
  ])('%s: %s', (_, expected, outcome) => {
    const session = sessionAfter([choose(outcome)], { ...WAKING, start: 'question' });
    const job = { ...session.opened.job, codes: ['P0339'] };
    expect(isIntermittent({ ...session, opened: { ...session.opened, job } })).toBe(expected);
  });
});
