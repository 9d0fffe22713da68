/** Captures drawn by hand, what the circuit says of them, and steps that ask for their numbers. */
import type { SignalKnown } from '../../src/circuit/expected-signal.ts';
import type { Test } from '../../src/circuit/test.ts';
import type { LookStep, MeasureStep } from '../../src/procedure/procedure.ts';
import type { CaptureGiven } from '../../src/session/measure-capture.ts';
import type { Channel } from '../../src/waveform/capture.ts';
import { TREE } from './sample-tree.ts';

export const RATE = 10_000;

/** 0.4 s of a signal given by the number of the sample. */
export function channel(
  at: (sample: number) => number,
  unit: Channel['unit'] = 'V',
  name = 'signal',
): Channel {
  const samples = Float32Array.from({ length: 4000 }, (_, i) => at(i));
  return { name, unit, samples };
}

/** Low 0 V and high 5 V, 100 Hz, high for a quarter of the time. */
export const PULSES = channel((i) => (i % 100 < 25 ? 5 : 0));

export function known(more: Partial<SignalKnown> = {}): SignalKnown {
  return {
    measure: {},
    expected: {},
    levels: { low: 0, high: 5 },
    flat: { swing: 0.5, lowBelow: 1.25, highAbove: 3.75 },
    ratio: null,
    isTravel: false,
    ...more,
  };
}

/** A file with these channels. */
export function fileOf(channels: readonly Channel[], name = 'a.csv'): CaptureGiven {
  const capture = { rateHz: RATE, startSeconds: 0, channels };
  return { name, sha256: '0'.repeat(64), from: 'file', capture };
}

/** The sample tree's look at the signal. */
export const PICTURE = TREE.steps['pattern'] as LookStep;

/** A step that asks for a number of the signal, without a probe. */
export function measure(unit: MeasureStep['unit'], more: Partial<MeasureStep> = {}): MeasureStep {
  return {
    ...(TREE.steps['feed'] as MeasureStep),
    probe: null,
    unit,
    expected: null,
    outcomes: [{ name: 'any', words: '', from: null, to: null, go: 'fine' }],
    ...more,
  };
}

/** Volts at the signal, which a meter shows the mean of while the target moves. */
export const VOLTS_MOVING: Test = {
  setup: PICTURE.setup,
  probe: { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' },
};
/** The same while it stands still. */
export const VOLTS_STILL: Test = {
  ...VOLTS_MOVING,
  setup: { ...VOLTS_MOVING.setup, target: 'still' },
};
/** The scope at the same place. */
export const PICTURE_TEST: Test = { setup: PICTURE.setup, probe: PICTURE.probe };
