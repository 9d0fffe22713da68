/** A procedure without a tree is good whatever its circuit is called. */
import { expect, test } from 'vitest';
import { guidedProcedure } from '../../src/procedure/guided-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';

test.each([
  ['a short title', 'Hall sensor', 'Free order of tests: Hall sensor'],
  // 120 signs at most, as the schema has it; the twenty-first is the blank before the title
  ['a long title', 'a'.repeat(120), `Free order of tests: ${'a'.repeat(99)}`],
  [
    'a sign of two halves at the cut',
    `${'a'.repeat(98)}\u{1F697}\u{1F697}`,
    `Free order of tests: ${'a'.repeat(98)}\u{1F697}`,
  ],
])('%s', (_, title, expected) => {
  expect(guidedProcedure({ name: 'sample', title }).draft.title).toBe(expected);
});

test('a title that its circuit will be refused for', () => {
  const { title } = guidedProcedure({ name: 'sample', title: 'a\u202Eb' }).draft;
  expect(title).toBe('Free order of tests: a\u202Eb');
});

test('is one that an author could have written', () => {
  const { source } = guidedProcedure({ name: 'sample', title: 'Hall sensor' });
  expect(parseProcedure(source.text, 'sample').issues).toEqual([]);
});

test('the longest name a circuit can have', () => {
  const name = `a${'b'.repeat(60)}`;
  expect(guidedProcedure({ name, title: 'Long' }).draft.procedure).toBe(`guided-${name}`);
});
