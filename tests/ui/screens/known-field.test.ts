import { expect, it } from 'vitest';
import { knownSaid, knownText } from '../../../src/ui/screens/known-field.ts';

it('is read sentence by sentence, and what has no "is" is taken for the name alone', () => {
  expect(knownSaid(' battery at rest is 12.4 V from measured;; fuse ')).toEqual([
    { what: 'battery at rest', is: '12.4 V', from: 'measured' },
    { what: 'fuse', is: '', from: '' },
  ]);
});

it('shows a job file as it would be typed', () => {
  const text = 'battery at rest is 12.4 V from measured; reference is 8 V from label';
  expect(knownText(knownSaid(text))).toBe(text);
});
