/** What a capture may answer, and what the log refuses of one. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { TestRecorded } from '../../src/session/events.ts';
import { openSession } from '../../src/session/evolve.ts';
import { retestLines } from '../../src/session/retest.ts';
import { ENVELOPE_POINTS_MAX, envelopeOf } from '../../src/waveform/envelope.ts';
import { SMALL_CAPTURE } from '../ui/screens/fake-services.ts';
import { SCOPE_PROCEDURE, SMALL_PROCEDURE } from '../ui/screens/small-procedure.ts';
import { captureFlaw } from './event-flaw.ts';
import { opened, sessionAfter } from './sample-tree.ts';

const NOW = { at: '2030-01-02T10:00:00Z', elapsed: 5 };
const UNEVEN: Command = {
  type: 'choose-outcome',
  outcome: 'uneven',
  look: 'uneven',
  capture: SMALL_CAPTURE,
};

function asked(part: object) {
  const picture = { ...SCOPE_PROCEDURE.steps['picture'], ...part } as Step;
  const procedure = { ...SCOPE_PROCEDURE, steps: { ...SCOPE_PROCEDURE.steps, picture } };
  return openSession(opened(procedure));
}

const HERTZ = {
  kind: 'measure',
  probe: null,
  unit: 'Hz',
  expected: null,
  outcomes: [{ name: 'any', words: 'a signal', from: null, to: null, go: 'follows' }],
};

describe('a capture', () => {
  it('goes into the event of a pattern step, and an answer by eye has none', () => {
    const by = (command: Command) => {
      const decision = decide(asked({}), command, NOW);
      return decision.ok ? decision.events[0] : decision.refusal;
    };
    expect(by(UNEVEN)).toMatchObject({ type: 'look-recorded', capture: { name: 'crank.csv' } });
    const { capture: _capture, ...eye } = UNEVEN;
    expect(Object.keys(by(eye)!)).not.toContain('capture');
  });

  it('answers a reading in hertz with the value measured of it, and no other', () => {
    const reading = (value: number) =>
      decide(
        asked(HERTZ),
        { type: 'record-reading', typed: `${value} Hz`, value, capture: SMALL_CAPTURE },
        NOW,
      );
    expect(reading(200)).toMatchObject({ ok: true, events: [{ value: 200, outcome: 'any' }] });
    expect(reading(201)).toMatchObject({ ok: false, refusal: { code: 'no-capture' } });
  });

  it('does not answer a test light', () => {
    const light = SMALL_PROCEDURE.steps['light'] as { probe: object };
    const decision = decide(asked({ probe: light.probe }), UNEVEN, NOW);
    expect(decision).toMatchObject({ ok: false, refusal: { code: 'no-capture' } });
  });
});

const MEAN = { ...SMALL_CAPTURE, measures: { ...SMALL_CAPTURE.measures, mean: 2.5, ac: 2.4 } };
const MOVING = { ...SCOPE_PROCEDURE.steps['picture'] } as Extract<Step, { kind: 'look' }>;
const VOLTS: Test = {
  setup: MOVING.setup,
  probe: { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' },
};

describe('a level in volts', () => {
  const reading = (part: object, value: number, capture = MEAN) => {
    const step = { ...HERTZ, unit: 'V', ...part };
    const command = { type: 'record-reading', typed: `${value} V`, value, capture } as const;
    return decide(asked(step), command, NOW).ok;
  };

  it.each([
    ['low', 0.1],
    ['high', 4.9],
    ['swing', 4.8],
    ['mean', 2.5],
    ['ac', 2.4],
  ])('%s is taken from a capture with its value and no other', (level, value) => {
    expect(reading({ level }, value)).toBe(true);
    expect(reading({ level }, value + 0.1)).toBe(false);
  });

  it('is not taken where nobody says which, nor from amperes, nor where an early version kept none', () => {
    expect(reading({}, 2.5)).toBe(false);
    const amperes = { ...MEAN, measures: { ...MEAN.measures, unit: 'A' as const } };
    expect(reading({ level: 'mean' }, 2.5, amperes)).toBe(false);
    expect(reading({ level: 'mean' }, 2.5, SMALL_CAPTURE as typeof MEAN)).toBe(false);
  });

  it('of what a meter would read while the target moves is the mean, and of a dead circuit none', () => {
    expect(reading({ probe: VOLTS.probe }, 2.5)).toBe(true);
    const still = { ...MOVING.setup, target: 'still' };
    expect(reading({ probe: VOLTS.probe, setup: still }, 2.5)).toBe(false);
  });
});

describe('a test that no step asks for', () => {
  const extra = (test: Test, shown: TestRecorded['shown']) =>
    decide(
      asked({}),
      { type: 'record-test', test, typed: '', shown, expected: null, capture: MEAN },
      NOW,
    );

  it('takes a capture of a picture, or the mean of one in volts', () => {
    const picture = { setup: MOVING.setup, probe: MOVING.probe };
    expect(extra(picture, { kind: 'look', look: 'uneven' })).toMatchObject({
      ok: true,
      events: [{ type: 'test-recorded', capture: { name: 'crank.csv' } }],
    });
    expect(extra(VOLTS, { kind: 'number', value: 2.5, unit: 'V' }).ok).toBe(true);
  });

  it.each<[string, Test, TestRecorded['shown']]>([
    ['another value', VOLTS, { kind: 'number', value: 3, unit: 'V' }],
    ['OL', VOLTS, { kind: 'number', value: null, unit: 'V' }],
    ['a look of a meter', VOLTS, { kind: 'look', look: 'uneven' }],
    [
      'a test light',
      { setup: MOVING.setup, probe: { ...VOLTS.probe, kind: 'light' } as Test['probe'] },
      { kind: 'look', look: 'lit' },
    ],
  ])('refuses a capture with %s', (_, test, shown) => {
    expect(extra(test, shown)).toMatchObject({ ok: false, refusal: { code: 'no-capture' } });
  });
});

describe('a reading out of its range by a capture', () => {
  it('must pass again after the repair', () => {
    const step = { ...HERTZ, expected: { low: 210, nominal: null, high: 300, from: 'author' } };
    const picture = { ...MOVING, ...step } as unknown as Step;
    const procedure = {
      ...SCOPE_PROCEDURE,
      steps: { ...SCOPE_PROCEDURE.steps, picture },
    };
    const capture = SMALL_CAPTURE;
    const session = sessionAfter(
      [{ type: 'record-reading', typed: '200 Hz', value: 200, capture }],
      procedure,
    );
    expect(retestLines(session).map(({ step: { id } }) => id)).toContain('picture');
  });
});

describe('in a session file', () => {
  const { measures, channels } = SMALL_CAPTURE;
  const flawOf = (part: object) => captureFlaw({ ...SMALL_CAPTURE, ...part });

  it.each([
    ['whole', {}],
    ['with a channel of its own', { channel: 2 }],
    ['with what an early version said of pairs', { phases: [{ said: 'a in b' }] }],
  ])('a capture %s is taken', (_, part) => {
    expect(flawOf(part)).toBeNull();
  });

  it.each([
    ['without its digest', { sha256: 'none' }, 'capture.sha256'],
    [
      'with a text as frequency',
      { measures: { ...measures, hertz: '2' } },
      'capture.measures.hertz',
    ],
    ['with a channel in words', { channel: 'two' }, 'capture.channel'],
    ['with a mean in words', { measures: { ...measures, mean: '2' } }, 'capture.measures.mean'],
    ['with a finding of no kind that is known', { findings: [{ kind: 'odd' }] }, 'findings'],
    [
      'with too many points',
      { channels: [{ ...channels[0], points: Array(401).fill(0) }] },
      'capture.channels[0].points',
    ],
  ])('a capture %s is told', (_, part, place) => {
    expect(flawOf(part)).toContain(place);
  });
});

it('keeps the extremes of a long channel in 400 points', () => {
  const samples = Float32Array.from({ length: 100_000 }, (_, i) => Math.sin(i / 50));
  samples[77_777] = 9;
  const kept = envelopeOf({ name: 'a', unit: 'V', samples }, 1000, { from: 0, to: 100 });
  expect(kept.points).toHaveLength(ENVELOPE_POINTS_MAX);
  expect(Math.max(...kept.points)).toBe(9);
  expect(kept).toMatchObject({ from: 0, seconds: 100 });
});
