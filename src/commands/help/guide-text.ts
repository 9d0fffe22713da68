/** A page of the guide as plain text for a terminal: the Markdown that our pages use, and no more of it. */
import { columnsOf, padWords, wrapWords } from '../../ui/parts/wrap-words.ts';

/** Between the columns of a table. */
const GAP = '  ';
/** A column that is narrower than this reads like a list of letters. Our choice. */
const COLUMN_MIN = 12;

/** The page in lines no wider than `columns`; drawings and examples keep their own width. */
export function guideText(markdown: string, columns: number): string {
  const lines = markdown.replace(/<!--[\s\S]*?-->\n?/g, '').split('\n');
  const out: string[] = [];
  for (let at = 0; at < lines.length; ) {
    const line = lines[at]!;
    if (line.startsWith('```')) at = fence(lines, at, out);
    else if (line.startsWith('|')) at = table(lines, at, columns, out);
    else if (/^#{1,6} /.test(line)) {
      out.push(...heading(line, columns));
      at += 1;
    } else if (line.trim() === '') {
      out.push('');
      at += 1;
    } else at = paragraph(lines, at, columns, out);
  }
  return `${out
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim()}\n`;
}

function fence(lines: readonly string[], from: number, out: string[]): number {
  let at = from + 1;
  for (; at < lines.length && !lines[at]!.startsWith('```'); at += 1) out.push(`    ${lines[at]}`);
  return at + 1;
}

/** The first heading in capitals, chapters underlined, what is below them as it is. */
function heading(line: string, columns: number): string[] {
  const level = line.indexOf(' ');
  const words = inline(line.slice(level + 1));
  const wrapped = wrapWords(level === 1 ? words.toUpperCase() : words, columns);
  const rule = '-'.repeat(Math.max(...wrapped.map(columnsOf)));
  return ['', ...wrapped, ...(level === 2 ? [rule] : [])];
}

/** Lines up to the next block are one; an item of a list keeps its mark and hangs below it. */
function paragraph(lines: readonly string[], from: number, columns: number, out: string[]): number {
  const parts = [lines[from]!];
  let at = from + 1;
  const goesOn = (line: string) =>
    line.trim() !== '' && !/^(```|\||#{1,6} |\s*([-*]|\d+\.) )/.test(line);
  for (; at < lines.length && goesOn(lines[at]!); at += 1) parts.push(lines[at]!.trim());
  const [, mark = ''] = /^(\s*(?:[-*]|\d+\.) |> )/.exec(parts[0]!) ?? [];
  const words = inline(parts.join(' ').slice(mark.length));
  out.push(...wrapWords(`${mark}${words}`, columns, { hang: mark.trimStart().length }));
  return at;
}

/** In columns where they fit, else each row as a small list with the names of the columns. */
function table(lines: readonly string[], from: number, columns: number, out: string[]): number {
  let at = from;
  for (; at < lines.length && lines[at]!.startsWith('|'); at += 1);
  const [head = [], , ...rows] = lines.slice(from, at).map(cells);
  const natural = head.map((_, column) =>
    Math.max(...[head, ...rows].map((row) => columnsOf(row[column] ?? ''))),
  );
  const widths = fitting(natural, columns - GAP.length * (head.length - 1));
  if (widths === null) out.push(...rows.flatMap((row) => asList(head, row, columns)));
  else {
    out.push(...tableRow(head, widths), widths.map((width) => '-'.repeat(width)).join(GAP));
    out.push(...rows.flatMap((row) => tableRow(row, widths)));
  }
  return at;
}

/** Cells of one row; a bar that is part of the text is written `\|`. */
function cells(line: string): string[] {
  return line
    .replace(/^\||\|\s*$/g, '')
    .split(/(?<!\\)\|/)
    .map((cell) => inline(cell.trim()));
}

/** Widths that share `room`: narrow columns get what they need, wide ones the rest in equal parts. Null where too little is left. */
function fitting(natural: readonly number[], room: number): number[] | null {
  const widths = natural.map(() => 0);
  let left = room;
  let open = natural.map((_, at) => at);
  while (open.length > 0) {
    const share = Math.floor(left / open.length);
    const narrow = open.filter((at) => natural[at]! <= share);
    if (narrow.length === 0) {
      if (share < COLUMN_MIN) return null;
      for (const at of open) widths[at] = share;
      return widths;
    }
    for (const at of narrow) {
      widths[at] = natural[at]!;
      left -= natural[at]!;
    }
    open = open.filter((at) => !narrow.includes(at));
  }
  return widths;
}

function tableRow(row: readonly string[], widths: readonly number[]): string[] {
  const wrapped = widths.map((width, at) => wrapWords(row[at] ?? '', Math.max(1, width)));
  const height = Math.max(...wrapped.map(({ length }) => length));
  return Array.from({ length: height }, (_, line) =>
    widths
      .map((width, at) => padWords(wrapped[at]![line] ?? '', width))
      .join(GAP)
      .trimEnd(),
  );
}

function asList(head: readonly string[], row: readonly string[], columns: number): string[] {
  const lines = head.flatMap((name, at) =>
    row[at] ? wrapWords(`${at === 0 ? '' : '  '}${name}: ${row[at]}`, columns, { hang: 2 }) : [],
  );
  return [...lines, ''];
}

/** Links to other pages become their topics, pictures their titles; marks for bold type go, those for code stay. */
function inline(text: string): string {
  return text
    .replace(/\*\*((?:`[^`]*`|[^`*])+)\*\*/g, '$1')
    .split(/(`[^`]+`)/)
    .map((part, at) => (at % 2 === 1 ? part.replaceAll('\\|', '|') : unmarked(part)))
    .join('');
}

function unmarked(text: string): string {
  return text
    .replace(/!\[([^\]]*)\]\(([^)]+)\)/g, '[picture: $1, $2]')
    .replace(/\[([^\][]+)\]\((?:docs\/)?([a-z0-9-]+)\.md(?:#[^)]*)?\)/g, (_, words, topic) =>
      words.startsWith(`${topic}.md`) || words === `docs/${topic}.md`
        ? `\`ohmward help ${topic}\``
        : `${words} (\`ohmward help ${topic}\`)`,
    )
    .replace(/\[([^\][]+)\]\(#[^)]*\)/g, '$1')
    .replace(/\[([^\][]+)\]\(([^\s)]+)\)/g, (_, words, to) =>
      words === to ? words : `${words} (${to})`,
    )
    .replace(/\\([|\\*_[\]])/g, '$1');
}
