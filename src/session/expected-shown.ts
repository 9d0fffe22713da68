/** What a sound circuit shows in a test: the range or the looks that stand beside the prompt and are kept with the reading. */
import type { Expected, Model } from '../circuit/model.ts';
import type { Meter, Test } from '../circuit/test.ts';
import { rangeOf } from '../procedure/expected-range.ts';
import type { ExpectedShown } from './events.ts';

/** The range within the meter's and the model's error, as for a step of a procedure; the looks of all samples. */
export function expectedShown(model: Model, test: Test): ExpectedShown {
  return expectedFrom(model.meter, model.expected(test));
}

/** What counts as good, given what a healthy circuit shows: a range with the meter's uncertainty, or the looks. */
export function expectedFrom(meter: Meter, expected: Expected): ExpectedShown {
  const range = rangeOf(meter, expected);
  if (range) return { kind: 'number', low: range.low, high: range.high };
  const looks = expected.kind === 'looks' ? expected.looks.map(({ look }) => look) : [];
  return { kind: 'look', looks };
}
