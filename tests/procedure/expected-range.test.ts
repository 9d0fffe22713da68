/** Limits of `good` from what a good circuit shows: where that is over-limit, a megohm of insulation is as good. */
import { expect, it } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { rangeOf } from '../../src/procedure/expected-range.ts';

const OPEN = {
  kind: 'number',
  low: Infinity,
  nominal: Infinity,
  high: Infinity,
  unit: 'ohm',
} as const;

it('insulation over a megohm is as good as over-limit, and not low', () => {
  const { meter } = STANDARD_SETTINGS;
  expect(rangeOf(meter, OPEN)).toMatchObject({ low: 1e6, high: null });
  expect(rangeOf(meter, { ...OPEN, low: 5e5 })?.low).toBeLessThan(5e5);
});
