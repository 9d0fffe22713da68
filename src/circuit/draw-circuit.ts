/**
 * A small wiring sketch: what feeds the sensor on the left, the sensor on the right, a line for each wire, the lead tips
 * R and B where the test puts them, connectors that are off as gaps, bridges named below.
 */
import { type Circuit, moduleOf, partName, sensorOf, type Wire } from './circuit.ts';
import { leads } from './refuse-test.ts';
import type { Bridge, TerminalId, Test } from './test.ts';

export interface DrawOptions {
  readonly test?: Test;
  /** Pin number and colour of a terminal on this vehicle, `1 RD/BU`. */
  readonly pins?: Readonly<Record<TerminalId, string>>;
  /** Columns, 60 to 80. */
  readonly width: number;
  readonly ascii: boolean;
}

interface Row {
  readonly wire: Wire;
  readonly here: TerminalId;
  readonly there: TerminalId;
  readonly left: string;
  readonly right: string;
}

interface Glyphs {
  readonly line: string;
  readonly side: string;
  readonly corners: readonly [string, string, string, string];
}

const PLAIN_GLYPHS: Glyphs = { line: '-', side: '|', corners: ['+', '+', '+', '+'] };
const BOX_GLYPHS: Glyphs = { line: '─', side: '│', corners: ['┌', '┐', '└', '┘'] };
const WIDTH_MIN = 60;
const WIDTH_MAX = 80;
/** Columns of wire at least: name, two tips and something of the wire itself. */
const WIRE_MIN = 14;

/** The sketch, line by line, none longer than the width. Three wires take 5 lines, and one for each thing named below. */
export function drawCircuit(circuit: Circuit, options: DrawOptions): string[] {
  const width = Math.max(WIDTH_MIN, Math.min(WIDTH_MAX, options.width));
  const glyphs = options.ascii ? PLAIN_GLYPHS : BOX_GLYPHS;
  const rows = rowsOf(circuit, options.pins ?? {});
  const module = moduleOf(circuit);
  const inside = rows.filter((row) => partName(row.there) === module.name);
  const outside = rows.filter((row) => partName(row.there) !== module.name);
  const sensor = sensorOf(circuit);
  const room = width - WIRE_MIN - 4;
  const leftWanted = Math.max(module.words.length + 4, ...rows.map((row) => row.left.length + 2));
  const rightWanted = Math.max(sensor.words.length + 4, ...rows.map((row) => row.right.length + 4));
  const leftWidth = Math.min(leftWanted, Math.max(Math.floor(room / 2), room - rightWanted));
  const rightWidth = Math.min(rightWanted, room - leftWidth);
  const middle = width - leftWidth - rightWidth - 4;
  const gap = ' '.repeat(middle);
  const top = (title: string, inner: number) => border(glyphs, title, inner, 'top');
  const bottom = (inner: number) => border(glyphs, '', inner, 'bottom');
  const boxed = (row: Row) =>
    `${glyphs.side}${cell(row.left, leftWidth, 'right')}${glyphs.side}${wireText(row, middle, options, glyphs)}${glyphs.side}${cell(rightText(row, options.test), rightWidth, 'left')}${glyphs.side}`;
  const free = (row: Row) =>
    `${cell(row.left, leftWidth + 2, 'right')}${wireText(row, middle, options, glyphs)}${glyphs.side}${cell(rightText(row, options.test), rightWidth, 'left')}${glyphs.side}`;
  const lines = [
    `${top(module.words, leftWidth)}${gap}${top(sensor.words, rightWidth)}`,
    ...inside.map(boxed),
  ];
  if (outside.length === 0) lines.push(`${bottom(leftWidth)}${gap}${bottom(rightWidth)}`);
  else {
    lines.push(`${bottom(leftWidth)}${gap}${glyphs.side}${' '.repeat(rightWidth)}${glyphs.side}`);
    lines.push(...outside.map(free));
    lines.push(`${' '.repeat(leftWidth + 2)}${gap}${bottom(rightWidth)}`);
  }
  return [...lines, ...notes(circuit, options, rows)].map((line) => line.slice(0, width).trimEnd());
}

function rowsOf(circuit: Circuit, pins: Readonly<Record<TerminalId, string>>): Row[] {
  const sensor = sensorOf(circuit).name;
  const label = (terminal: TerminalId) => {
    const name = spaced(terminal.slice(terminal.indexOf('.') + 1));
    return pins[terminal] === undefined ? name : `${name} ${pins[terminal]}`;
  };
  return circuit.wires.flatMap((wire): Row[] => {
    if (partName(wire.from) !== sensor && partName(wire.to) !== sensor) return [];
    const [here, there] =
      partName(wire.from) === sensor ? [wire.from, wire.to] : [wire.to, wire.from];
    const left =
      partName(there) === moduleOf(circuit).name ? label(there) : sourceOf(circuit, wire, there);
    return [{ wire, here, there, left, right: label(here) }];
  });
}

/** What is behind a wire that does not come from the module: `battery + > relay > fuse`. */
function sourceOf(circuit: Circuit, wire: Wire, from: TerminalId): string {
  const end = wire.role === 'supply' ? 'battery.positive' : 'ground';
  const open: { at: string; path: readonly string[] }[] = [{ at: from, path: [] }];
  const seen = new Set<string>([from]);
  while (open.length > 0) {
    const { at, path } = open.shift()!;
    const part = circuit.parts.find((one) => one.name === partName(at));
    if (
      at === end ||
      (end === 'ground' && (part?.kind === 'ground-point' || at === 'battery.negative'))
    )
      return [end === 'ground' ? (part?.words ?? 'battery -') : 'battery +', ...path].join(' > ');
    const nexts = circuit.wires
      .filter((one) => one !== wire && (one.from === at || one.to === at))
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
function wireText(row: Row, width: number, { test }: DrawOptions, glyphs: Glyphs): string {
  const off = (terminal: TerminalId) => test?.setup.unplugged.includes(partName(terminal)) === true;
  const left = `${off(row.there) ? '  ' : glyphs.line}${tip(row.there, test) || glyphs.line}`;
  const right = `${tip(row.here, test) || glyphs.line}${off(row.here) ? '  ' : glyphs.line}`;
  const room = width - left.length - right.length;
  const name = ` ${spaced(row.wire.name)} `.slice(0, Math.max(0, room - 2));
  const before = Math.floor((room - name.length) / 2);
  return `${left}${glyphs.line.repeat(before)}${name}${glyphs.line.repeat(room - name.length - before)}${right}`;
}

function rightText(row: Row, test: Test | undefined): string {
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
function notes(circuit: Circuit, { test, pins }: DrawOptions, rows: readonly Row[]): string[] {
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
    if (places.length > 0) lines.push(` ${places.join('   ')}`);
  }
  for (const bridge of test.setup.bridges)
    lines.push(` ${bridgeWords(bridge)}: ${words(bridge.from)} to ${words(bridge.to)}`);
  const shown = [sensorOf(circuit).name, moduleOf(circuit).name];
  const others = test.setup.unplugged.filter((name) => !shown.includes(name));
  if (others.length > 0)
    lines.push(
      ` unplugged: ${others.map((name) => circuit.parts.find((part) => part.name === name)?.words ?? name).join(', ')}`,
    );
  return lines;
}

/** What is clipped in, in words. */
function bridgeWords({ through }: Bridge): string {
  if (through === 'lead') return 'temporary wire';
  if (through === 'test-light') return 'LED light';
  return through === 'lamp' ? 'filament lamp' : `${through.ohms} ohm`;
}

function border(
  { line, corners }: Glyphs,
  title: string,
  inner: number,
  which: 'top' | 'bottom',
): string {
  const name = title === '' ? '' : ` ${title.slice(0, inner - 3)} `;
  const [left, right] = which === 'top' ? [corners[0], corners[1]] : [corners[2], corners[3]];
  return `${left}${name === '' ? '' : line}${name}${line.repeat(Math.max(0, inner - name.length - (name === '' ? 0 : 1)))}${right}`;
}

function cell(text: string, width: number, align: 'left' | 'right'): string {
  const cut = text.length > width - 2 ? text.slice(0, width - 2) : text;
  return align === 'left' ? ` ${cut}`.padEnd(width) : `${cut} `.padStart(width);
}

function spaced(name: string): string {
  return name.replace(/-/g, ' ').replace(/^splice\./, '');
}
