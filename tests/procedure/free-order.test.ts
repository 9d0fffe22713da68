/** Work without a tree has a title as an author would write it, whatever its circuit is called. */
import { expect, test } from 'vitest';
import { freeOrder } from '../../src/procedure/free-order.ts';

test.each([
  ['a short title', 'Hall sensor', 'Free order of tests: Hall sensor'],
  // 120 signs at most, as the schema has it for procedures; the twenty-first is the blank before the title
  ['a long title', 'a'.repeat(120), `Free order of tests: ${'a'.repeat(99)}`],
  [
    'a sign of two halves at the cut',
    `${'a'.repeat(98)}\u{1F697}\u{1F697}`,
    `Free order of tests: ${'a'.repeat(98)}\u{1F697}`,
  ],
])('%s', (_, title, expected) => {
  expect(freeOrder({ name: 'sample', title }).title).toBe(expected);
});

test('the longest name a circuit can have', () => {
  const name = `a${'b'.repeat(60)}`;
  expect(freeOrder({ name, title: 'Long' }).name).toBe(`guided-${name}`);
});
