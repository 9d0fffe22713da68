/** What a capture is asked to answer beside a step: a test that no step asks for, a test after the repair; and its refusals. */
import { describe, expect, test } from 'vitest';
import type { LookStep, MeasureStep, Step } from '../../src/procedure/procedure.ts';
import {
  type CaptureAsk,
  captureAnswer,
  capturedLevel,
  capturedValue,
  takesCapture,
  testTakesCapture,
} from '../../src/session/capture-step.ts';
import type { CaptureMeasured, ExpectedShown } from '../../src/session/events.ts';
import type { Channel } from '../../src/waveform/capture.ts';
import {
  channel,
  fileOf,
  known,
  measure,
  PICTURE,
  PICTURE_TEST,
  PULSES,
  VOLTS_MOVING,
  VOLTS_STILL,
} from './drawn-capture.ts';
import { TREE } from './sample-tree.ts';

const FLAT = channel(() => 5);
const AMPERES = channel((i) => (i % 100 < 25 ? 0.014 : 0.007), 'A');

function answer(ask: CaptureAsk, channels: readonly Channel[] = [PULSES], judged?: number) {
  return captureAnswer(ask, fileOf(channels), known(), judged);
}
const ofStep = (step: Step): CaptureAsk => ({ kind: 'step', step });
const again = (step: MeasureStep | LookStep): CaptureAsk => ({ kind: 'retest', step });

const EXPECTED: ExpectedShown = { kind: 'number', low: 1, high: 2 };
const outside = (asked: typeof VOLTS_MOVING): CaptureAsk => ({
  kind: 'test',
  test: asked,
  expected: EXPECTED,
});
const commandOf = (...given: Parameters<typeof answer>) => {
  const found = answer(...given);
  if (!found.ok) throw new Error(found.words);
  const { command, capture, lines } = found;
  return { command, capture, last: lines.at(-1) };
};

describe('a test that no step asks for', () => {
  test('in volts takes the mean of the signal, as a meter shows it', () => {
    // by hand: 5 V for a quarter of the time
    const { command, capture, last } = commandOf(outside(VOLTS_MOVING));
    expect(command).toEqual({
      type: 'record-test',
      test: VOLTS_MOVING,
      expected: EXPECTED,
      typed: '1.25 V',
      shown: { kind: 'number', value: 1.25, unit: 'V' },
      capture,
    });
    expect(last).toBe('Mean, as a meter shows it: 1.25 V');
  });

  test('with a scope takes how the signal looks', () => {
    const { command, capture, last } = commandOf(outside(PICTURE_TEST), [FLAT]);
    expect(command).toEqual({
      type: 'record-test',
      test: PICTURE_TEST,
      expected: EXPECTED,
      typed: 'a flat line, high',
      shown: { kind: 'look', look: 'flat-high' },
      capture,
    });
    expect(last).toBe('Looks like: a flat line, high');
  });

  test('in volts takes nothing from a capture in amperes', () => {
    expect(answer(outside(VOLTS_MOVING), [AMPERES])).toEqual({
      ok: false,
      words: 'this capture is not in volts',
      fix: 'export the capture with its unit, or type the reading',
    });
  });

  test('is a scope’s, or a meter’s at a signal that moves', () => {
    expect(testTakesCapture(PICTURE_TEST)).toBe(true);
    expect(testTakesCapture({ ...PICTURE_TEST, setup: VOLTS_STILL.setup })).toBe(true);
    expect(testTakesCapture(VOLTS_MOVING)).toBe(true);
    expect(testTakesCapture(VOLTS_STILL)).toBe(false);
    const light = { kind: 'light', plus: 'a.b', minus: 'c.d' } as const;
    expect(testTakesCapture({ ...VOLTS_MOVING, probe: light })).toBe(false);
  });
});

describe('a test after the repair', () => {
  test('takes a number with the outcome it falls into', () => {
    const { command, capture } = commandOf(again(measure('Hz')));
    expect(command).toEqual({
      type: 'record-retest',
      step: 'feed',
      typed: '100 Hz',
      value: 100,
      look: null,
      outcome: 'any',
      capture,
    });
  });

  test('takes a look with the outcome that holds it', () => {
    const { command, capture } = commandOf(again(PICTURE));
    expect(command).toEqual({
      type: 'record-retest',
      step: 'pattern',
      typed: '',
      value: null,
      look: 'full',
      outcome: 'full',
      capture,
    });
  });

  test('whose ranges leave the number out is answered by hand', () => {
    const outcomes = [{ name: 'fast', words: '', from: 200, to: null, go: 'fine' }];
    expect(answer(again(measure('Hz', { outcomes })))).toEqual({
      ok: false,
      words: 'no outcome of this test covers what was measured',
      fix: 'answer it by hand',
    });
  });
});

describe('a number of a step', () => {
  // by hand, of 5 V for a quarter of the time: mean 5/4, deviation 5·√(1/4·3/4) = 2.16506
  test.each<[string, MeasureStep, string]>([
    ['the low level', measure('V', { level: 'low' }), 'Low level: 0 V'],
    ['the high level', measure('V', { level: 'high' }), 'High level: 5 V'],
    ['the swing', measure('V', { level: 'swing' }), 'Peak to peak: 5 V'],
    ['the mean', measure('V', { level: 'mean' }), 'Mean, as a meter shows it: 1.25 V'],
    ['what an AC meter shows', measure('V', { level: 'ac' }), 'AC, without the mean: 2.1651 V'],
    [
      'the mean where a meter would stand',
      measure('V', VOLTS_MOVING as Partial<MeasureStep>),
      'Mean, as a meter shows it: 1.25 V',
    ],
    ['a share of the time', measure('%'), 'Reading: 25 %'],
  ])('is %s, which the last line names', (_, step, line) => {
    const { command, last } = commandOf(ofStep(step));
    expect(last).toBe(line);
    expect(command).toMatchObject({ type: 'record-reading', typed: line.split(': ')[1] });
  });

  test('in amperes comes from a capture in amperes', () => {
    expect(commandOf(ofStep(measure('A', { level: 'high' })), [AMPERES]).last).toBe(
      'High level: 0.014 A',
    );
  });

  const RETYPE = 'export the capture with its unit, or type the reading';
  const MOVE = 'capture a few turns with the target moving, or type the reading';
  test.each<[MeasureStep['unit'], Channel, string, string]>([
    ['V', AMPERES, 'this capture is not in volts', RETYPE],
    ['A', PULSES, 'this capture is not in amperes', RETYPE],
    ['ohm', PULSES, 'this capture is not in ohm', RETYPE],
    ['Hz', FLAT, 'this capture shows no frequency', MOVE],
    ['%', FLAT, 'this capture shows no duty', MOVE],
    ['rpm', FLAT, 'this capture shows no speed: no full turn of the wheel can be found', MOVE],
  ])('in %s that the capture has not is refused with a way out', (unit, signal, words, fix) => {
    const step = measure(unit, unit in { V: 1, A: 1, ohm: 1 } ? { level: 'mean' } : {});
    expect(answer(ofStep(step), [signal])).toEqual({ ok: false, words, fix });
  });

  const MEASURED: CaptureMeasured = {
    kind: 'switched',
    unit: 'V',
    samples: 4000,
    seconds: 0.4,
    low: 0.1,
    high: 4.9,
    hertz: 100,
    duty: 25,
    rpm: 600,
  };
  test('has no more digits than what was measured', () => {
    // 4.9 - 0.1 is 4.800000000000001 in binary
    expect(capturedLevel('swing', MEASURED)).toBe(4.8);
  });
  test('of an early capture, which kept neither mean nor AC, is none', () => {
    expect(capturedLevel('mean', MEASURED)).toBe(null);
    expect(capturedLevel('ac', MEASURED)).toBe(null);
  });
  test('is what no probe takes, else a level in the unit of the capture', () => {
    const value = (step: Step) => capturedValue(step, { ...MEASURED, mean: 1.3 });
    expect(['Hz', '%', 'rpm'].map((unit) => value(measure(unit as 'Hz')))).toEqual([100, 25, 600]);
    expect(value(measure('V', { level: 'low' }))).toBe(0.1);
    expect(value(measure('V'))).toBe(1.3);
    expect(value(measure('A', { level: 'low' }))).toBe(null);
    expect(value(measure('Hz', { probe: VOLTS_MOVING.probe as MeasureStep['probe'] }))).toBe(null);
    expect(value(PICTURE)).toBe(null);
  });
});

describe('what no capture answers is left to the hand', () => {
  const none = {
    ok: false,
    words: "a capture can't answer this step",
    fix: 'answer it by hand',
  };
  test.each<[string, CaptureAsk]>([
    ['work to do', ofStep(TREE.steps['prepare']!)],
    ['a conclusion', ofStep(TREE.steps['fine']!)],
    ['volts of which no level is named', ofStep(measure('V'))],
    ['a meter at a signal that stands still', ofStep(measure('V', VOLTS_STILL as object))],
    ['the same after the repair', again(measure('V', VOLTS_STILL as object))],
    ['the same that no step asks for', outside(VOLTS_STILL)],
  ])('%s', (_, ask) => {
    expect(answer(ask)).toEqual(none);
  });

  test('but a level that is named is taken', () => {
    expect(takesCapture(measure('V', { level: 'low' }))).toBe(true);
    expect(takesCapture(measure('A', { level: 'swing' }))).toBe(true);
  });
});

describe('a look that is none is refused with a way out', () => {
  test('where the signal was sampled too seldom', () => {
    // by hand: a period of 4 samples
    expect(answer(ofStep(PICTURE), [channel((i) => (i % 4 < 2 ? 5 : 0))])).toEqual({
      ok: false,
      words: 'signal: only 4.0 samples in a pulse; capture it at a higher sample rate',
      fix: 'capture it again, then measure that',
    });
  });
  test.each<[Channel['unit'], string]>([
    ['A', 'amperes'],
    ['1', 'parts of full scale'],
  ])('where a flat line in %s may be high or low', (unit, words) => {
    expect(answer(ofStep(PICTURE), [channel(() => 0.5, unit)])).toEqual({
      ok: false,
      words: `a.csv is a flat line, and in ${words} there is no telling whether it is high or low`,
      fix: 'capture it in volts, or choose by eye',
    });
  });
  test('where no outcome holds it', () => {
    const outcomes = PICTURE.outcomes.filter(({ name }) => name === 'full');
    expect(answer(ofStep({ ...PICTURE, outcomes }), [FLAT])).toEqual({
      ok: false,
      words: 'the capture shows "a flat line, high", which is not one of this step\'s outcomes',
      fix: 'choose by eye',
    });
  });
});

describe('the channel that is judged', () => {
  test.each<[string, readonly Channel[], number, string, string]>([
    ['none at all', [], 0, 'this capture has no channel', 'export it again'],
    ['the second of one', [PULSES], 1, 'this capture has no channel 2', 'it has one channel'],
    [
      'the third of two',
      [PULSES, FLAT],
      2,
      'this capture has no channel 3',
      'choose one from 1 to 2',
    ],
  ])('%s is refused', (_, channels, judged, words, fix) => {
    expect(answer(ofStep(PICTURE), channels, judged)).toEqual({ ok: false, words, fix });
  });

  const LOUD = channel(() => 5, 'V', '\u001b[2Jcam');
  const two = answer(ofStep(PICTURE), [PULSES, LOUD]);
  test('can be another one, whose name cannot move the cursor', () => {
    expect(two.channels?.names[0]).toBe('signal');
    expect(two.channels?.names[1]).toMatch(/cam$/);
    expect(two.channels?.names[1]).not.toContain('\u001b');
    const other = two.channels?.judge(1);
    expect(other).toMatchObject({ ok: true, command: { outcome: 'none', look: 'flat-high' } });
    expect(other?.channels?.judged).toBe(1);
    expect(other?.channels?.judge(0)).toMatchObject({ command: { look: 'full' } });
  });

  test('can be changed where it answers nothing', () => {
    const refused = answer(ofStep(measure('Hz')), [FLAT, PULSES]);
    expect(refused).toMatchObject({ ok: false, words: 'this capture shows no frequency' });
    expect(refused.channels?.judge(1)).toMatchObject({ ok: true, command: { value: 100 } });
  });
});
