/** An issue as lines of text: clickable address, words, the source line with a caret, the way out. */
import type { Issue } from './issue.ts';
import { safeText } from './safe-text.ts';

/** Columns of source shown at most; a longer line is cut around the caret. */
const EXCERPT_COLUMNS = 100;
/** Longer words quote something no person wrote as one word. */
const WORDS_MAX = 600;
/** Columns before the caret that a cut line keeps. */
const CONTEXT_COLUMNS = 20;

/** `file:line:column: error[code] words`, then the source line with carets when `text` is given, notes, then the fix. */
export function formatIssue(issue: Issue, text?: string): string {
  const { file, line, column } = issue.at;
  const lines = [
    `${safeText(file)}:${line}:${column}: ${issue.severity}[${issue.code}] ${told(issue.words)}`,
  ];
  const excerpt = text === undefined ? null : excerptOf(issue, text);
  if (excerpt) lines.push(...excerpt);
  for (const note of issue.notes ?? []) lines.push(`  ${told(note)}`);
  if (issue.fix) lines.push(`  ${told(issue.fix)}`);
  return lines.join('\n');
}

/** Words on one line, whatever they quote: a line feed in them would look like another finding. */
function told(words: string): string {
  return safeText(words.length > WORDS_MAX ? `${words.slice(0, WORDS_MAX)}...` : words);
}

/** The line with what a terminal could obey shown as signs, and carets under what the issue is about. */
function excerptOf(issue: Issue, text: string): string[] | null {
  const { line, column, endLine, endColumn } = issue.at;
  const source = lineOf(text, line);
  if (source === null || source.trim() === '') return null;
  const safe = (part: string) => safeText(part.replace(/\t/g, ' '));
  const end = endLine === line ? endColumn - 1 : source.length;
  const start = safe(source.slice(0, column - 1)).length;
  const width = Math.max(1, safe(source.slice(column - 1, end)).length);
  const cut = start > EXCERPT_COLUMNS - CONTEXT_COLUMNS ? start - CONTEXT_COLUMNS : 0;
  const shown = safe(source).slice(cut, cut + EXCERPT_COLUMNS);
  const carets = `^${'~'.repeat(Math.max(0, Math.min(width, shown.length - (start - cut)) - 1))}`;
  const gutter = String(line);
  return [
    `  ${gutter} | ${shown}`,
    `  ${' '.repeat(gutter.length)} | ${' '.repeat(start - cut)}${carets}`,
  ];
}

/** One line without its end; null past the last. Cutting a whole file into lines for each issue takes far longer. */
function lineOf(text: string, line: number): string | null {
  let from = 0;
  for (let before = 1; before < line; before += 1) {
    from = text.indexOf('\n', from) + 1;
    if (from === 0) return null;
  }
  const to = text.indexOf('\n', from);
  if (to < 0) return text.slice(from);
  return text.slice(from, text[to - 1] === '\r' && to > from ? to - 1 : to);
}
