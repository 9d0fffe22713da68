/** An issue as text: address, words, the line with its caret, the way out. Carets counted by hand. */
import { expect, test } from 'vitest';
import { formatIssue } from '../../src/source/format-issue.ts';
import type { Issue } from '../../src/source/issue.ts';

function issue(line: number, column: number, endColumn: number, more: Partial<Issue> = {}): Issue {
  return {
    code: 'unknown-step',
    severity: 'error',
    at: { file: 'a.yaml', line, column, endLine: line, endColumn },
    words: 'no step named "fed"',
    ...more,
  };
}

test('address, severity, code and words stand in the first line', () => {
  expect(formatIssue(issue(3, 5, 8))).toBe('a.yaml:3:5: error[unknown-step] no step named "fed"');
  expect(formatIssue(issue(3, 5, 8, { severity: 'warning' }))).toContain(
    ': warning[unknown-step] ',
  );
});

test('the caret stands under the first sign and waves to the last', () => {
  expect(formatIssue(issue(2, 5, 8, { fix: 'did you mean "feed"?' }), 'one\ngo: fed\nthree')).toBe(
    [
      'a.yaml:2:5: error[unknown-step] no step named "fed"',
      '  2 | go: fed',
      '    |     ^~~',
      '  did you mean "feed"?',
    ].join('\n'),
  );
});

test('a place over several lines is marked to the end of its first', () => {
  const over = {
    ...issue(1, 3, 4),
    at: { file: 'a.yaml', line: 1, column: 3, endLine: 4, endColumn: 4 },
  };
  expect(formatIssue(over, 'abcdef\nx').split('\n')[2]).toBe('    |   ^~~~');
});

test('a long line is cut around the caret', () => {
  const text = `${'x'.repeat(300)}fed${'y'.repeat(300)}`;
  const [, shown, caret] = formatIssue(issue(1, 301, 304), text).split('\n');
  expect(shown!.length).toBeLessThanOrEqual(106);
  expect(shown!.slice(caret!.indexOf('^'), caret!.indexOf('^') + 3)).toBe('fed');
});

test('signs that a terminal could obey are shown as pictures, and the caret keeps its place', () => {
  const text = 'a\u001b[2Jb: fed';
  const [, shown, caret] = formatIssue(issue(1, 9, 12), text).split('\n');
  expect(shown).not.toContain('\u001b');
  expect(shown!.slice(caret!.indexOf('^'), caret!.lastIndexOf('~') + 1)).toBe('fed');
});

test('the end of a line is not part of it, in whichever way lines end', () => {
  const over = { ...issue(2, 1, 1), at: { ...issue(2, 1, 1).at, endLine: 3 } };
  expect(formatIssue(over, 'a\r\nfed\r\nb').split('\n').slice(1)).toEqual([
    '  2 | fed',
    '    | ^~~',
  ]);
});

test('an empty or missing line has no excerpt', () => {
  expect(formatIssue(issue(2, 1, 1), 'a\n\nb').split('\n')).toHaveLength(1);
  expect(formatIssue(issue(9, 1, 1), 'a').split('\n')).toHaveLength(1);
});
