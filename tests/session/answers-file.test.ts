/** Reading answers files: what their shape allows, and where it is told. */
import { describe, expect, it } from 'vitest';
import { loadAnswers } from '../../src/session/answers-file.ts';

const issuesOf = (text: string) =>
  loadAnswers(text, 'test.yaml').issues.map(
    ({ code, at, words }) => `${code} ${at.line}:${at.column} ${words}`,
  );
const withNote = (length: number) =>
  `answers:\n  - { done: true }\n  - note: ${'a'.repeat(length)}\n`;

describe('an answers file', () => {
  it('holds notes of 2,000 letters', () => {
    expect(issuesOf(withNote(2000))).toEqual([]);
  });

  it('tells the place of a longer one', () => {
    expect(issuesOf(withNote(2001))).toEqual([
      'out-of-bounds 3:11 "answers.1.note" must have at most 2000 letters',
    ]);
  });

  it('holds no endless reason for what cannot be done', () => {
    expect(issuesOf(`answers:\n  - cannot: ${'a'.repeat(2001)}\n`)).toEqual([
      'out-of-bounds 2:13 "answers.0.cannot" must have at most 2000 letters',
    ]);
  });
});
