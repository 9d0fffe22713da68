/** When two values of JSON are the same. */
import { expect, it } from 'vitest';
import { isSame } from '../../src/session/is-same.ts';

it.each([
  [
    { a: 1, b: [1, { c: null }] },
    { b: [1, { c: null }], a: 1 },
  ],
  [[], []],
  ['x', 'x'],
])('%j is %j', (one, other) => {
  expect(isSame(one, other)).toBe(true);
});

it.each([
  [{ a: 1 }, { a: 1, b: 2 }],
  [{ a: 1 }, { b: 1 }],
  [{ a: undefined }, { b: undefined }],
  [[1], [1, 2]],
  [[], {}],
  [null, {}],
  [{}, null],
  [{ a: { b: 1 } }, { a: { b: 2 } }],
  [1, '1'],
])('%j is not %j, either way round', (one, other) => {
  expect(isSame(one, other)).toBe(false);
  expect(isSame(other, one)).toBe(false);
});
