/**
 * The wiring from module to sensor with the readings at their places, the fault marked and after beside before, as lines
 * and texts: black on white, nothing told by colour, so that a grey print says the same.
 */
import { foldWords, type TextColumns } from '../source/fold-words.ts';
import signColumns from '../source/sign-columns.ts';
import type { PictureFault, RecordPicture } from './record-form.ts';
import { textLines } from './text-lines.ts';

/** Units of the drawing across; text of size 10 is read well where the whole is as wide as a page. */
export const SHAPES_WIDTH = 700;

/** A line or a text of the picture, in its own units from the top left. */
export type Shape =
  | {
      readonly kind: 'line';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly width: number;
    }
  /** `y` is the base line. */
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly bold: boolean;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly text: string;
    };

/** What stands at a reading's place. */
export interface ShownReading {
  /** As in the table beside the picture. */
  readonly number: number;
  readonly reading: number;
  readonly found: string;
  readonly expected: string;
  /** After the repair; empty where it was not made again. */
  readonly after: string;
  readonly test: string;
}

const BOX = 165;
const RIGHT = SHAPES_WIDTH - BOX;
const TITLE = 11;
const PLAIN = 10;
const SMALL = 9;
const LEAD = 11.5;
const ROW_MIN = 34;
/** Columns of small text that have room at one place of a wire, and inside a box. */
const PLACE_COLUMNS = 26;
const BOX_COLUMNS = 26;
/** Faults of one box whose words stand in it; more are in the text. */
const NAMED_MAX = 2;

/** Shapes and height of the drawing; `proven` says how the fault is marked, `columnsOf` how wide a paper makes a text. */
export function wiringShapes(
  picture: RecordPicture,
  readings: readonly ShownReading[],
  proven: boolean,
  columnsOf: TextColumns = signColumns,
): { readonly shapes: readonly Shape[]; readonly height: number } {
  const drawing = new ShapeDrawing(picture, readings, proven, columnsOf);
  return { shapes: drawing.shapes, height: drawing.height };
}

class ShapeDrawing {
  readonly shapes: Shape[] = [];
  height = 0;
  private readonly picture: RecordPicture;
  private readonly readings: readonly ShownReading[];
  private readonly fold: (text: string, columns: number, next?: number) => string[];
  private readonly mark: string;
  /** Whether one place is marked, and not several that are possible. */
  private readonly isOne: boolean;
  /** Height of each wire's line. */
  private readonly lines: number[] = [];

  constructor(
    picture: RecordPicture,
    readings: readonly ShownReading[],
    proven: boolean,
    columnsOf: TextColumns,
  ) {
    // As it will be drawn: a hidden sign takes the room of its name.
    this.fold = (text, columns, next = columns) =>
      foldWords(textLines(text).join(' '), columns, next, columnsOf);
    this.picture = picture;
    this.readings = readings;
    const places = new Set(
      picture.faults.map(
        ({ wire, at, words }) => `${wire} ${at} ${at === 'elsewhere' ? words : ''}`,
      ),
    );
    this.isOne = places.size <= 1;
    this.mark = !this.isOne ? 'fault here?' : proven ? 'FAULT HERE' : 'FAULT MOST LIKELY HERE';
    const titles = [picture.left, picture.right].map((words) => this.fold(words, 24));
    const top = 10 + Math.max(...titles.map((lines) => lines.length)) * 13;
    for (const [side, lines] of titles.entries())
      for (const [at, line] of lines.entries())
        this.text(side === 0 ? BOX / 2 : RIGHT + BOX / 2, 16 + at * 13, line, {
          size: TITLE,
          bold: true,
          anchor: 'middle',
        });
    let y = top + 14;
    let left = 0;
    for (const [wire, { module }] of picture.wires.entries()) {
      // What does not come from the module stands below its box.
      if (!module && left === 0) {
        left = this.inBox(0, y, 'left');
        y = left + 8;
      }
      y += this.wire(wire, y);
    }
    if (left === 0) left = this.inBox(0, y, 'left');
    for (const { wire, touches, at } of picture.faults) {
      const [one, other] = [this.lines[wire ?? -1], this.lines[touches ?? -1]];
      const x = (BOX + RIGHT) / 2;
      if (at === 'along' && one !== undefined && other !== undefined)
        this.line([x, one], [x, other], 3);
    }
    const right = Math.max(y, this.inBox(RIGHT, y, 'right'));
    const isWhole = picture.wires.every(({ module }) => module);
    const bottoms = isWhole ? [Math.max(left, right), Math.max(left, right)] : [left, right];
    this.box(0, bottoms[0]!, this.isMarked(null, 'left'));
    this.box(RIGHT, bottoms[1]!, this.isMarked(null, 'right'));
    this.height = this.below(Math.max(...bottoms) + 8) + 6;
  }

  /** One wire with what was read at its ends and along it; the height it takes. */
  private wire(wire: number, y: number): number {
    const { words, left, right, module } = this.picture.wires[wire]!;
    const line = y + 8;
    this.lines[wire] = line;
    this.line([BOX, line], [RIGHT, line], 1.6);
    for (const [at, part] of this.fold(left, BOX_COLUMNS).slice(0, 2).entries())
      this.text(BOX - 14, line + 3.5 + at * LEAD, part, {
        anchor: 'end',
        bold: false,
        size: module ? PLAIN : SMALL,
      });
    for (const [at, part] of this.fold(right, BOX_COLUMNS).slice(0, 2).entries())
      this.text(RIGHT + 14, line + 3.5 + at * LEAD, part, { anchor: 'start' });
    // Where a mark leaves room.
    const nameX = !this.isMarked(wire, 'left') ? BOX + 55 : this.isOne ? BOX + 185 : BOX + 108;
    this.text(nameX, line - 4, words, { anchor: 'middle', size: SMALL });
    let height = ROW_MIN;
    const marks = [
      ['left', BOX + 6, 'start'],
      ['along', (BOX + RIGHT) / 2, 'middle'],
      ['right', RIGHT - 6, 'end'],
    ] as const;
    for (const [at, x, anchor] of marks) {
      if (this.isMarked(wire, at))
        this.cross(at === 'along' ? x : at === 'left' ? BOX : RIGHT, line, [x, anchor]);
      // Below the cross there is no room for words.
      let down = line + LEAD + (at === 'along' && this.isMarked(wire, at) ? 10 : 3);
      for (const shown of this.readingsAt(wire, at)) {
        const ends = at === 'along' ? [BOX + 3, RIGHT - 3] : [at === 'left' ? BOX + 3 : RIGHT - 3];
        for (const end of ends) this.line([end, line - 5], [end, line + 5], 3.5);
        down = this.reading(shown, x, down, anchor);
      }
      height = Math.max(height, down - y);
    }
    return height;
  }

  /** What was found at the box of a side, and whether the fault is in it; where the box ends. */
  private inBox(x: number, from: number, side: 'left' | 'right'): number {
    let y = from + 10;
    for (const shown of this.readingsAt(null, side))
      y = this.reading(shown, x + BOX / 2, y, 'middle', BOX_COLUMNS + 2) + 2;
    if (this.isMarked(null, side)) {
      this.cross(x + 16, y, [x + 28, 'start'], y + 4);
      y += LEAD + 4;
      const named = this.picture.faults.filter(({ wire, at }) => wire === null && at === side);
      if (named.length <= NAMED_MAX)
        for (const line of named.flatMap(({ words }) => this.fold(words, BOX_COLUMNS + 2))) {
          this.text(x + BOX / 2, y + 2, line, { anchor: 'middle', size: SMALL });
          y += LEAD;
        }
      y += 4;
    }
    return y;
  }

  /** What is not drawn: readings at other places, faults of other parts. */
  private below(from: number): number {
    let y = from + 4;
    const put = (text: string, bold = false) => {
      for (const [at, line] of this.fold(text, 120, 116).entries()) {
        this.text(at === 0 ? 4 : 16, y + 6, line, { size: PLAIN, bold });
        y += LEAD + 1;
      }
    };
    for (const shown of this.readingsAt(null, 'elsewhere'))
      put(`(${shown.number}) ${shown.test}: ${[shown.found, ...this.beside(shown)].join(', ')}`);
    const others = new Set(
      this.picture.faults.filter(({ at }) => at === 'elsewhere').map(({ words }) => words),
    );
    for (const words of others) put(`${this.mark} (not drawn above): ${words}`, true);
    return y;
  }

  private reading(
    shown: ShownReading,
    x: number,
    from: number,
    anchor: 'start' | 'middle' | 'end',
    columns = PLACE_COLUMNS,
  ): number {
    let y = from;
    for (const line of this.fold(`(${shown.number}) ${shown.found}`, columns - 3)) {
      this.text(x, y, line, { anchor, bold: true });
      y += LEAD;
    }
    const { against } = this.picture.readings.find(({ reading }) => reading === shown.reading)!;
    for (const words of [...(against === '' ? [] : [`against ${against}`]), ...this.beside(shown)])
      for (const line of this.fold(words, columns)) {
        this.text(x, y, line, { anchor, size: SMALL });
        y += LEAD;
      }
    return y + 3;
  }

  private beside({ expected, after }: ShownReading): string[] {
    return [
      ...(expected === '' ? [] : [`should be ${expected}`]),
      ...(after === '' ? [] : [`after the repair: ${after}`]),
    ];
  }

  /** A cross, and beside it what it means. */
  private cross(
    x: number,
    y: number,
    [wordsX, anchor]: readonly [number, 'start' | 'middle' | 'end'],
    wordsY = y - 10,
  ): void {
    const size = 7;
    this.line([x - size, y - size], [x + size, y + size], 3);
    this.line([x - size, y + size], [x + size, y - size], 3);
    this.text(wordsX, wordsY, this.mark, { anchor, bold: true });
  }

  private box(x: number, bottom: number, isMarked: boolean): void {
    const [top, right] = [1.5, x + BOX];
    const width = isMarked ? 3 : 1;
    this.line([x, top], [right, top], width);
    this.line([right, top], [right, bottom], width);
    this.line([right, bottom], [x, bottom], width);
    this.line([x, bottom], [x, top], width);
  }

  private isMarked(wire: number | null, at: PictureFault['at']): boolean {
    return this.picture.faults.some((one) => one.wire === wire && one.at === at);
  }

  private readingsAt(wire: number | null, at: PictureFault['at']): ShownReading[] {
    const there = new Set(
      this.picture.readings
        .filter((one) => one.wire === wire && one.at === at)
        .map(({ reading }) => reading),
    );
    return this.readings.filter(({ reading }) => there.has(reading));
  }

  private line(
    from: readonly [number, number],
    to: readonly [number, number],
    width: number,
  ): void {
    this.shapes.push({ kind: 'line', from, to, width });
  }

  private text(
    x: number,
    y: number,
    text: string,
    {
      size = PLAIN,
      bold = false,
      anchor = 'start',
    }: Partial<Pick<Extract<Shape, { kind: 'text' }>, 'size' | 'bold' | 'anchor'>> = {},
  ): void {
    this.shapes.push({ kind: 'text', x, y, size, bold, anchor, text });
  }
}

/** The same as one SVG; `safeFor` makes a text fit for markup. */
export function shapesSvg(
  title: string,
  { shapes, height }: ReturnType<typeof wiringShapes>,
  safeFor: (text: string) => string,
): string {
  const parts = shapes.map((shape) => {
    if (shape.kind === 'line') {
      const [[x1, y1], [x2, y2]] = [shape.from, shape.to];
      return `<line x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}" stroke="currentColor" stroke-width="${n(shape.width)}"/>`;
    }
    const { x, y, size, bold, anchor, text } = shape;
    const weight = bold ? ' font-weight="700"' : '';
    return `<text x="${n(x)}" y="${n(y)}" font-size="${size}" text-anchor="${anchor}"${weight}>${safeFor(text)}</text>`;
  });
  return `<svg viewBox="0 0 ${SHAPES_WIDTH} ${Math.ceil(height)}" width="${SHAPES_WIDTH}" height="${Math.ceil(height)}" role="img" aria-label="${safeFor(title)}" font-family="sans-serif" fill="currentColor">${parts.join('')}</svg>\n`;
}

function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}
