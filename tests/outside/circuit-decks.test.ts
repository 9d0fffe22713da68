/**
 * Every shipped circuit against a SPICE deck of it that was written by hand from its drawing and the values of its file,
 * with faults and instruments, and is solved by ngspice. Nothing of the program's own way from a circuit file to elements
 * stands between: a wire that is left out, a test light that is too strong or a wrong curve is seen here.
 *
 * A deck is the healthy circuit at rest. Its cases follow, each a change of it:
 *
 *     *case FAULT [SIZE] | MEASURE | SETUP      what the program is asked for, in the words of `ohmward predict`
 *     *without NAME ...                         elements that are not there
 *     Rx a b 1k                                 an element, in place of one with the same name
 *     *reads V(a)-V(b)                          what the instrument then reads
 *     *lit-from A seen-from B                   how a light looks at what is read
 *
 * `low` and `high` in place of `volts` are the two ends of a moving signal; `A+B` is two faults at once, of the sizes that
 * they have alone.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Circuit, Fault } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { parseBridge, parseMeasure } from '../../src/circuit/parse-measure.ts';
import { NOMINAL } from '../../src/circuit/samples.ts';
import { numberUnitOf } from '../../src/circuit/shown-by.ts';
import {
  type Meter,
  type MeterUnit,
  type Setup,
  type Test,
  VEHICLE_STATES,
} from '../../src/circuit/test.ts';
import { freshNgspice, operatingPoint } from './ngspice.ts';

const CIRCUITS = 'procedures/circuits';
const DECKS = 'tests/outside/decks';
/** Half the last digit of a value in a deck, and of copper that is worked out in the head. */
const SHARE_MAX = 1e-3;
const LEAST_MAX: Readonly<Record<MeterUnit, number>> = { V: 1e-3, ohm: 1e-3, A: 1e-7 };
const METER: Meter = {
  name: 'ten megohm meter',
  inputOhms: 10e6,
  volts: { ranges: [600], counts: 6000, ofReading: 0.005, digits: 3 },
  ohms: { ranges: [6e7], counts: 6000, ofReading: 0.01, digits: 3 },
};
/** What no digits show: the module is deaf, the wheel is wrong, the signal drops out in passing or is upside down. */
const WITHOUT_DIGITS = [
  'input-dead',
  'damaged',
  'displaced',
  'runout',
  'worn-spot',
  'part leads-swapped',
];
const OPTIONS =
  '.options TEMP=27 TNOM=27 GMIN=1e-20 PIVTOL=1e-17 ITL1=1000 ITL2=1000 RELTOL=1e-7 ABSTOL=1e-12 VNTOL=1e-9';
/** Holds every node; a hundred thousand times a meter. */
const TIE_OHMS = 1e12;

interface Case {
  readonly title: string;
  readonly fault: string;
  readonly size: number | null;
  readonly measure: string;
  readonly setup: Setup;
  readonly lines: readonly string[];
  readonly reads: string;
  readonly looks: { readonly lit: number; readonly seen: number } | null;
}

beforeAll(freshNgspice);

const circuits = readdirSync(CIRCUITS)
  .sort()
  .map((file) => loadCircuit(readFileSync(`${CIRCUITS}/${file}`, 'utf8'), file).value!);
const decks = new Map(
  circuits.map(({ name }) => [name, casesOf(readFileSync(`${DECKS}/${name}.cir`, 'utf8'))]),
);

describe.each(circuits)('$name', (circuit) => {
  const cases = decks.get(circuit.name)!;
  const model = createModel(withSizes(circuit, cases), { samples: 1, seed: 1, meter: METER });
  test.each(cases)('$title', async (one) => {
    const theirs = await solved(one.lines, one.reads);
    const mine = readingOf(model, one);
    if (typeof mine === 'string') {
      const { lit, seen } = one.looks!;
      expect(mine).toBe(theirs >= lit ? 'lit' : theirs >= seen ? 'dim' : 'dark');
    } else if (mine === Number.POSITIVE_INFINITY)
      expect(theirs).toBeGreaterThan(METER.ohms.ranges.at(-1)!);
    else
      expect(Math.abs(mine - theirs), `${mine} here, ${theirs} in ngspice`).toBeLessThanOrEqual(
        Math.max(LEAST_MAX[unitOf(one)], SHARE_MAX * Math.abs(theirs)),
      );
  });
});

test('the decks hold every kind of fault that digits can show, and every instrument', () => {
  const all = circuits.flatMap(({ name, faults }) =>
    decks.get(name)!.map((one) => ({ ...one, of: faults.find(({ id }) => id === one.fault) })),
  );
  const kinds = new Set(circuits.flatMap(({ faults }) => faults.map(kindOf)));
  const held = all.flatMap(({ of }) => (of ? [kindOf(of)] : []));
  expect([...kinds].filter((kind) => !held.includes(kind)).sort()).toEqual(
    [...kinds].filter((kind) => WITHOUT_DIGITS.some((one) => kind.endsWith(one))).sort(),
  );
  const measures = new Set(all.map(({ measure }) => measure.split(' ')[0]));
  expect([...measures].sort()).toEqual([
    ...['amps', 'high', 'lamp', 'light', 'low', 'ohms', 'volts'],
  ]);
  const bridges = all.flatMap(({ setup }) => setup.bridges.map(({ through }) => through));
  for (const through of ['lead', 'test-light', 'lamp']) expect(bridges, through).toContain(through);
  // Nothing is measured on the road.
  const states = VEHICLE_STATES.filter((state) => state !== 'driving');
  expect(new Set(all.map(({ setup }) => setup.state))).toEqual(new Set(states));
});

test('README says how many readings there are', () => {
  const count = [...decks.values()].reduce((sum, { length }) => sum + length, 0);
  expect(readFileSync('README.md', 'utf8')).toContain(`${count} readings over every kind of fault`);
});

/** The electrical effect of a fault, and at what kind of thing. */
function kindOf({ effect }: Fault): string {
  if (effect.kind === 'wire-short')
    return `wire-short to ${typeof effect.to === 'object' ? 'a wire' : effect.to}`;
  return effect.kind === 'part' || effect.kind === 'target'
    ? `${effect.kind} ${effect.mode}`
    : effect.kind;
}

/** The circuit with faults of the sizes that its deck has. */
function withSizes(circuit: Circuit, cases: readonly Case[]): Circuit {
  const sizes = new Map(cases.flatMap(({ fault, size }) => (size === null ? [] : [[fault, size]])));
  for (const { fault, size, title } of cases)
    if (size !== null && sizes.get(fault) !== size) throw new Error(`two sizes: ${title}`);
  const sized = (fault: Fault): Fault => {
    const size = sizes.get(fault.id);
    if (size === undefined) return fault;
    const of = { low: size, high: size };
    const { effect } = fault;
    if ('ohms' in effect) return { ...fault, effect: { ...effect, ohms: of } };
    return 'size' in effect ? { ...fault, effect: { ...effect, size: of } } : fault;
  };
  return { ...circuit, faults: circuit.faults.map(sized) };
}

/** Of what is read; the ends of a signal are volts. */
function unitOf({ measure }: Case): MeterUnit {
  const probe = parseMeasure(measure);
  return 'words' in probe ? 'V' : numberUnitOf({ probe: probe.value });
}

/** What the program reads in the middle of all ranges. */
function readingOf(model: Model, { fault, measure, setup }: Case): number | string {
  const end = (['low', 'high'] as const).find((one) => measure.startsWith(one));
  const probe = parseMeasure(end ? measure.replace(end, 'volts') : measure);
  if ('words' in probe) throw new Error(probe.words);
  const asked: Test = { setup, probe: probe.value };
  if (end) return model.levels(fault, asked, NOMINAL)[end];
  const shown = model.shows(fault, asked, NOMINAL);
  return shown.kind === 'look' ? shown.look : shown.value;
}

async function solved(lines: readonly string[], reads: string): Promise<number> {
  const nodes = new Set(
    lines.flatMap((line) => (/^[a-z]/i.test(line) ? line.split(/\s+/).slice(1, 3) : [])),
  );
  const ties = [...nodes]
    .filter((node) => node !== '0')
    .map((node, index) => `Rtie${index} ${node} 0 ${TIE_OHMS}`);
  const volts = await operatingPoint([...lines, ...ties, `Breading reading 0 V=${reads}`, OPTIONS]);
  const reading = volts?.get('reading');
  if (reading === undefined) throw new Error('ngspice finds no operating point');
  return reading;
}

function casesOf(text: string): Case[] {
  const [base = '', ...blocks] = text.split(/^\*case /m);
  const title = base.split('\n', 1)[0]!;
  const healthy = elementsOf(base);
  return blocks.map((block) => {
    const [head = '', ...rest] = block.split('\n');
    const [what = '', measure = '', setup = ''] = head.split('|').map((part) => part.trim());
    const [fault = '', size] = what.split(' ');
    const after = (mark: string) => rest.find((line) => line.startsWith(mark))?.slice(mark.length);
    const without = after('*without')?.trim().split(/\s+/) ?? [];
    const elements = new Map(healthy);
    for (const name of without)
      if (!elements.delete(name)) throw new Error(`${title}: no element ${name}`);
    for (const [name, line] of elementsOf(rest.join('\n'))) elements.set(name, line);
    const looks = /\*lit-from (\S+) seen-from (\S+)/.exec(block);
    return {
      title: head,
      fault,
      size: size === undefined ? null : Number(size),
      measure,
      setup: setupOf(setup),
      lines: [title, ...elements.values()],
      reads: after('*reads')!.trim(),
      looks: looks && { lit: inSi(looks[1]!), seen: inSi(looks[2]!) },
    };
  });
}

/** Elements and models by their names. */
function elementsOf(text: string): Map<string, string> {
  const lines = text.split('\n').filter((line) => /^[a-z.]/i.test(line));
  return new Map(
    lines.map((line) => [line.split(/\s+/)[line.startsWith('.') ? 1 : 0]!, line.trim()]),
  );
}

function setupOf(text: string): Setup {
  const words = text.split(',').map((word) => word.trim());
  const after = (mark: string) =>
    words.flatMap((word) => (word.startsWith(mark) ? [word.slice(mark.length).trim()] : []));
  return {
    state: VEHICLE_STATES.find((state) => words.includes(state)) ?? 'key-on',
    unplugged: after('unplug').sort(),
    bridges: after('bridge').map((bridge) => {
      const parsed = parseBridge(bridge);
      if ('words' in parsed) throw new Error(parsed.words);
      return parsed.value;
    }),
    sensor: words.includes('spare') ? 'spare' : 'fitted',
    target: words.includes('moving') ? 'moving' : 'still',
  };
}

/** `3m` in SPICE's way. */
function inSi(text: string): number {
  return text.endsWith('m') ? Number(text.slice(0, -1)) / 1000 : Number(text);
}
