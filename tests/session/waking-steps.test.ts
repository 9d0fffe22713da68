/** Steps that wake a fault which comes and goes, in a small tree of our own: what they test, show and say. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Model } from '../../src/circuit/model.ts';
import type { Probe, Test } from '../../src/circuit/test.ts';
import type { Command } from '../../src/session/command.ts';
import type { Answer } from '../../src/session/events.ts';
import {
  canWake,
  faultIdOf,
  intermittentCodeChance,
  intermittentShows,
  isIntermittent,
  ON_A_DRILL,
  ON_THE_ROAD,
  wakes,
  wakingReadings,
  wakingTests,
  withIntermittent,
} from '../../src/session/intermittent.ts';
import type { TestEntry } from '../../src/suspects/test-entries.ts';
import { KEY_ON } from '../circuit/setup.ts';
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
  const wiggle = { ...still, words: 'Step wiggle', family: 'wiggle', minutes: 1 };
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
    // by hand: of 10 a fifth and four fifths
    const [stays, goes] = [expect.closeTo(2, 9), expect.closeTo(8, 9)];
    const found = withIntermittent(CIRCUIT, given, ON_THE_ROAD);
    expect(found).toEqual([
      { ...given[0], weight: stays },
      { ...given[0], id: 'wire.a.open~', words: 'wire a open, now and then', weight: goes },
      { ...given[1], weight: stays },
      { ...given[1], id: 'wire.b.open~', weight: goes },
      given[2],
      given[3],
    ]);
    expect(Object.keys(found[3]!)).not.toContain('words');
  });

  it('are the fault they come from', () => {
    expect(['wire.a.open~', 'wire.a.open'].map(faultIdOf)).toEqual(['wire.a.open', 'wire.a.open']);
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
  /** A model that tells which fault it was asked for, in which sample. */
  const model = {
    shows: (fault: string, { probe }: Test, sample: number) => `${fault} ${probe.kind} ${sample}`,
  } as unknown as Model;
  const shows = intermittentShows(model, WAKING, 10, ON_THE_ROAD);
  const test = (probe: Probe) => ({ id: 'any', test: { setup: KEY_ON, probe } }) as TestEntry;
  const volts = test({ kind: 'volts', plus: 'a.b', minus: 'battery.negative' });
  const eyes = test({ kind: 'inspect', of: 'a' });

  it('is a healthy circuit to every instrument, and the fault to the eyes', () => {
    expect(shows('wire.signal.open~', volts, 3)).toBe('healthy volts 3');
    expect(shows('wire.signal.open~', eyes, 3)).toBe('wire.signal.open inspect 3');
    expect(shows('wire.signal.open', volts, 3)).toBe('wire.signal.open volts 3');
    expect(shows('wire.signal.open', eyes, 3)).toBe('wire.signal.open inspect 3');
  });

  const SAMPLES = Array.from({ length: 1000 }, (_, sample) => sample);
  const shareSeen = (how: typeof ON_THE_ROAD, more: Partial<Test>) => {
    const of = intermittentShows(model, WAKING, SAMPLES.length, how);
    const asked = { ...volts, test: { ...volts.test, ...more } };
    const seen = SAMPLES.filter(
      (at) => String(of('wire.signal.open~', asked, at)) === `wire.signal.open volts ${at}`,
    );
    return seen.length / SAMPLES.length;
  };
  it('is the fault while the harness is moved, on a road in six of ten readings', () => {
    expect(shareSeen(ON_THE_ROAD, {})).toBe(0);
    expect(shareSeen(ON_THE_ROAD, { wiggle: true })).toBeCloseTo(0.6, 1);
  });
  it('is the fault on a drill in half of the readings, and in every one with the harness moved', () => {
    expect(shareSeen(ON_A_DRILL, {})).toBeCloseTo(0.5, 1);
    expect(shareSeen(ON_A_DRILL, { wiggle: true })).toBe(1);
  });

  const [plug, harness] = wakingTests(WAKING);
  const seen = (candidate: string, at = harness!, sample = 0) => shows(candidate, at, sample);
  const sound = { kind: 'look', look: 'sound' };
  const faulty = { kind: 'look', look: 'faulty' };
  it('is the fault in six of ten cases where its own place is moved', () => {
    const looks = Array.from({ length: 10 }, (_, sample) =>
      seen('wire.signal.open~', harness, sample),
    );
    expect(looks).toEqual([...Array(6).fill(faulty), ...Array(4).fill(sound)]);
  });
  it('is nothing where another place is moved, nor of a fault that stays', () => {
    expect(seen('wire.signal.open~', plug)).toEqual(sound);
    expect(seen('contact.feed.open~', harness)).toEqual(sound);
    expect(seen('contact.feed.open~', plug)).toEqual(faulty);
    expect(seen('wire.signal.open')).toEqual(sound);
    expect(seen('healthy')).toEqual(sound);
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
