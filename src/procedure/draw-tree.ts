/**
 * A tree as text for a terminal: branches as indented lines, each step once. A branch that would run out of columns
 * is folded: it goes on in a paragraph of its own further down.
 */
import { foldWords } from '../source/fold-words.ts';
import type { GraphExit, GraphNode } from './draw-graph.ts';

/** The terminal that the tree is drawn for. */
export interface DrawTreeOptions {
  /** Columns, 40 at least. */
  readonly width: number;
  readonly ascii: boolean;
}

interface TreeGlyphs {
  readonly fork: string;
  readonly last: string;
  readonly bar: string;
  readonly to: string;
  readonly end: string;
}
const BOX: TreeGlyphs = { fork: '├─ ', last: '└─ ', bar: '│  ', to: '→', end: '■' };
const ASCII: TreeGlyphs = { fork: '|- ', last: '`- ', bar: '|  ', to: '->', end: '=' };
const BLANK = '   ';
const WIDTH_MIN = 40;
/** Forks inside each other in one paragraph; each takes three columns. */
const DEPTH_MAX = 5;
/** Signs of a line that stand beside the bars at least. */
const LEAST_ROOM = 8;

/** The lines of the drawing, none wider than asked for. */
export function drawTree(nodes: readonly GraphNode[], options: DrawTreeOptions): string[] {
  return new TreeDrawing(nodes, options).draw();
}

class TreeDrawing {
  private readonly nodes: ReadonlyMap<string, GraphNode>;
  private readonly width: number;
  private readonly glyphs: TreeGlyphs;
  private readonly lines: string[] = [];
  private readonly drawn = new Set<string>();
  /** Steps whose paragraph is still to come. */
  private readonly folded: string[] = [];
  private readonly start: string | undefined;

  constructor(nodes: readonly GraphNode[], { width, ascii }: DrawTreeOptions) {
    this.nodes = new Map(nodes.map((node) => [node.id, node]));
    this.start = nodes[0]?.id;
    this.width = Math.max(WIDTH_MIN, width);
    this.glyphs = ascii ? ASCII : BOX;
  }

  draw(): string[] {
    if (this.start !== undefined) this.folded.push(this.start);
    for (const id of this.folded) {
      if (this.drawn.has(id)) continue;
      if (this.lines.length > 0) this.lines.push('');
      this.step(this.nodes.get(id)!, '', 0);
    }
    return this.lines;
  }

  private step(node: GraphNode, indent: string, depth: number): void {
    this.drawn.add(node.id);
    const setting = node.setting === '' ? '' : ` (${node.setting})`;
    const mark = node.kind === 'task' ? '' : `${this.glyphs.end} `;
    this.write(indent, indent, `${mark}${named(node)}${setting}`);
    const [first, ...others] = node.exits;
    if (first?.kind === 'done' && others.length === 0) {
      this.follow(first, indent, indent, depth, `${this.glyphs.to} `);
      return;
    }
    node.exits.forEach((exit, index) => {
      const last = index === node.exits.length - 1;
      const inner = indent + (last ? BLANK : this.glyphs.bar);
      this.follow(
        exit,
        indent + (last ? this.glyphs.last : this.glyphs.fork),
        inner,
        depth + 1,
        '',
      );
    });
  }

  /** An exit with what it leads to: a conclusion on its own line, a step below it, or the name of one drawn elsewhere. */
  private follow(exit: GraphExit, head: string, indent: string, depth: number, mark: string): void {
    const target = this.nodes.get(exit.to)!;
    const label = [exit.name, exit.words].filter((part) => part !== '').join(': ');
    const passing =
      exit.passing === null
        ? ''
        : ` [${exit.passing.length === 0 ? 'nothing' : exit.passing.join(', ')}]`;
    const own = target.kind === 'task' && exit.kind !== 'cannot' && !this.drawn.has(target.id);
    const fits = own && depth <= DEPTH_MAX && !this.folded.includes(target.id);
    if (own && !fits) this.folded.push(target.id);
    // What a conclusion requires is told further down, once.
    const isFolded = target.kind === 'task' ? exit.kind === 'cannot' : target.exits.length > 0;
    if (isFolded) this.folded.push(target.id);
    if (fits) {
      if (label + passing !== '') this.write(head, indent, `${mark}${label}${passing}`);
      this.step(target, indent, depth);
      return;
    }
    const lead = label === '' ? '' : `${label} `;
    this.write(head, indent, `${mark}${lead}${this.targetWords(target, mark)}${passing}`);
  }

  private targetWords(target: GraphNode, mark: string): string {
    const arrow = mark === '' ? `${this.glyphs.to} ` : '';
    if (target.kind === 'task') return `${arrow}${target.id}`;
    return `${arrow}${this.glyphs.end} ${named(target)}`;
  }

  /** One text, folded at blanks; lines after the first keep the branch's bars and step in by two. */
  private write(head: string, indent: string, text: string): void {
    const next = `${indent}  `;
    // Deep branches leave little room: a line of a few signs at least, cut at the edge.
    const room = (prefix: string) => Math.max(LEAST_ROOM, this.width - prefix.length);
    for (const [index, line] of foldWords(text, room(head), room(next)).entries())
      this.lines.push(`${index === 0 ? head : next}${line}`.slice(0, this.width).trimEnd());
  }
}

function named({ id, title }: GraphNode): string {
  return title === '' ? id : `${id}: ${title}`;
}
