/**
 * A report as Markdown (CommonMark with GitHub's tables), readable as plain text as well.
 *
 * Every text of a session is escaped so that none of it is markup: no emphasis, link, picture, code, HTML, entity or
 * automatic link, and nothing at the start of a line that makes a block. Texts keep to one line, tables need that.
 */
import type { Block, Report, Table } from './report-form.ts';
import { textLines } from './text-lines.ts';

/** The whole document, ending in a line feed. */
export function markdownOf(report: Report): string {
  const { title, subtitle, warnings, sections } = report;
  const parts = [`# ${markdownText(title)}`, markdownText(subtitle.join(', '))];
  for (const warning of warnings) parts.push(`> **${markdownText(warning)}**`);
  for (const { heading, blocks } of sections) {
    const texts = blocks.map(blockText).filter((part) => part !== '');
    // A section of drawings alone has nothing to say here.
    if (texts.length > 0) parts.push(`## ${markdownText(heading)}`, ...texts);
  }
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** Between the lines of a text and the parts of a cell. */
const JOINT = ' · ';

/** Signs that can begin or end markup anywhere in a line. */
const INLINE_SIGNS = /[\\`*_[\]<>|~&$]/g;
/** What makes a heading or a list item at the start of a line, and what underlines a heading or rules a page. */
const BLOCK_START = /^[#+-](?=[#\s]|$)|^[-=](?=[-=\s]*$)/;
const NUMBERED = /^(\d{1,9})([.)])(?=\s|$)/;
/** GitHub makes links of bare addresses; a backslash inside them stops that. */
const ADDRESS_SIGNS = /@|:(?=\/\/)|(?<=www)\.|(?<=mailto|xmpp):/gi;

/** A text as Markdown that shows exactly its signs, on one line. */
export function markdownText(text: string): string {
  return textLines(text).map(lineText).join(JOINT);
}

function lineText(line: string): string {
  return line
    .trim()
    .replace(INLINE_SIGNS, '\\$&')
    .replace(ADDRESS_SIGNS, '\\$&')
    .replace(BLOCK_START, '\\$&')
    .replace(NUMBERED, '$1\\$2');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'facts':
      return block.rows
        .map(([label, text]) => `- **${markdownText(label)}:** ${markdownText(text)}`)
        .join('\n');
    case 'text':
      return markdownText(block.text);
    case 'list':
      return block.items.map((item) => `- ${markdownText(item)}`).join('\n');
    case 'table':
      return tableText(block);
    case 'picture':
    case 'drawing':
    case 'wiring':
      return '';
    case 'sign':
      return block.labels.map((label) => `- ${markdownText(label)}: ${'. '.repeat(20)}`).join('\n');
  }
}

function tableText({ caption, heads, rows }: Table): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    `**${markdownText(caption)}**`,
    '',
    line(heads.map(markdownText)),
    line(heads.map(() => '---')),
    ...rows.map((row) => line(row.map(({ parts }) => parts.map(markdownText).join(JOINT)))),
  ].join('\n');
}
