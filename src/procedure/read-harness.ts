/** What a job sheet says of this car's harness: read against the circuit, in its own lines or as one text. */
import { type Circuit, partName, sensorOf } from '../circuit/circuit.ts';
import { readToleranced } from '../circuit/read-value.ts';
import type { Joint } from '../circuit/section-faults.ts';
import type { Harness, KnownWire } from '../circuit/with-harness.ts';
import { withinReason } from '../circuit/within-reason.ts';
import { nameFix } from '../source/nearest-name.ts';
import type { HarnessSaid } from './job.ts';

/** What is wrong with one line, and what to write instead; words without a full stop. */
export interface HarnessProblem {
  readonly index: number;
  readonly words: string;
  readonly fix: string;
}

/** How the one text is written. */
export const HARNESS_HINT =
  "From the sensor's connector outward, separated by ; for example connector at the bulkhead: feed, signal, at 1.2 m, 4 min; wire signal: 3 m, 0.5 mm2. A splice is written the same way.";

/** Names that other things of a circuit have. */
const TAKEN = ['battery', 'splice', 'wire', 'contact', 'target', 'connector', 'harness'];
const HARNESS_METRES_MAX = 100;

/** The harness that is meant, and everything that is wrong with what is said of it. */
export function readHarness(
  circuit: Circuit,
  said: readonly HarnessSaid[],
): { readonly harness: Harness; readonly problems: readonly HarnessProblem[] } {
  const joints: Joint[] = [];
  const wires: KnownWire[] = [];
  const problems: HarnessProblem[] = [];
  for (const [index, one] of said.entries()) {
    const names = joints.map(({ name }) => name);
    const read = one.wire === undefined ? readJoint(circuit, one, names) : readWire(circuit, one);
    if ('fix' in read) problems.push({ index, ...read });
    else if ('splice' in read) {
      const odd = oddBeside(read, joints);
      if (odd) problems.push({ index, ...odd });
      else joints.push(read);
    } else wires.push(read);
  }
  for (const { name, metres } of wires) {
    const last = joints.findLast((one) => one.wires.includes(name) && one.metres !== null);
    if (metres === null || !last || last.metres! < metres) continue;
    const index = said.findIndex(({ wire }) => wire === name);
    problems.push({
      index,
      words: `the ${name} wire ends before the ${last.words}`,
      fix: "give its length from end to end, and distances from the sensor's connector",
    });
  }
  return { harness: { joints, wires }, problems };
}

type WrongHarness = Omit<HarnessProblem, 'index'>;

function readJoint(
  circuit: Circuit,
  one: HarnessSaid,
  names: readonly string[],
): Joint | WrongHarness {
  const { connector, splice, wires = [], at, minutes = null } = one;
  const where = connector ?? splice;
  if (where === undefined || (connector !== undefined && splice !== undefined))
    return {
      words: 'this line is not a connector, a splice or a wire',
      fix: 'write one of them, for example: connector at the bulkhead',
    };
  const isSplice = splice !== undefined;
  const words = `${isSplice ? 'splice' : 'connector'} ${where.trim()}`;
  if (one.length !== undefined || one.size !== undefined)
    return { words: `the ${words} has no length or size`, fix: 'give them for a wire' };
  if (wires.length === 0)
    return {
      words: `no wire goes through the ${words}`,
      fix: `name them: ${namesOf(circuit).join(', ')}`,
    };
  for (const name of wires) {
    const wrong = wrongWire(circuit, name);
    if (wrong) return wrong;
  }
  if (new Set(wires).size < wires.length)
    return { words: `a wire goes through the ${words} twice`, fix: 'name each wire once' };
  if (isSplice && wires.length > 1)
    return {
      words: `the ${words} is of ${wires.length} wires`,
      fix: 'write a splice for each wire',
    };
  const metres = at === undefined ? null : metresOf(at);
  if (metres !== null && typeof metres === 'object') return metres;
  return { name: nameOf(where, circuit, names), words, splice: isSplice, wires, metres, minutes };
}

function readWire(circuit: Circuit, one: HarnessSaid): KnownWire | WrongHarness {
  const { wire = '', length, size } = one;
  const wrong = wrongWire(circuit, wire);
  if (wrong) return wrong;
  if (length === undefined && size === undefined)
    return {
      words: `nothing is given for the ${wire} wire`,
      fix: 'give its length or size, for example 3 m',
    };
  if (one.wires || one.at !== undefined || one.connector !== undefined || one.splice !== undefined)
    return {
      words: `the ${wire} wire has only a length and a size`,
      fix: 'write joints on lines of their own',
    };
  const metres = length === undefined ? null : metresOf(length);
  if (metres !== null && typeof metres === 'object') return metres;
  if (size === undefined) return { name: wire, metres, squareMetres: null };
  const read = readToleranced(size, 'm2');
  if (!read.ok || !withinReason(read.value))
    return { words: `"${size}" is not a wire size`, fix: 'write it like 0.5 mm2' };
  return { name: wire, metres, squareMetres: read.value.nominal };
}

function wrongWire(circuit: Circuit, name: string): WrongHarness | null {
  const known = namesOf(circuit);
  if (known.includes(name)) return null;
  const isWire = circuit.wires.some((wire) => wire.name === name);
  return {
    words: isWire ? `the ${name} wire does not end at the sensor` : `no wire is called "${name}"`,
    fix: nameFix(name, known),
  };
}

/** Distances count from the sensor, so only what ends there can be placed. */
function namesOf(circuit: Circuit): string[] {
  const { name } = sensorOf(circuit);
  return circuit.wires
    .filter(({ from, to }) => [from, to].some((end) => partName(end) === name))
    .map((wire) => wire.name);
}

function metresOf(text: string): number | WrongHarness {
  const read = readToleranced(text, 'm');
  const metres = read.ok ? read.value.nominal : 0;
  if (metres > 0 && metres <= HARNESS_METRES_MAX) return metres;
  return { words: `"${text}" is not a plausible length in a harness`, fix: 'write it like 1.2 m' };
}

/** `at the bulkhead` is called `bulkhead`; what cannot be a name, or is one already, has a number in it. */
function nameOf(where: string, { parts }: Circuit, before: readonly string[]): string {
  const slug = where
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()
    .replace(/^(at|in|on|by|behind|under|below|above|of|near) /, '')
    .replace(/^the /, '')
    .replace(/ /g, '-');
  const isFree =
    /^[a-z]/.test(slug) &&
    ![...TAKEN, ...before].includes(slug) &&
    !parts.some(({ name }) => name === slug);
  return isFree ? slug : `joint-${before.length + 1}`;
}

/** Joints stand in the order in which they are met from the sensor's connector. */
function oddBeside(joint: Joint, before: readonly Joint[]): WrongHarness | null {
  if (before.some(({ words }) => words === joint.words))
    return { words: `there are two joints "${joint.words}"`, fix: 'say where each one is' };
  const last = before.findLast(
    ({ metres, wires }) => metres !== null && wires.some((wire) => joint.wires.includes(wire)),
  );
  if (!last || joint.metres === null || joint.metres > last.metres!) return null;
  return {
    words: `the ${joint.words} is not farther from the sensor's connector than the ${last.words}`,
    fix: "write them from the sensor outward, each with its distance from the sensor's connector",
  };
}

/** The text for what a job file says. */
export function harnessText(said: readonly HarnessSaid[]): string {
  return said
    .map(({ connector, splice, wire, wires = [], at, minutes, length, size }) => {
      const head =
        connector !== undefined
          ? `connector ${connector}`
          : splice !== undefined
            ? `splice ${splice}`
            : `wire ${wire}`;
      const rest = [
        ...wires,
        ...(at === undefined ? [] : [`at ${at}`]),
        ...(minutes === undefined ? [] : [`${minutes} min`]),
        ...(length === undefined ? [] : [length]),
        ...(size === undefined ? [] : [size]),
      ];
      return `${head}: ${rest.join(', ')}`;
    })
    .join('; ');
}

/** What the one text says, line by line; what it does not understand is left to `readHarness`. */
export function harnessSaid(text: string): HarnessSaid[] {
  return text
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map(lineSaid);
}

function lineSaid(line: string): HarnessSaid {
  const colon = line.indexOf(':');
  const head = (colon < 0 ? line : line.slice(0, colon)).trim();
  const items = (colon < 0 ? '' : line.slice(colon + 1))
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');
  const wire = /^wire\s+(.+)$/i.exec(head)?.[1];
  if (wire !== undefined) {
    const size = items.find((item) => /mm2|mm²|awg/i.test(item));
    const length = items.find((item) => item !== size);
    return {
      wire: wire.trim().toLowerCase(),
      ...(length !== undefined && { length }),
      ...(size !== undefined && { size }),
    };
  }
  const splice = /^splice\s+(.+)$/i.exec(head)?.[1];
  const connector = /^connector\s+(.+)$/i.exec(head)?.[1];
  const at = items.find((item) => /^at /i.test(item));
  const minutes = items.find((item) => /^[0-9.]+\s*min/i.test(item));
  const wires = items
    .filter((item) => item !== at && item !== minutes)
    .map((item) =>
      item
        .toLowerCase()
        .replace(/ wire$/, '')
        .replace(/\s+/g, '-'),
    );
  return {
    ...(splice !== undefined && { splice: splice.trim() }),
    ...(connector !== undefined && { connector: connector.trim() }),
    ...(wires.length > 0 && { wires }),
    ...(at !== undefined && { at: at.slice('at '.length).trim() }),
    ...(minutes !== undefined && { minutes: Number.parseFloat(minutes) }),
  };
}
