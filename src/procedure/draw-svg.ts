/**
 * A tree as one SVG picture, from left to right: black on white, no script, no fonts of its own, so that it prints
 * and can be read anywhere. Each outcome is a row of its step's box, and its arrow leaves from that row.
 */

import { foldWords } from '../source/fold-words.ts';
import type { GraphExit, GraphNode } from './draw-graph.ts';
import { layerGraph } from './layer-graph.ts';

const BOX_WIDTH = 250;
const COLUMN_GAP = 90;
const ROW_GAP = 18;
const LINE = 15;
const PAD = 8;
const MARGIN = 20;
/** Letters in a line of a box; a usual sans-serif letter of 12 px is 6.2 px wide on average. */
const LETTERS = 38;
/** Bold ones are wider. */
const LETTERS_BOLD = 32;
const HEAD = 46;

interface NodeBox {
  readonly node: GraphNode;
  readonly head: readonly string[];
  /** Lines of the head that are its name. */
  readonly nameLines: number;
  readonly rows: readonly {
    readonly exit: GraphExit;
    readonly lines: readonly string[];
    readonly top: number;
  }[];
  readonly height: number;
}

/** The picture as text. `title` stands above it and is its name for screen readers. */
export function drawSvg(nodes: readonly GraphNode[], title: string): string {
  const shapes = new Map(nodes.map((node) => [node.id, shapeOf(node)]));
  // The way of a person who cannot do a step runs behind the boxes; it would pull the columns far apart.
  const read = new Set(
    nodes.flatMap(({ exits }) => exits.filter(({ kind }) => kind !== 'cannot').map(({ to }) => to)),
  );
  const boxes = nodes.map(({ id, exits }) => ({
    id,
    height: shapes.get(id)!.height,
    to: exits.filter(({ kind, to }) => kind !== 'cannot' || !read.has(to)).map(({ to }) => to),
  }));
  const { places, bends, columns, height } = layerGraph(boxes, ROW_GAP);
  const left = (id: string) => MARGIN + places.get(id)!.column * (BOX_WIDTH + COLUMN_GAP);
  const top = (id: string) => MARGIN + HEAD + places.get(id)!.y;
  const width = 2 * MARGIN + columns * BOX_WIDTH + (columns - 1) * COLUMN_GAP;
  const arrows = [...shapes.values()].flatMap(({ node, rows, head }) =>
    rows.map(({ exit, lines, top: row }) => {
      const from = {
        x: left(node.id) + BOX_WIDTH,
        y: top(node.id) + (lines.length > 0 ? row + LINE * 0.6 : head.length * LINE * 0.6),
      };
      const to = { x: left(exit.to), y: top(exit.to) + PAD + LINE * 0.6 };
      const passed = (bends.get(`${node.id}>${exit.to}`) ?? []).map(({ column, y }) => ({
        x: MARGIN + column * (BOX_WIDTH + COLUMN_GAP),
        y: MARGIN + HEAD + y,
      }));
      return arrow(from, passed, to, exit.kind === 'cannot');
    }),
  );
  const drawn = nodes.map(({ id }) => box(shapes.get(id)!, left(id), top(id)));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height + HEAD + 2 * MARGIN}" viewBox="0 0 ${width} ${height + HEAD + 2 * MARGIN}" role="img" aria-labelledby="title">`,
    `<title id="title">${escaped(title)}</title>`,
    `<style>text{font:12px sans-serif;fill:#000}.id{font-weight:bold}.title{font-size:18px;font-weight:bold}.box{fill:#fff;stroke:#000;stroke-width:1.2}.rule{stroke:#000;stroke-width:.6}.arrow{fill:none;stroke:#000;stroke-width:1.1}.cannot{stroke-dasharray:5 4}.through{font-size:10px}</style>`,
    '<defs><marker id="tip" viewBox="0 0 8 8" refX="8" refY="4" markerWidth="8" markerHeight="8" orient="auto"><path d="M0 0 8 4 0 8z"/></marker></defs>',
    `<rect width="100%" height="100%" fill="#fff"/>`,
    `<text class="title" x="${MARGIN}" y="${MARGIN + 20}">${escaped(title)}</text>`,
    ...arrows,
    ...drawn,
    '</svg>',
    '',
  ].join('\n');
}

function shapeOf(node: GraphNode): NodeBox {
  // A long `caller/inner` breaks behind the stroke.
  const name = foldWords(node.id.replace(/\//g, '/ '), LETTERS_BOLD).map((line) =>
    line.replace(/\/ /g, '/'),
  );
  const head = [
    ...name,
    ...[node.title, node.setting]
      .filter((part) => part !== '')
      .flatMap((part) => foldWords(part, LETTERS)),
    ...node.faults.flatMap((fault) => foldWords(fault, LETTERS)),
  ];
  let y = PAD + head.length * LINE + PAD / 2;
  const rows = node.exits.map((exit) => {
    const text = [exit.name, exit.words].filter((part) => part !== '').join(': ');
    const through =
      exit.passing === null
        ? []
        : foldWords(
            `(${exit.passing.length === 0 ? 'nothing' : exit.passing.join(', ')})`,
            LETTERS,
          );
    const lines = [...(text === '' ? [] : foldWords(text, LETTERS)), ...through];
    const top = y;
    y += lines.length * LINE + (lines.length > 0 ? PAD / 2 : 0);
    return { exit, lines, top };
  });
  return { node, head, nameLines: name.length, rows, height: Math.ceil(y + PAD / 2) };
}

function box({ node, head, nameLines, rows, height }: NodeBox, x: number, y: number): string {
  const corner = node.kind === 'task' ? 2 : 14;
  const dashed = node.kind === 'no-fault' ? ' stroke-dasharray="4 3"' : '';
  const frame = (inset: number) =>
    `<rect class="box" x="${x + inset}" y="${y + inset}" width="${BOX_WIDTH - 2 * inset}" height="${height - 2 * inset}" rx="${corner}"${dashed}/>`;
  const text = (line: string, at: number, indent: number, kind: string) =>
    `<text${kind === '' ? '' : ` class="${kind}"`} x="${x + PAD + indent}" y="${y + at + LINE * 0.8}">${escaped(line)}</text>`;
  const parts = [frame(0), ...(node.kind === 'conclusion' ? [frame(3)] : [])];
  head.forEach((line, index) => {
    parts.push(text(line, PAD + index * LINE, 0, index < nameLines ? 'id' : ''));
  });
  for (const { exit, lines, top } of rows) {
    if (lines.length === 0) continue;
    parts.push(`<path class="rule" d="M${x} ${y + top - 2}h${BOX_WIDTH}"/>`);
    lines.forEach((line, index) => {
      parts.push(
        text(
          line,
          top + index * LINE,
          index === 0 ? 0 : 8,
          exit.passing !== null && index > 0 ? 'through' : '',
        ),
      );
    });
  }
  return `<g>${parts.join('')}</g>`;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Curves between the columns and straight lines through them; a way back leaves and comes in on a wide bow. */
function arrow(from: Point, passed: readonly Point[], to: Point, cannot: boolean): string {
  let at = from;
  let path = `M${round(from.x)} ${round(from.y)}`;
  const curve = (next: Point) => {
    const bow = next.x > at.x ? (next.x - at.x) / 2 : COLUMN_GAP;
    const points = [at.x + bow, at.y, next.x - bow, next.y, next.x, next.y];
    path += `C${points.map(round).join(' ')}`;
    at = next;
  };
  for (const point of passed) {
    curve(point);
    path += `h${BOX_WIDTH}`;
    at = { x: point.x + BOX_WIDTH, y: point.y };
  }
  curve(to);
  return `<path class="arrow${cannot ? ' cannot' : ''}" marker-end="url(#tip)" d="${path}"/>`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => ENTITIES[sign]!);
}
