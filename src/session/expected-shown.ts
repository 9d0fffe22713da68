/** What a sound circuit shows in a test: the range or the looks that stand beside the prompt and are kept with the reading. */
import type { Model } from '../circuit/model.ts';
import type { Test } from '../circuit/test.ts';
import { computedRange } from '../procedure/expected-range.ts';
import type { ExpectedShown } from './events.ts';

/** The range within the meter's and the model's error, as for a step of a procedure; the looks of all samples. */
export function expectedShown(model: Model, test: Test): ExpectedShown {
  const range = computedRange(model, test);
  if (range) return { kind: 'number', low: range.low, high: range.high };
  const expected = model.expected(test);
  const looks = expected.kind === 'looks' ? expected.looks.map(({ look }) => look) : [];
  return { kind: 'look', looks };
}
