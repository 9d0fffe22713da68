/** A report as PDF: A4, repeated table heads, page numbers, session and head hash at the foot of every page. */
import {
  BODY_WIDTH,
  type Canvas,
  glyphOperators,
  need,
  newCanvas,
  PAGE,
  putBox,
  putGlyphs,
  putLine,
} from './pdf/canvas.ts';
import { drawRow, drawTable, keepTogether, startHeight, textPieces } from './pdf/draw-table.ts';
import { glyphsOf, pdfColumns, widthOf, wrapGlyphs } from './pdf/glyphs.ts';
import { LEAD, paragraph, SMALL, wrappedLines } from './pdf/paragraph.ts';
import { pdfFile } from './pdf/pdf-file.ts';
import type { Block, Report } from './report-form.ts';
import { textLines } from './text-lines.ts';
import { SHAPES_WIDTH, wiringShapes } from './wiring-shapes.ts';

const BODY = 9.5;
const LABEL_WIDTH = 128;

/** The file; plain ASCII, so one byte a sign. */
export function pdfOf(report: Report): string {
  const canvas = newCanvas();
  paragraph(canvas, report.title, { size: 17, bold: true });
  paragraph(canvas, report.subtitle.join(', '), { size: 11 });
  for (const words of report.warnings) warning(canvas, words);
  for (const { heading, blocks } of report.sections) {
    // What is signed must stand on the page of the signature.
    const sign = blocks.find((block) => block.kind === 'sign');
    const [first] = blocks;
    const start = first?.kind === 'table' ? 32 + startHeight(first) : 70;
    need(canvas, sign ? 70 + signHeight(sign.labels) : start);
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
  const title = textLines(`${report.title}: ${report.subtitle.join(', ')}`).join(' ');
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
  const cut = (words: string, width: number) => {
    const [short = [], ...more] = wrapGlyphs(glyphsOf(textLines(words).join(' ')), 7.5, width);
    return more.length > 0 ? [...short, ...glyphsOf('…')] : short;
  };
  const id = cut(`Session ${report.id}`, x - PAGE.left - 20);
  const origin = cut(`From ${report.origin}`, PAGE.width - PAGE.left - PAGE.right - 20);
  return [
    glyphOperators(origin, { x: PAGE.left, y: y - 10, size: 7.5 }),
    glyphOperators(id, { x: PAGE.left, y, size: 7.5 }),
    glyphOperators(right, { x, y, size: 7.5 }),
    glyphOperators(glyphsOf(`Head ${report.head}`), { x: PAGE.left, y: y + 10, size: 7.5 }),
  ].join('\n');
}

function warning(canvas: Canvas, words: string): void {
  canvas.y += 4;
  const style = { size: 10, bold: true, x: PAGE.left + 8, width: BODY_WIDTH - 16 };
  const height = wrappedLines(words, style).length * 10 * LEAD + 6;
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
      drawTable(canvas, block);
      break;
    case 'picture':
    case 'drawing':
      break;
    case 'wiring':
      drawWiring(canvas, block);
      break;
    case 'sign':
      signLines(canvas, block.labels);
  }
  canvas.y += 3;
}

/** As wide as the page's text, on one page. */
function drawWiring(
  canvas: Canvas,
  { picture, readings, proven }: Extract<Block, { kind: 'wiring' }>,
): void {
  const { shapes, height } = wiringShapes(picture, readings, proven, pdfColumns);
  const scale = BODY_WIDTH / SHAPES_WIDTH;
  need(canvas, height * scale + 8);
  const top = canvas.y + 4;
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    PAGE.left + x * scale,
    top + y * scale,
  ];
  for (const shape of shapes) {
    if (shape.kind === 'line') {
      putLine(canvas, at(shape.from), at(shape.to), shape.width * scale, 0);
      continue;
    }
    const size = shape.size * scale;
    const glyphs = glyphsOf(textLines(shape.text).join(' '), shape.bold);
    const [x, y] = at([shape.x, shape.y]);
    const back = { start: 0, middle: 0.5, end: 1 }[shape.anchor] * widthOf(glyphs, size);
    putGlyphs(canvas, glyphs, { x: x - back, y, size });
  }
  canvas.y = top + height * scale + 4;
}

/** Lines to write on, two side by side and all on one page. */
function signLines(canvas: Canvas, labels: readonly string[]): void {
  const width = BODY_WIDTH / 2 - 12;
  need(canvas, signHeight(labels));
  for (let i = 0; i < labels.length; i += 2) {
    const top = canvas.y + SIGN_ROOM;
    const ends = labels.slice(i, i + 2).map((label, column) => {
      const x = PAGE.left + column * (BODY_WIDTH / 2 + 12);
      putLine(canvas, [x, top], [x + width, top], 0.7, 0);
      canvas.y = top + 1;
      paragraph(canvas, label, { size: SMALL, x, width });
      return canvas.y;
    });
    canvas.y = Math.max(...ends);
  }
}

/** Room for a hand above each line. */
const SIGN_ROOM = 27;

function signHeight(labels: readonly string[]): number {
  return Math.ceil(labels.length / 2) * (SIGN_ROOM + 2 * SMALL * LEAD);
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
