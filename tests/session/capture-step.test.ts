/** What a capture may answer, and what the log refuses of one. */
import { describe, expect, it } from 'vitest';
import type { Step } from '../../src/procedure/procedure.ts';
import { checkEvents } from '../../src/records/check-events.ts';
import { type Command, decide } from '../../src/session/decide.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { ENVELOPE_POINTS_MAX, envelopeOf } from '../../src/waveform/envelope.ts';
import { fakeDriver, SMALL_CAPTURE } from '../ui/screens/fake-services.ts';
import { SCOPE_PROCEDURE, SMALL_JOB, SMALL_PROCEDURE } from '../ui/screens/small-procedure.ts';

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
  return fakeDriver(SMALL_JOB, false, procedure).session();
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
    expect(reading(201)).toMatchObject({ ok: false, refusal: { code: 'wrong-kind' } });
  });

  it('does not answer a test light', () => {
    const light = SMALL_PROCEDURE.steps['light'] as { probe: object };
    const decision = decide(asked({ probe: light.probe }), UNEVEN, NOW);
    expect(decision).toMatchObject({ ok: false, refusal: { code: 'wrong-kind' } });
  });
});

describe('in a session file', () => {
  const opened = fakeDriver(SMALL_JOB, false, SCOPE_PROCEDURE).session().events;
  const event = { type: 'look-recorded', step: 'picture', look: 'uneven', outcome: 'uneven' };
  const flawOf = (capture: unknown) => {
    const given = { ...event, go: 'follows', capture, ...NOW } as unknown as SessionEvent;
    const stored = [...opened, given].map((one, at) => ({ ...one, seq: at + 1, prev: null }));
    return checkEvents(stored as never).flaw?.words ?? null;
  };

  it.each([
    ['whole', SMALL_CAPTURE, null],
    ['without its digest', { ...SMALL_CAPTURE, sha256: 'none' }, 'capture.sha256'],
    [
      'with a text as frequency',
      { ...SMALL_CAPTURE, measures: { ...SMALL_CAPTURE.measures, hertz: '2' } },
      'capture.measures.hertz',
    ],
    [
      'with too many points',
      {
        ...SMALL_CAPTURE,
        channels: [{ ...SMALL_CAPTURE.channels[0], points: Array(401).fill(0) }],
      },
      'capture.channels[0].points',
    ],
  ])('a capture %s is told', (_, capture, place) => {
    expect(flawOf(capture)).toBe(place === null ? null : `has no proper "${place}"`);
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
