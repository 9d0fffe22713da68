/** Pages that are filled from the top down: texts, lines and boxes as PDF operators. */
import { type Glyph, widthOf } from './glyphs.ts';
import { unicodeText } from './pdf-file.ts';

export const PAGE = {
  width: 595.28,
  height: 841.89,
  left: 42,
  right: 42,
  top: 46,
  bottom: 60,
} as const;
export const BODY_WIDTH = PAGE.width - PAGE.left - PAGE.right;

/** The pages as far as they are filled. */
export interface Canvas {
  /** Finished and current pages, as operators. */
  readonly pages: string[][];
  /** Points from the top of the page to the next free place. */
  y: number;
}

/** A canvas with one empty page. */
export function newCanvas(): Canvas {
  return { pages: [[]], y: PAGE.top };
}

/** Points left on the page. */
export function room(canvas: Canvas): number {
  return PAGE.height - PAGE.bottom - canvas.y;
}

/** Points on an empty page. */
export const FULL_ROOM = PAGE.height - PAGE.bottom - PAGE.top;

/** Adds an empty page; drawing goes on at its top. */
export function turnPage(canvas: Canvas): void {
  canvas.pages.push([]);
  canvas.y = PAGE.top;
}

/** Turns the page unless there is so much room. */
export function need(canvas: Canvas, points: number): void {
  if (room(canvas) < points && canvas.y > PAGE.top) turnPage(canvas);
}

function put(canvas: Canvas, operators: string): void {
  canvas.pages.at(-1)!.push(operators);
}

/** Writes glyphs with their base line at `y` points from the top. */
export function putGlyphs(
  canvas: Canvas,
  glyphs: readonly Glyph[],
  at: { readonly x: number; readonly y: number; readonly size: number },
): void {
  put(canvas, glyphOperators(glyphs, at));
}

/** The operators for a line of glyphs, for pages that are finished as well. */
export function glyphOperators(
  glyphs: readonly Glyph[],
  { x, y, size }: { readonly x: number; readonly y: number; readonly size: number },
): string {
  const operators = [`BT 1 0 0 1 ${n(x)} ${n(PAGE.height - y)} Tm`];
  for (let i = 0; i < glyphs.length; ) {
    const { font, instead } = glyphs[i]!;
    const from = i;
    while (
      i < glyphs.length &&
      glyphs[i]!.font === font &&
      (glyphs[i]!.instead === null) === (instead === null)
    )
      i += 1;
    const run = glyphs.slice(from, i);
    const show = `/${font} ${size} Tf <${run.map((glyph) => glyph.codes).join('')}> Tj`;
    const original = run.map((glyph) => glyph.instead ?? '').join('');
    operators.push(
      instead === null ? show : `/Span << /ActualText ${unicodeText(original)} >> BDC ${show} EMC`,
    );
  }
  return `${operators.join('\n')}\nET`;
}

/** A filled box; grey from 0 (black) to 1, or three colour parts. */
export function putBox(
  canvas: Canvas,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  colour: readonly number[],
): void {
  const operator = colour.length === 1 ? 'g' : 'rg';
  const { x, y, width, height } = box;
  put(
    canvas,
    `q ${colour.map(n).join(' ')} ${operator} ${n(x)} ${n(PAGE.height - y - height)} ${n(width)} ${n(height)} re f Q`,
  );
}

/** Draws a straight line; points from the top left, grey from 0 (black) to 1. */
export function putLine(
  canvas: Canvas,
  from: readonly [number, number],
  to: readonly [number, number],
  width = 0.5,
  grey = 0.55,
): void {
  const [x1, y1] = from;
  const [x2, y2] = to;
  put(
    canvas,
    `q ${n(grey)} G ${n(width)} w ${n(x1)} ${n(PAGE.height - y1)} m ${n(x2)} ${n(PAGE.height - y2)} l S Q`,
  );
}

/** Places a line through words already written. */
export function strike(
  canvas: Canvas,
  glyphs: readonly Glyph[],
  x: number,
  y: number,
  size: number,
): void {
  putLine(canvas, [x, y - size * 0.3], [x + widthOf(glyphs, size), y - size * 0.3], 0.6, 0);
}

function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}
