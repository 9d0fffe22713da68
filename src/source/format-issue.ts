/** An issue as lines of text: clickable address, words, the source line with a caret, the way out. */
import type { Issue } from './issue.ts';

/** Columns of source shown at most; a longer line is cut around the caret. */
const EXCERPT_COLUMNS = 100;

/** `file:line:column: error[code] words`, then the source line with carets when `text` is given, then the fix. */
export function formatIssue(issue: Issue, text?: string): string {
  const { file, line, column } = issue.at;
  const lines = [`${file}:${line}:${column}: ${issue.severity}[${issue.code}] ${issue.words}`];
  const excerpt = text === undefined ? null : excerptOf(issue, text);
  if (excerpt) lines.push(...excerpt);
  if (issue.fix) lines.push(`  ${issue.fix}`);
  return lines.join('\n');
}

function excerptOf(issue: Issue, text: string): string[] | null {
  const { line, column, endLine, endColumn } = issue.at;
  const source = text.split(/\r?\n/)[line - 1];
  if (source === undefined || source.trim() === '') return null;
  const start = column - 1;
  const width = endLine === line ? Math.max(1, endColumn - column) : source.length - start;
  const cut = start > EXCERPT_COLUMNS - 20 ? start - 20 : 0;
  const shown = source.slice(cut, cut + EXCERPT_COLUMNS).replace(/\t/g, ' ');
  const carets = '^' + '~'.repeat(Math.max(0, Math.min(width, shown.length - (start - cut)) - 1));
  const gutter = String(line);
  return [
    `  ${gutter} | ${shown}`,
    `  ${' '.repeat(gutter.length)} | ${' '.repeat(start - cut)}${carets}`,
  ];
}
