/**
 * A stored circuit with values that no vehicle has, in files with a right chain: every command that reads sessions tells
 * where, with a way out, and writes nothing.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Circuit, Part, Wire } from '../../src/circuit/circuit.ts';
import { SampleSolver, UnsolvedCircuit } from '../../src/circuit/sample-solver.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';
import type { Toleranced } from '../../src/quantity/quantity.ts';
import { sealed } from '../log/events.ts';
import { programHome } from './program-home.ts';
import { begin, CIRCUIT } from './sample-session.ts';
import { TRUE_PROCEDURE } from './true-walk.ts';

const { path: home, program } = programHome();

const NAME = '20260304T083000Z-lab-00000001';

const EVENTS = begin({ procedure: TRUE_PROCEDURE }).do(
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '4.97', value: 4.97 },
).events;

/** The file with another circuit in its first event. */
function written(circuit: object): string {
  const path = join(home(), `${NAME}.jsonl`);
  const [opened, ...rest] = EVENTS;
  writeFileSync(path, sealed([{ ...opened, circuit }, ...rest]).text);
  return path;
}

const exactly = (value: number, unit: Toleranced['unit']): Toleranced => ({
  nominal: value,
  low: value,
  high: value,
  unit,
});

/** The circuit with keys of its part of this kind changed. */
function part(kind: Part['kind'], change: object): Circuit {
  const parts = CIRCUIT.parts.map((one) => (one.kind === kind ? { ...one, ...change } : one));
  return { ...CIRCUIT, parts };
}

function wire(change: Partial<Wire>): Circuit {
  return { ...CIRCUIT, wires: CIRCUIT.wires.map((one) => ({ ...one, ...change })) };
}

function battery(change: object): object {
  return { ...CIRCUIT, battery: { ...CIRCUIT.battery, ...change } };
}

/** The size of every resistive fault. */
function sized(low: number, high: number): object {
  const faults = CIRCUIT.faults.map((fault) =>
    'ohms' in fault.effect ? { ...fault, effect: { ...fault.effect, ohms: { low, high } } } : fault,
  );
  return { ...CIRCUIT, faults };
}

function pin(change: object): Circuit {
  const parts = CIRCUIT.parts.map((one) =>
    one.kind === 'module'
      ? { ...one, inside: one.inside.map((each) => ({ ...each, ...change })) }
      : one,
  );
  return { ...CIRCUIT, parts };
}

function levels(lowBelow: number, highAbove: number): Circuit {
  return pin({ input: { kind: 'levels', lowBelow, highAbove } });
}

/** Levels in what the pin's own resistor makes of them. */
function levelsOf(of: 'pull-amps' | 'pull-supply', to: object | null): Circuit {
  const unit = of === 'pull-amps' ? 1e-3 : 0.1;
  return pin({
    input: { kind: 'levels', lowBelow: 3 * unit, highAbove: 7 * unit, of },
    pull: to && { to, ohms: exactly(2200, 'ohm') },
  });
}

/** 12 or 13 V, with these chances. */
function several(...chances: number[]): Toleranced {
  const oneOf = chances.map((chance, at) => ({ chance, value: exactly(12 + at, 'V') }));
  return { nominal: 12, low: 12, high: 13, unit: 'V', oneOf };
}

const VOLTS_END = { chance: 0.5, end: { kind: 'volts', volts: exactly(5, 'V') } };

function target(change: object): object {
  return { ...CIRCUIT, target: { ...CIRCUIT.target, ...change } };
}

/** Those marked so got as far as the advisor, and nothing settled there. */
const FORGED: readonly (readonly [what: string, circuit: object, words: RegExp])[] = [
  ['a battery of 1e300 V (threw)', battery({ rest: exactly(1e300, 'V') }), /battery\.rest/],
  ['a battery of 1e-30 V', battery({ running: exactly(1e-30, 'V') }), /battery\.running/],
  ['a battery in farads (threw)', battery({ rest: exactly(1e300, 'F') }), /battery\.rest/],
  ['a battery of no voltage', battery({ rest: exactly(0, 'V') }), /battery\.rest/],
  ['a battery of null', battery({ rest: { ...exactly(12, 'V'), low: null } }), /battery\.rest/],
  [
    'a battery resistance from nothing to all (threw)',
    battery({ ohms: { ...exactly(0.02, 'ohm'), low: 1e-300, high: 1e300 } }),
    /battery\.ohms/,
  ],
  [
    'a range upside down',
    battery({ ohms: { ...exactly(0.02, 'ohm'), low: 0.03 } }),
    /low end is above its high end \(circuit\.battery\.ohms\)/,
  ],
  ['an output of 1e30 ohm (threw)', part('hall-switch', { on: exactly(1e30, 'ohm') }), /parts\./],
  [
    'a sensor that draws 1e-30 A (threw)',
    part('hall-switch', { draws: exactly(1e-30, 'A') }),
    /draws/,
  ],
  ['a limit of 1e-300 A (threw)', part('hall-switch', { limit: exactly(1e-300, 'A') }), /limit/],
  ['a resistance below zero', part('hall-switch', { on: exactly(-50, 'ohm') }), /parts\[\d\]\.on/],
  [
    'a voltage in ohms',
    part('hall-switch', { minimum: exactly(3.8, 'ohm') }),
    /in the wrong unit \(circuit\.parts\.\d\.minimum\)/,
  ],
  ['a ground of 1e30 ohm (threw)', pin({ ground: exactly(1e30, 'ohm') }), /ground/],
  [
    'a pull-up of 1e300 ohm (threw)',
    pin({ pull: { to: { kind: 'battery' }, ohms: exactly(1e300, 'ohm') } }),
    /pull/,
  ],
  ['levels of 1e300 V', levels(1e300, 1e301), /parts, "module"/],
  ['a low level above the high one', levels(4, 1), /input/],
  ['wires of 1e30 ohm (threw)', wire({ ohms: 1e30 }), /wires/],
  ['faults of 1e-5 ohm (threw)', sized(1e-5, 1e-5), /faults/],
  ['copper of 1e30 ohm', wire({ copper: exactly(1e30, 'ohm') }), /wires/],
  ['a duty of ten turns', target({ duty: exactly(10, '1') }), /target\.duty/],
  [
    'a duty upside down',
    target({ duty: { ...exactly(0.5, '1'), low: 0.6 } }),
    /low end is above its high end \(circuit\.target\.duty\)/,
  ],
  ['levels in amperes through no resistor', levelsOf('pull-amps', null), /no resistor to ground/],
  [
    'levels in amperes through a pull-up',
    levelsOf('pull-amps', { kind: 'battery' }),
    /no resistor to ground/,
  ],
  ['levels of the supply of no pull-up', levelsOf('pull-supply', null), /no pull-up/],
  [
    'a pull-up to two voltages of its own',
    pin({
      pull: {
        to: { kind: 'one-of', ends: [VOLTS_END, VOLTS_END] },
        ohms: exactly(2200, 'ohm'),
      },
    }),
    /chances/,
  ],
  [
    'several voltages whose chances do not come to one',
    battery({ rest: several(0.2, 0.2) }),
    /chances that do not come to 1.*\(circuit\.battery\.rest\)/,
  ],
  [
    'a value that lies outside its own alternatives',
    battery({ rest: { ...several(0.5, 0.5), low: 10 } }),
    /battery\.rest/,
  ],
  [
    'one of several of which one is of several again',
    battery({ rest: { ...several(0.5, 0.5), oneOf: [{ chance: 1, value: several(0.5, 0.5) }] } }),
    /battery\.rest/,
  ],
  [
    'even decades from below zero',
    part('hall-switch', { on: { ...exactly(50, 'ohm'), low: -1, spread: 'log' } }),
    /parts/,
  ],
  [
    'even decades of a bias from nothing',
    pin({
      pull: {
        to: { kind: 'volts', volts: { ...exactly(5, 'V'), low: 0, spread: 'log' } },
        ohms: exactly(2200, 'ohm'),
      },
    }),
    /logarithmic range that starts at zero/,
  ],
  ['wires of no length', wire({ lengthMetres: 1e-30 }), /wires/],
  ['wires as thick as a house', wire({ sizeSquareMetres: 1e30 }), /wires/],
  ['faults of 1e30 ohm (threw)', sized(1e30, 1e30), /faults/],
  ['shorts of 1e-300 ohm (threw)', sized(1e-300, 1e-300), /faults/],
  ['a harness as hot as a star', { ...CIRCUIT, celsius: 1e30 }, /celsius/],
  [
    'a resistor like that of a pin which is not there (threw)',
    pin({ pull: { to: { kind: 'battery' }, ohms: exactly(2200, 'ohm'), ohmsAs: 'nowhere' } }),
    /like that of a pin which has none/,
  ],
  ['a wheel of half a tooth', target({ teeth: 0.5 }), /target/],
  ['a wheel of 1e30 teeth', target({ teeth: 1e30 }), /target/],
  ['more teeth missing than there are', target({ teeth: 2, missing: 3 }), /target/],
  ['a wheel that turns 1e30 times', target({ turns: 1e30 }), /target/],
  [
    'a fault of infinite weight',
    { ...CIRCUIT, faults: CIRCUIT.faults.map((one) => ({ ...one, weight: 1e308 })) },
    /weight/,
  ],
  [
    'no fault of any weight',
    { ...CIRCUIT, faults: CIRCUIT.faults.map((one) => ({ ...one, weight: 0 })) },
    /weight/,
  ],
];

const RESUME = ['resume', NAME, '--plain'];
const COMMANDS: readonly (readonly string[])[] = [
  ['records', 'verify', NAME],
  ['records', 'show', NAME],
  ['records', 'export', NAME],
  ['drill', '--resume', 'PATH'],
];

async function expectRefused(args: readonly string[], circuit: object, words: RegExp) {
  const path = written(circuit);
  const before = readFileSync(path);
  // A file that is believed would be asked about on the screen, and nobody answers there.
  expect(readSessionFile(nodeDisk, path).ok).toBe(false);
  const { code, out, err } = await program(...args.map((arg) => (arg === 'PATH' ? path : arg)));
  const told = out + err;
  expect(told).not.toContain('fault of the program');
  expect(code).toBe(1);
  expect(told).toContain(`${NAME}.jsonl:1`);
  expect(told).toMatch(words);
  expect(told).toMatch(/keep the file|use that version|drills are .jsonl files/i);
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(home()).filter((name) => name.startsWith(NAME))).toEqual([`${NAME}.jsonl`]);
}

it.each(FORGED)('%s', async (_, circuit, words) => {
  await expectRefused(RESUME, circuit, words);
});

// All come through the same door; what the schema finds, and what it does not.
describe.each([FORGED[0]!, FORGED[4]!])('%s', (_, circuit, words) => {
  it.each(COMMANDS.map((args) => [args.join(' '), args] as const))('%s', async (_what, args) => {
    await expectRefused(args, circuit, words);
  });
});

it('more wires than any harness has are counted and not looked at', () => {
  const [first] = CIRCUIT.wires;
  const wires = Array.from({ length: 201 }, (_, n) => ({ ...first, name: `w${n}` }));
  const path = written({ ...CIRCUIT, wires });
  expect(readSessionFile(nodeDisk, path)).toMatchObject({
    ok: false,
    flaw: { line: 1, words: expect.stringContaining('"circuit.wires"') },
  });
});

describe('a circuit that only the measured tests show to be none', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it.each([
    ['resume', NAME, '--plain'],
    ['resume', NAME, '--rpc'],
  ])('is refused before a byte is written: %s', async (...args) => {
    const path = written({ ...CIRCUIT, name: 'never-at-rest' });
    const torn = `${readFileSync(path, 'utf8')}{"at":"2026-`;
    writeFileSync(path, torn);
    // No file is known that gets so far: what does not settle at rest is refused at the door.
    vi.spyOn(SampleSolver.prototype, 'volts').mockImplementation(() => {
      throw new UnsolvedCircuit('no operating point was found');
    });
    const { code, out, err } = await program(...args.map((arg) => (arg === 'PATH' ? path : arg)));
    expect(code).toBe(1);
    expect(out + err).toMatch(new RegExp(`${NAME}.jsonl:1: event 1 .*no operating point`));
    expect(out + err).toMatch(/keep the file/i);
    expect(readFileSync(path, 'utf8')).toBe(torn);
    expect(readdirSync(home()).filter((name) => name.startsWith(NAME))).toHaveLength(1);
  });
});

it('the circuit that these are made of is a good one', async () => {
  written(CIRCUIT);
  for (const verb of ['verify', 'show', 'export'])
    expect([verb, (await program('records', verb, NAME)).code]).toEqual([verb, 0]);
});
