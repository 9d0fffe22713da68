/** Rows of cells side by side, and tables made of them. */
import { gaugePlaces } from '../gauge.ts';
import type { Cell, Gauge, Table } from '../report-form.ts';
import {
  BODY_WIDTH,
  type Canvas,
  FULL_ROOM,
  need,
  PAGE,
  putBox,
  putGlyphs,
  putLine,
  room,
  strike,
  turnPage,
} from './canvas.ts';
import type { Glyph } from './glyphs.ts';
import { LEAD, paragraph, SMALL, wrappedLines } from './paragraph.ts';

const PAD = 3;

/** One line of a cell: glyphs, or the small picture of a reading. */
export type Piece =
  | { readonly kind: 'glyphs'; readonly glyphs: Glyph[]; readonly struck: boolean }
  | { readonly kind: 'gauge'; readonly gauge: Gauge; readonly width: number };

/** A text as lines of a cell. */
export function textPieces(text: string, size: number, bold: boolean, width: number): Piece[] {
  return wrappedLines(text, { size, bold, width }).map((glyphs) => ({
    kind: 'glyphs',
    glyphs,
    struck: false,
  }));
}

/** A cell of a row, its left edge in points and its lines. */
export interface RowCell {
  readonly x: number;
  readonly lines: readonly Piece[];
}

function linesOf(cells: readonly RowCell[]): number {
  return Math.max(0, ...cells.map((cell) => cell.lines.length));
}

/** Turns the page before a row that would be cut in two, unless it is a very tall one. */
export function keepTogether(
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
export function drawRow(
  canvas: Canvas,
  cells: readonly RowCell[],
  size: number,
  turn: () => void,
): void {
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

function columnsOf({ widths }: Table): { readonly x: number; readonly width: number }[] {
  const total = widths.reduce((sum, width) => sum + width, 0);
  let x = PAGE.left;
  return widths.map((width) => {
    const column = { x, width: (BODY_WIDTH * width) / total };
    x += column.width;
    return column;
  });
}

/** What stands together at the start of a table: caption, head and the first row, unless that one is very tall. */
export function startHeight(table: Table): number {
  const columns = columnsOf(table);
  const first = (table.rows[0] ?? []).map((cell, i) => rowCell(cell, columns[i]!));
  const height = linesOf(first) * SMALL * LEAD;
  return 44 + (height > FULL_ROOM / 2 ? SMALL * LEAD : height) + 2 * PAD;
}

/** A table with its caption; the head is repeated on every page. */
export function drawTable(canvas: Canvas, table: Table): void {
  const { caption, heads, rows } = table;
  const columns = columnsOf(table);
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
  need(canvas, startHeight(table));
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
