/**
 * A small wiring sketch: what feeds the sensor on the left, the sensor on the right, a line for each wire, the lead tips
 * R and B where the test puts them, splices as o, connectors that are off as gaps, bridges named below.
 */
import { foldWords } from '../source/fold-words.ts';
import signColumns from '../source/sign-columns.ts';
import { type Circuit, moduleOf, partName, sensorOf, type Wire } from './circuit.ts';
import { farEnd } from './far-end.ts';
import { wayFrom } from './joints.ts';
import { leads } from './refuse-test.ts';
import type { Bridge, TerminalId, Test } from './test.ts';
import { toldNeighbours } from './with-neighbours.ts';

/** What is drawn on the sketch besides the wiring, and how wide. */
export interface DrawOptions {
  readonly test?: Test;
  /** Pin number and colour of a terminal on this vehicle, `1 RD/BU`. */
  readonly pins?: Readonly<Record<TerminalId, string>>;
  /** Columns, 60 to 80. */
  readonly width: number;
  readonly ascii: boolean;
  /** Named below: what else hangs on a splice of the circuit, connectors and splices of this car's harness, and what a person says shares feed or ground. */
  readonly besides?: boolean;
}

/** A wire of the sensor as it is drawn: the sensor's terminal, what it comes from, and what stands at both ends. */
export interface DrawnWire {
  readonly wire: Wire;
  readonly here: TerminalId;
  readonly there: TerminalId;
  /** The splices of the circuit file that it passes on its way, the nearest first. */
  readonly splices: readonly TerminalId[];
  readonly left: string;
  readonly right: string;
}
type WireRow = DrawnWire;

interface CircuitGlyphs {
  readonly line: string;
  readonly side: string;
  readonly corners: readonly [string, string, string, string];
}

const PLAIN_GLYPHS: CircuitGlyphs = { line: '-', side: '|', corners: ['+', '+', '+', '+'] };
const BOX_GLYPHS: CircuitGlyphs = { line: '─', side: '│', corners: ['┌', '┐', '└', '┘'] };
const SPLICE = 'o';
const WIDTH_MIN = 60;
const WIDTH_MAX = 80;
/** Columns of wire at least and at most: two connectors, two tips, the name between blanks. */
const WIRE_MIN = 14;
const WIRE_MAX = 22;
const WIRE_ENDS = 8;
/** What stands round a title in the border of its box. */
const TITLE_EDGES = 4;
/** Lines that go on with a note begin further in. */
const NOTE_INDENT = ' ';
const NOTE_HANG = '   ';

/** Columns inside the left box, of the wires, inside the right box. */
interface DrawingColumns {
  readonly left: number;
  readonly wire: number;
  readonly right: number;
}

/**
 * The sketch, line by line, none longer than the width. Three wires take 5 lines, and the things named below one each or
 * more.
 */
export function drawCircuit(circuit: Circuit, options: DrawOptions): string[] {
  const width = Math.max(WIDTH_MIN, Math.min(WIDTH_MAX, options.width));
  const rows = rowsOf(circuit, options.pins ?? {});
  // On a step the wires with the leads are all there is room for.
  const isWhole = options.besides === true || options.test === undefined;
  const besides = [
    ...(isWhole ? splicedWords(circuit, rows) : []),
    ...(options.besides ? besidesOf(circuit) : []),
  ];
  const below = [...notes(circuit, options, rows), ...besides].flatMap((note) =>
    foldWords(note, width - NOTE_INDENT.length, width - NOTE_HANG.length).map(
      (line, index) => `${index === 0 ? NOTE_INDENT : NOTE_HANG}${line}`,
    ),
  );
  return [...boxes(circuit, options, rows, width).map((line) => line.trimEnd()), ...below];
}

/** The sensor's wires in the order in which they are drawn, those from the module first. */
export function drawnWires(circuit: Circuit): DrawnWire[] {
  const rows = rowsOf(circuit, {});
  const isFromModule = ({ there }: WireRow) => partName(there) === moduleOf(circuit).name;
  return [...rows.filter(isFromModule), ...rows.filter((row) => !isFromModule(row))];
}

/** Module and sensor with the wires between; what does not come from the module stands below its box. */
function boxes(
  circuit: Circuit,
  options: DrawOptions,
  rows: readonly WireRow[],
  width: number,
): string[] {
  const glyphs = options.ascii ? PLAIN_GLYPHS : BOX_GLYPHS;
  const module = moduleOf(circuit);
  const sensor = sensorOf(circuit);
  const layout = layOut(rows, module.words, sensor.words, width);
  const { side } = glyphs;
  const gap = ' '.repeat(layout.wire);
  const under = ' '.repeat(layout.left + 2);
  const line = (row: WireRow, left: string) =>
    `${left}${wireText(row, layout.wire, options, glyphs)}${side}${cell(rightText(row, options.test), layout.right, 'left')}${side}`;
  const fromModule = rows.filter((row) => partName(row.there) === module.name);
  const fromElsewhere = rows.filter((row) => partName(row.there) !== module.name);
  const bottoms = (left: string) => `${left}${gap}${bottom(glyphs, layout.right)}`;
  return [
    `${top(glyphs, module.words, layout.left)}${gap}${top(glyphs, sensor.words, layout.right)}`,
    ...fromModule.map((row) => line(row, `${side}${cell(row.left, layout.left, 'right')}${side}`)),
    ...(fromElsewhere.length === 0
      ? [bottoms(bottom(glyphs, layout.left))]
      : [
          `${bottom(glyphs, layout.left)}${gap}${side}${' '.repeat(layout.right)}${side}`,
          ...fromElsewhere.map((row) => line(row, cell(row.left, layout.left + 2, 'right'))),
          bottoms(under),
        ]),
  ];
}

/** Each box as wide as its title and its pins want, as far as the wires keep room for their names. */
function layOut(
  rows: readonly WireRow[],
  moduleTitle: string,
  sensorTitle: string,
  width: number,
): DrawingColumns {
  const longest = Math.max(...rows.map(({ wire }) => signColumns(wireName(wire))));
  const least = Math.max(WIRE_MIN, Math.min(WIRE_MAX, longest + WIRE_ENDS));
  const room = width - least - 4;
  const wanted = (title: string, pins: readonly string[], edges: number) =>
    Math.max(signColumns(title) + TITLE_EDGES, ...pins.map((pin) => signColumns(pin) + edges));
  const leftWanted = wanted(
    moduleTitle,
    rows.map((row) => row.left),
    2,
  );
  // A lead's letter may stand before the pin.
  const rightWanted = wanted(
    sensorTitle,
    rows.map((row) => row.right),
    4,
  );
  const left = Math.min(leftWanted, Math.max(Math.floor(room / 2), room - rightWanted));
  const right = Math.min(rightWanted, room - left);
  return { left, wire: width - left - right - 4, right };
}

function rowsOf(circuit: Circuit, pins: Readonly<Record<TerminalId, string>>): WireRow[] {
  const sensor = sensorOf(circuit).name;
  const label = (terminal: TerminalId) => {
    const name = spaced(terminal.slice(terminal.indexOf('.') + 1));
    return pins[terminal] === undefined ? name : `${name} ${pins[terminal]}`;
  };
  return circuit.wires.flatMap((wire): WireRow[] => {
    if (partName(wire.from) !== sensor && partName(wire.to) !== sensor) return [];
    const [here, end] =
      partName(wire.from) === sensor ? [wire.from, wire.to] : [wire.to, wire.from];
    const { there, splices } = throughSplices(circuit, wire, here, farEnd(circuit, wire, end));
    const left =
      partName(there) === moduleOf(circuit).name
        ? label(there)
        : sourceOf(circuit, wire, here, there);
    return [{ wire, here, there, splices, left, right: label(here) }];
  });
}

/** The splices between a wire and `end`, and the module's pin behind them; `end` itself where there is none. */
function throughSplices(
  circuit: Circuit,
  wire: Wire,
  here: TerminalId,
  end: TerminalId,
): Pick<WireRow, 'there' | 'splices'> {
  const { sections, end: last } = wayFrom(circuit, wire, here);
  const splices = isSplice(last) ? [last] : [];
  const module = moduleOf(circuit).name;
  let there = end;
  for (const splice of splices)
    for (const next of besideSplice(circuit, splice, sections)) {
      if (partName(next) === module && isSplice(there)) there = next;
      if (isSplice(next) && !splices.includes(next)) splices.push(next);
    }
  return { there, splices };
}

/** Where the other wires of a splice end. */
function besideSplice(
  { wires }: Circuit,
  splice: TerminalId,
  sections: readonly Wire[],
): TerminalId[] {
  return wires.flatMap((one) => {
    if (sections.includes(one)) return [];
    return one.from === splice ? [one.to] : one.to === splice ? [one.from] : [];
  });
}

function isSplice(terminal: TerminalId): boolean {
  return terminal.startsWith('splice.');
}

/** `o: splice; the feed and the ground go on to the speed sensor`; nothing where no wire passes one. */
function splicedWords(circuit: Circuit, rows: readonly WireRow[]): string[] {
  const ways = new Map<string, string[]>();
  for (const { wire, here, splices } of rows) {
    const { sections } = wayFrom(circuit, wire, here);
    const ends = splices.flatMap((splice) => besideSplice(circuit, splice, sections));
    for (const part of circuit.parts)
      if (part.kind === 'neighbour' && ends.some((end) => partName(end) === part.name))
        ways.set(part.words, [...(ways.get(part.words) ?? []), `the ${wireName(wire)}`]);
  }
  if (rows.every(({ splices }) => splices.length === 0)) return [];
  const said = [...ways].map(
    ([words, wires]) =>
      `${wires.join(' and ')} ${wires.length > 1 ? 'go' : 'goes'} on to the ${words}`,
  );
  return [['o: splice', ...said].join('; ')];
}

/** What is behind a wire that does not come from the module: `battery + > relay > fuse`. */
function sourceOf(circuit: Circuit, wire: Wire, here: TerminalId, from: TerminalId): string {
  const end = wire.role === 'supply' ? 'battery.positive' : 'ground';
  const open: { at: string; path: readonly string[] }[] = [{ at: from, path: [] }];
  const seen = new Set<string>([from]);
  const way = wayFrom(circuit, wire, here).sections;
  while (open.length > 0) {
    const { at, path } = open.shift()!;
    const part = circuit.parts.find((one) => one.name === partName(at));
    if (
      at === end ||
      (end === 'ground' && (part?.kind === 'ground-point' || at === 'battery.negative'))
    )
      return [end === 'ground' ? (part?.words ?? 'battery -') : 'battery +', ...path].join(' > ');
    const nexts = circuit.wires
      .filter((one) => !way.includes(one) && (one.from === at || one.to === at))
      .map((one) => ({ at: one.from === at ? one.to : one.from, path }));
    if (part?.kind === 'fuse' || part?.kind === 'relay')
      nexts.push({
        at: `${part.name}.${part.pins.find((pin) => !at.endsWith(`.${pin}`))}`,
        path: [part.name, ...path],
      });
    for (const next of nexts)
      if (!seen.has(next.at)) {
        seen.add(next.at);
        open.push(next);
      }
  }
  return spaced(from);
}

/** The wire between the boxes, with connectors, lead tips and its name. */
function wireText(
  row: WireRow,
  width: number,
  { test }: DrawOptions,
  glyphs: CircuitGlyphs,
): string {
  const off = (terminal: TerminalId) => test?.setup.unplugged.includes(partName(terminal)) === true;
  const joined = row.splices.length > 0 ? SPLICE : '';
  const left = `${off(row.there) ? '  ' : glyphs.line}${tip(row.there, test) || (joined === '' ? glyphs.line : '')}${joined}`;
  const right = `${tip(row.here, test) || glyphs.line}${off(row.here) ? '  ' : glyphs.line}`;
  const room = width - left.length - right.length;
  const name = ` ${cut(wireName(row.wire), room - 2)} `;
  const spare = room - signColumns(name);
  const before = Math.floor(spare / 2);
  return `${left}${glyphs.line.repeat(before)}${name}${glyphs.line.repeat(spare - before)}${right}`;
}

function rightText(row: WireRow, test: Test | undefined): string {
  const mark = tip(`${row.here}.pin`, test);
  return mark === '' ? row.right : `${mark} ${row.right}`;
}

/** R and B for the leads of the instrument. */
function tip(terminal: TerminalId, test: Test | undefined): string {
  if (!test) return '';
  const [plus, minus] = leads(test.probe);
  if (plus === terminal && test.probe.kind !== 'counts') return 'R';
  return minus === terminal ? 'B' : '';
}

/** What the sketch cannot show: leads elsewhere, bridges, unplugged neighbours, the thing to look at. */
function notes(circuit: Circuit, { test, pins }: DrawOptions, rows: readonly WireRow[]): string[] {
  if (!test) return [];
  const drawn = rows.flatMap((row) => [row.here, row.there, `${row.here}.pin`]);
  const words = (terminal: TerminalId) => {
    const name = circuit.terminals.find((one) => one.id === terminal)?.words ?? terminal;
    return pins?.[terminal] === undefined ? name : `${name} (${pins[terminal]})`;
  };
  const lines: string[] = [];
  if (test.probe.kind !== 'counts' && test.probe.kind !== 'inspect') {
    const places = leads(test.probe).flatMap((terminal, index) =>
      drawn.includes(terminal) ? [] : [`${index === 0 ? 'R' : 'B'}: ${words(terminal)}`],
    );
    if (places.length > 0) lines.push(places.join('   '));
  }
  const clipped = new Map<string, string[]>();
  for (const bridge of test.setup.bridges) {
    const what = bridgeWords(bridge);
    const from = `${words(bridge.from)} to ${words(bridge.to)}`;
    clipped.set(what, [...(clipped.get(what) ?? []), from]);
  }
  for (const [what, places] of clipped) lines.push(`${what}: ${places.join('; ')}`);
  const shown = [sensorOf(circuit).name, moduleOf(circuit).name];
  const others = test.setup.unplugged.filter((name) => !shown.includes(name));
  if (others.length > 0)
    lines.push(
      `unplugged: ${others.map((name) => circuit.parts.find((part) => part.name === name)?.words ?? name).join(', ')}`,
    );
  return lines;
}

/** `in the harness: connector at the bulkhead (feed, signal), 1 m from the sensor`, and `shares with it: oil sensor (feed)`. */
function besidesOf(circuit: Circuit): string[] {
  const joints = circuit.parts.flatMap((part) => {
    if (part.kind !== 'joint') return [];
    const at = part.metres === null ? '' : `, ${part.metres} m from the sensor`;
    return [`in the harness: ${part.words} (${part.pins.map(spaced).join(', ')})${at}`];
  });
  const neighbours = toldNeighbours(circuit).map(({ name, words }) => {
    const shared = circuit.wires
      .filter(({ from, to }) => [from, to].some((end) => partName(end) === name))
      // A wire of its own from a post is shared with nobody.
      .filter(({ from, to }) => ![from, to].some((end) => partName(end) === 'battery'))
      .map(({ role }) => (role === 'ground' ? 'ground' : role === 'signal' ? 'signal' : 'feed'));
    const what = [...new Set(shared)].join(', ');
    return `shares with it: ${words}${what === '' ? '' : ` (${what})`}`;
  });
  return [...joints, ...neighbours];
}

/** What is clipped in, in words. */
function bridgeWords({ through }: Bridge): string {
  if (through === 'lead') return 'temporary wire';
  if (through === 'test-light') return 'LED light';
  return through === 'lamp' ? 'filament lamp' : `${through.ohms} ohm`;
}

function top({ line, corners }: CircuitGlyphs, title: string, inner: number): string {
  const room = inner - TITLE_EDGES;
  // What it is stays rather than of what kind: "intake camshaft sensor".
  const short = signColumns(title) <= room ? title : title.replace(/ position(?= sensor)/, '');
  const name = ` ${cut(short, room)} `;
  return `${corners[0]}${line}${name}${line.repeat(inner - signColumns(name) - 1)}${corners[1]}`;
}

function bottom({ line, corners }: CircuitGlyphs, inner: number): string {
  return `${corners[2]}${line.repeat(inner)}${corners[3]}`;
}

function cell(text: string, width: number, align: 'left' | 'right'): string {
  const words = cut(text, width - 2);
  const spare = ' '.repeat(Math.max(0, width - 1 - signColumns(words)));
  return align === 'left' ? ` ${words}${spare}` : `${spare}${words} `;
}

/** What has room, in whole words where one has. */
function cut(text: string, columns: number): string {
  return foldWords(text, Math.max(1, columns))[0]!;
}

/** Of a section the name of its whole wire: what is drawn runs from end to end. */
export function wireName({ name, of }: Wire): string {
  return spaced(of ?? name);
}

function spaced(name: string): string {
  return name.replace(/-/g, ' ').replace(/^splice\./, '');
}
