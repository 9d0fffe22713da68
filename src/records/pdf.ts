/** A report as PDF: A4, repeated table heads, page numbers, session and head hash at the foot of every page. */
import { gaugePlaces } from './gauge.ts';
import {
  BODY_WIDTH,
  type Canvas,
  FULL_ROOM,
  glyphOperators,
  need,
  newCanvas,
  PAGE,
  putBox,
  putGlyphs,
  putLine,
  room,
  strike,
  turnPage,
} from './pdf/canvas.ts';
import { type Glyph, glyphsOf, widthOf, wrapGlyphs } from './pdf/glyphs.ts';
import { pdfFile } from './pdf/pdf-file.ts';
import type { Block, Cell, Gauge, Report, Table } from './report.ts';
import { textLines } from './text-lines.ts';

const BODY = 9.5;
const SMALL = 8;
const LABEL_WIDTH = 128;
const PAD = 3;
/** Line height for a font size. */
const LEAD = 1.28;

/** The file; plain ASCII, so one byte a sign. */
export function pdfOf(report: Report): string {
  const canvas = newCanvas();
  paragraph(canvas, report.title, { size: 17, bold: true });
  paragraph(canvas, report.subtitle, { size: 11 });
  for (const words of report.warnings) warning(canvas, words);
  for (const { heading, blocks } of report.sections) {
    need(canvas, 70);
    canvas.y += 9;
    paragraph(canvas, heading, { size: 12, bold: true });
    putLine(canvas, [PAGE.left, canvas.y], [PAGE.width - PAGE.right, canvas.y], 1);
    canvas.y += 4;
    for (const block of blocks) drawBlock(canvas, block);
  }
  spellingNote(canvas);
  const pages = canvas.pages.map((operators, i) =>
    [...operators, foot(report, i + 1, canvas.pages.length)].join('\n'),
  );
  const title = textLines(`${report.title}: ${report.subtitle}`).join(' ');
  return pdfFile({ title, width: PAGE.width, height: PAGE.height, pages });
}

/** Says what italics mean, but only where there are any. */
function spellingNote(canvas: Canvas): void {
  if (!canvas.pages.some((page) => page.some((operators) => operators.includes('/ActualText'))))
    return;
  need(canvas, 40);
  canvas.y += 8;
  paragraph(
    canvas,
    'Words in italics were written in letters that the standard fonts of this format lack; they are spelled in Latin letters here, or by the number of the sign, ‹U+....›. Copying or searching gives the original. The HTML form of this report shows them as written.',
    { size: SMALL },
  );
}

function foot(report: Report, page: number, pages: number): string {
  const y = PAGE.height - PAGE.bottom + 24;
  const right = glyphsOf(`Page ${page} of ${pages}`);
  const x = PAGE.width - PAGE.right - widthOf(right, 7.5);
  const id = glyphsOf(textLines(`Session ${report.id}`).join(' '));
  const [short = [], ...more] = wrapGlyphs(id, 7.5, x - PAGE.left - 20);
  const shown = more.length > 0 ? [...short, ...glyphsOf('…')] : short;
  return [
    glyphOperators(shown, { x: PAGE.left, y, size: 7.5 }),
    glyphOperators(right, { x, y, size: 7.5 }),
    glyphOperators(glyphsOf(`Head ${report.head}`), { x: PAGE.left, y: y + 10, size: 7.5 }),
  ].join('\n');
}

interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly x?: number;
  readonly width?: number;
}

function wrapped(text: string, { size, bold = false, width = BODY_WIDTH }: TextStyle): Glyph[][] {
  return textLines(text).flatMap((line) => wrapGlyphs(glyphsOf(line, bold), size, width));
}

/** A text, over pages if it must be. */
function paragraph(canvas: Canvas, text: string, style: TextStyle): void {
  const lead = style.size * LEAD;
  for (const line of wrapped(text, style)) {
    need(canvas, lead);
    putGlyphs(canvas, line, {
      x: style.x ?? PAGE.left,
      y: canvas.y + style.size,
      size: style.size,
    });
    canvas.y += lead;
  }
}

function warning(canvas: Canvas, words: string): void {
  canvas.y += 4;
  const style = { size: 10, bold: true, x: PAGE.left + 8, width: BODY_WIDTH - 16 };
  const height = wrapped(words, style).length * 10 * LEAD + 6;
  putBox(canvas, { x: PAGE.left, y: canvas.y, width: 3, height }, [0.835, 0.369, 0]);
  canvas.y += 2;
  paragraph(canvas, words, style);
  canvas.y += 4;
}

function drawBlock(canvas: Canvas, block: Block): void {
  switch (block.kind) {
    case 'facts':
      for (const [label, text] of block.rows) fact(canvas, label, text);
      break;
    case 'text':
      paragraph(canvas, block.text, { size: BODY });
      break;
    case 'list':
      for (const item of block.items) {
        need(canvas, BODY * LEAD);
        putGlyphs(canvas, glyphsOf('•'), { x: PAGE.left + 2, y: canvas.y + BODY, size: BODY });
        paragraph(canvas, item, { size: BODY, x: PAGE.left + 12, width: BODY_WIDTH - 12 });
        canvas.y += 1;
      }
      break;
    case 'table':
      table(canvas, block);
      break;
    case 'sign':
      for (const label of block.labels) {
        need(canvas, 40);
        canvas.y += 26;
        putLine(canvas, [PAGE.left, canvas.y], [PAGE.left + 300, canvas.y], 0.7, 0);
        canvas.y += 1;
        paragraph(canvas, label, { size: SMALL });
      }
  }
  canvas.y += 3;
}

/** A label beside its text; the label may be long as well. */
function fact(canvas: Canvas, label: string, text: string): void {
  const cells = [
    { x: PAGE.left, lines: textPieces(label, BODY, true, LABEL_WIDTH - 8) },
    { x: PAGE.left + LABEL_WIDTH, lines: textPieces(text, BODY, false, BODY_WIDTH - LABEL_WIDTH) },
  ];
  keepTogether(canvas, cells, BODY, () => undefined);
  drawRow(canvas, cells, BODY, () => undefined);
  canvas.y += 1;
}

/** One line of a cell: glyphs, or the small picture of a reading. */
type Piece =
  | { readonly kind: 'glyphs'; readonly glyphs: Glyph[]; readonly struck: boolean }
  | { readonly kind: 'gauge'; readonly gauge: Gauge; readonly width: number };

function textPieces(text: string, size: number, bold: boolean, width: number): Piece[] {
  return wrapped(text, { size, bold, width }).map((glyphs) => ({
    kind: 'glyphs',
    glyphs,
    struck: false,
  }));
}

interface RowCell {
  readonly x: number;
  readonly lines: readonly Piece[];
}

function linesOf(cells: readonly RowCell[]): number {
  return Math.max(0, ...cells.map((cell) => cell.lines.length));
}

/** Turns the page before a row that would be cut in two, unless it is a very tall one. */
function keepTogether(
  canvas: Canvas,
  cells: readonly RowCell[],
  size: number,
  turn: () => void,
): void {
  const height = linesOf(cells) * size * LEAD;
  if (height <= room(canvas) || height > FULL_ROOM / 2) return;
  turnPage(canvas);
  turn();
}

/** Lines of all cells side by side; `turn` is called after each new page, to repeat the table's head. */
function drawRow(canvas: Canvas, cells: readonly RowCell[], size: number, turn: () => void): void {
  const lead = size * LEAD;
  const count = linesOf(cells);
  for (let i = 0; i < count; i += 1) {
    if (room(canvas) < lead) {
      turnPage(canvas);
      turn();
    }
    for (const { x, lines } of cells) {
      const piece = lines[i];
      if (piece) drawPiece(canvas, piece, x, size);
    }
    canvas.y += lead;
  }
}

function drawPiece(canvas: Canvas, piece: Piece, x: number, size: number): void {
  const y = canvas.y + size;
  if (piece.kind === 'glyphs') {
    putGlyphs(canvas, piece.glyphs, { x, y, size });
    if (piece.struck) strike(canvas, piece.glyphs, x, y, size);
    return;
  }
  const { from, to, mark } = gaugePlaces(piece.gauge);
  const { width } = piece;
  putLine(canvas, [x, y - 3], [x + width, y - 3]);
  const span = Math.max(1, (to - from) * width);
  putBox(canvas, { x: x + from * width, y: y - 5, width: span, height: 4 }, [0.62, 0.78, 0.9]);
  putLine(canvas, [x + mark * width, y - 7], [x + mark * width, y + 1], 1.3, 0);
}

function table(canvas: Canvas, { caption, heads, widths, rows }: Table): void {
  const total = widths.reduce((sum, width) => sum + width, 0);
  let x = PAGE.left;
  const columns = widths.map((width) => {
    const column = { x, width: (BODY_WIDTH * width) / total };
    x += column.width;
    return column;
  });
  const headCells = heads.map((head, i) => ({
    x: columns[i]!.x + PAD,
    lines: textPieces(head, SMALL, true, columns[i]!.width - 2 * PAD),
  }));
  const drawHead = () => {
    const height = Math.max(...headCells.map(({ lines }) => lines.length)) * SMALL * LEAD + PAD;
    putBox(canvas, { x: PAGE.left, y: canvas.y, width: BODY_WIDTH, height }, [0.92]);
    drawRow(canvas, headCells, SMALL, () => undefined);
    canvas.y += PAD;
  };
  canvas.y += 3;
  need(canvas, 80);
  paragraph(canvas, caption, { size: SMALL + 0.5, bold: true });
  canvas.y += 1;
  drawHead();
  for (const row of rows) {
    canvas.y += PAD - 1;
    const cells = row.map((cell, i) => rowCell(cell, columns[i]!));
    keepTogether(canvas, cells, SMALL, drawHead);
    const page = canvas.pages.length;
    const top = canvas.y;
    drawRow(canvas, cells, SMALL, drawHead);
    if (canvas.pages.length === page) toneBars(canvas, row, columns, top);
    canvas.y += PAD - 1;
    putLine(canvas, [PAGE.left, canvas.y], [PAGE.width - PAGE.right, canvas.y]);
  }
  canvas.y += 4;
}

function rowCell({ parts, tone, gauge }: Cell, column: { x: number; width: number }): RowCell {
  const width = column.width - 2 * PAD - 2;
  const lines = parts.flatMap((part, i) =>
    textPieces(part, SMALL, tone === 'bad' && i === 0, width).map((piece) =>
      piece.kind === 'glyphs' ? { ...piece, struck: tone === 'struck' && i === 0 } : piece,
    ),
  );
  const pictures: Piece[] = gauge ? [{ kind: 'gauge', gauge, width: Math.min(width, 90) }] : [];
  return { x: column.x + PAD, lines: [...lines, ...pictures] };
}

const TONES: Readonly<Record<string, readonly number[]>> = {
  good: [0, 0.447, 0.698],
  bad: [0.835, 0.369, 0],
  unsure: [0.54, 0.43, 0],
};

/** A coloured bar at the left of a judged cell; the words in it say the same. */
function toneBars(
  canvas: Canvas,
  row: readonly Cell[],
  columns: readonly { x: number }[],
  top: number,
): void {
  for (const [i, { tone }] of row.entries()) {
    const colour = tone && TONES[tone];
    if (!colour) continue;
    putBox(canvas, { x: columns[i]!.x, y: top, width: 1.6, height: canvas.y - top }, colour);
  }
}
