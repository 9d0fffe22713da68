/** "Did you mean". Edits counted by hand. */

import { expect, test } from 'vitest';
import { editDistance, nearestName } from '../../src/source/nearest-name.ts';
import fc from '../seeded-check.ts';

test.each([
  ['feed', 'feed', 0],
  ['fed', 'feed', 1], // one letter put in
  ['feeed', 'feed', 1], // one taken out
  ['feet', 'feed', 1], // one changed
  ['efed', 'feed', 1], // two neighbours changed places
  ['', 'feed', 4],
  ['kitten', 'sitting', 3], // k>s, e>i, +g
  ['ca', 'abc', 3], // restricted form: no edit inside a swap
])('from %s to %s it takes %i', (a, b, edits) => {
  expect(editDistance(a, b)).toBe(edits);
});

test('the nearest within a quarter of the letters, whatever the case', () => {
  const known = ['sensor.feed', 'sensor.ground', 'module.signal'];
  expect(nearestName('sensor.fed', known)).toBe('sensor.feed');
  expect(nearestName('SENSOR.FEED', known)).toBe('sensor.feed');
  expect(nearestName('battery.plus', known)).toBeNull();
  expect(nearestName('go', ['to', 'so'])).toBe('to');
  expect(nearestName('anything', [])).toBeNull();
});

test('distance is symmetric, zero only for the same, and obeys the triangle within its bound', () => {
  const word = fc.string({ minLength: 0, maxLength: 8, unit: fc.constantFrom('a', 'b', 'c') });
  fc.assert(
    fc.property(word, word, (a, b) => {
      expect(editDistance(a, b)).toBe(editDistance(b, a));
      expect(editDistance(a, b) === 0).toBe(a === b);
      expect(editDistance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      expect(editDistance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
    }),
    { seed: 5, numRuns: 300 },
  );
});
