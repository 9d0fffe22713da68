/**
 * Reads a circuit file: checks it against its schema, then its names, wires and values, lets the faults follow from the
 * structure, and keeps those that show.
 */
import { unknownBetween } from '../quantity/value-at.ts';
import { copperOhms, STRANDED } from '../quantity/wire.ts';
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { mendData } from '../source/mend-data.ts';
import { parseYaml } from '../source/parse-yaml.ts';
import { shapeIssues } from '../source/schema-issues.ts';
import type { YamlSource } from '../source/yaml-source.ts';
import { changeFaults } from './change-faults.ts';
import { checkCircuit } from './check-circuit.ts';
import {
  type Battery,
  type Circuit,
  type Fault,
  type FaultClass,
  isSensor,
  type Part,
  type Target,
  type Wire,
} from './circuit.ts';
import { deriveFaults, shareWeights } from './derive-faults.ts';
import type { CircuitDraft } from './generated/circuit.mjs';
import validate from './generated/circuit.mjs';
import { WIRE_SPREAD } from './open-values.ts';
import { readPart } from './read-part.ts';
import { UnsolvedCircuit } from './sample-solver.ts';
import { connectorsOf, terminalsOf } from './terminals.ts';
import { ValueReader } from './value-reader.ts';
import { wireRoles } from './wire-roles.ts';
import { withSymptoms } from './with-symptoms.ts';
import { withinReach } from './within-reach.ts';

/** Weight of each class unless the author says otherwise. Common practice, no source. */
export const DEFAULT_WEIGHTS: Readonly<Record<FaultClass, number>> = {
  connector: 5,
  wire: 3,
  sensor: 3,
  module: 0.3,
  supply: 1,
  neighbour: 0.7,
  target: 0.7,
};

/**
 * Faults that the module could notice, all of which are worked out in several cars: so many take up to 2 s of a processor. The
 * shipped circuits have at most 96.
 */
const FAULTS_MAX = 240;

/** What else stands before the point of a terminal, or names something to look at. */
const RESERVED = ['battery', 'splice', 'wire', 'contact', 'target', 'connector', 'harness'];

/**
 * Circuits that are kept, the last ones read: a library is read again by each command of a process and at each save of a
 * file that is watched, and which faults show takes longer than all else in it. Our choice, twice what ships.
 */
const CIRCUITS_KEPT = 12;
const kept = new Map<string, Checked<Circuit>>();

/** The circuit in `text`; null with issues when it cannot be used. The very same one for the same text, when asked again soon. */
export function loadCircuit(text: string, file: string): Checked<Circuit> {
  const key = `${file}\n${text}`;
  const circuit = kept.get(key) ?? readText(text, file);
  if (circuit.value === null) return circuit;
  kept.delete(key);
  kept.set(key, circuit);
  const [oldest] = kept.keys();
  if (kept.size > CIRCUITS_KEPT && oldest !== undefined) kept.delete(oldest);
  return circuit;
}

function readText(text: string, file: string): Checked<Circuit> {
  const parsed = parseYaml(text, file);
  if (!parsed.value) return { value: null, issues: parsed.issues };
  const { data } = parsed.value;
  if (!validate(data) || !isUsable(parsed.issues))
    return { value: null, issues: mistakesOf(parsed.value, parsed.issues) };
  const reader = new ValueReader(parsed.value);
  const circuit = readCircuit(reader, data);
  const issues = [...parsed.issues, ...reader.issues];
  return { value: isUsable(issues) ? circuit : null, issues };
}

/** Mistakes of a value by itself, wherever it stands. */
const OF_A_VALUE: ReadonlySet<string> = new Set([
  'bad-value',
  'bad-share',
  'not-positive',
  'out-of-reason',
]);

/**
 * All that can be told of a file whose shape is wrong: beside the shape its values, its terminals and its wires. Where
 * something had to be left out, other places lack it, and only the values are sure.
 */
function mistakesOf(source: YamlSource, told: readonly Issue[]): Issue[] {
  const validated = (data: unknown) => (validate(data) ? [] : (validate.errors ?? []));
  const issues = shapeIssues(told, validated(source.data), source).map(ofPassedJoint);
  const mended = mendData(source.data, validated);
  if (mended === null) return issues;
  const reader = new ValueReader(source);
  readBare(reader, mended.data as CircuitDraft);
  const isWhole = mended.lost.length === 0;
  return [...issues, ...reader.issues.filter(({ code }) => isWhole || OF_A_VALUE.has(code))];
}

/** What authors call a thing that a wire only passes. */
const PASSED = /^"kind" of .* cannot be "(?:connector|plug|joint|splice|junction|bulkhead)"$/;

function ofPassedJoint(issue: Issue): Issue {
  if (issue.code !== 'unknown-choice' || !PASSED.test(issue.words)) return issue;
  const fix =
    'a connector or splice in the middle of a wire is not a part: write the wire in one piece, and name it under "harness" of the job sheet';
  return { ...issue, fix };
}

/** Parts and wires by themselves, with the mistakes in them. */
function readBare(reader: ValueReader, draft: CircuitDraft) {
  const battery = batteryOf(reader, draft.supply ?? {});
  const celsius = reader.value(draft.temperature, '25 degC', 'degC', ['temperature']).nominal;
  const parts = Object.entries(draft.parts).map(([name, part]) => readPart(reader, name, part));
  checkPartNames(reader, parts);
  const bare = wiresOf(reader, draft.wires, celsius);
  checkWires(reader, bare, parts);
  return { battery, celsius, parts, bare };
}

function readCircuit(reader: ValueReader, draft: CircuitDraft): Circuit | null {
  const { battery, celsius, parts, bare } = readBare(reader, draft);
  if (!isUsable(reader.issues)) return null;
  const roles = wireRoles(bare, parts);
  const wires: Wire[] = bare.map((wire) => ({ ...wire, role: roles.get(wire.name) ?? 'signal' }));
  const connectors = connectorsOf(parts, wires);
  const target = draft.target
    ? {
        at: draft.target.at,
        teeth: draft.target.teeth ?? null,
        missing: draft.target.missing ?? 0,
        turns: draft.target.turns ?? 1,
        ...dutyOf(reader, draft.target.on ?? 0.5),
        ...(draft.target.ring !== undefined && { ring: draft.target.ring }),
      }
    : null;
  const unfailing: Omit<Circuit, 'faults'> = {
    name: draft.circuit,
    title: draft.title,
    notes: draft.notes ?? '',
    celsius,
    battery,
    parts,
    wires,
    connectors,
    terminals: terminalsOf(connectors, parts),
    target,
  };
  for (const { path, ...found } of checkCircuit({ ...unfailing, faults: [] }))
    reader.issues.push({ ...found, at: reader.source.locate(path, 'key') });
  if (!isUsable(reader.issues)) return null;
  const weights = { ...DEFAULT_WEIGHTS, ...draft.weights };
  const derived: Circuit = {
    ...unfailing,
    faults: deriveFaults(unfailing),
  };
  const discriminating = tellingOf(reader, derived);
  if (discriminating === null) return null;
  const telling = shareWeights(discriminating, weights);
  const faults = changeFaults(reader, draft.faults ?? {}, derived.faults, telling);
  return { ...unfailing, faults };
}

function batteryOf(reader: ValueReader, draft: NonNullable<CircuitDraft['supply']>): Battery {
  return {
    rest: reader.positive(draft.battery, '11.8 V to 14.6 V', ['supply', 'battery'], 'V'),
    cranking: reader.positive(draft.cranking, '9 V to 11.3 V', ['supply', 'cranking'], 'V'),
    running: reader.positive(draft.running, '12.5 V to 15 V', ['supply', 'running'], 'V'),
    ohms: reader.positive(draft.ohms, '20 mohm', ['supply', 'ohms']),
  };
}

/** A share of a turn, `0.5`, or what is known of it, `20 % to 80 %`. */
function dutyOf(reader: ValueReader, on: number | string): Pick<Target, 'onChance' | 'duty'> {
  if (typeof on === 'number') return { onChance: on };
  const duty = reader.share(on, ['target', 'on']);
  return duty.low === duty.high ? { onChance: duty.low } : { onChance: duty.nominal, duty };
}

function wiresOf(
  reader: ValueReader,
  drafts: CircuitDraft['wires'],
  celsius: number,
): Omit<Wire, 'role'>[] {
  return Object.entries(drafts).map(([name, { from, to, size, length }]) => {
    const area = reader.positive(size, '', ['wires', name, 'size'], 'm2');
    const metres = reader.positive(length, '', ['wires', name, 'length'], 'm');
    const ohms = (areaM2: number, long: number) =>
      copperOhms({ areaM2, metres: long, degC: celsius, factor: STRANDED.usual });
    const open = metres.low < metres.high || area.low < area.high;
    return {
      name,
      from,
      to,
      sizeSquareMetres: area.nominal,
      lengthMetres: metres.nominal,
      ohms: ohms(area.nominal, metres.nominal),
      ...(open && {
        copper: unknownBetween(
          (1 - WIRE_SPREAD) * ohms(area.high, metres.low),
          (1 + WIRE_SPREAD) * ohms(area.low, metres.high),
          'ohm',
        ),
      }),
    };
  });
}

function checkPartNames(reader: ValueReader, parts: readonly Part[]): void {
  const sensors = parts.filter(isSensor);
  const modules = parts.filter((part) => part.kind === 'module');
  if (sensors.length !== 1)
    reader.issue('one-sensor', `a circuit has one sensor, this one has ${sensors.length}`, [
      'parts',
    ]);
  if (modules.length !== 1)
    reader.issue('one-module', `a circuit has one module, this one has ${modules.length}`, [
      'parts',
    ]);
  for (const reserved of RESERVED)
    if (parts.some((part) => part.name === reserved))
      reader.issue('reserved-name', `a part cannot be called "${reserved}"`, ['parts', reserved]);
}

function checkWires(
  reader: ValueReader,
  wires: readonly Omit<Wire, 'role'>[],
  parts: readonly Part[],
): void {
  const known = [
    'battery.positive',
    'battery.negative',
    ...parts.flatMap((part) => part.pins.map((pin) => `${part.name}.${pin}`)),
  ];
  const used = new Map<string, string>();
  const spliceEnds = new Map<string, number>();
  for (const wire of wires)
    for (const end of ['from', 'to'] as const) {
      const terminal = wire[end];
      const path = ['wires', wire.name, end];
      if (terminal.startsWith('splice.')) {
        spliceEnds.set(terminal, (spliceEnds.get(terminal) ?? 0) + 1);
        continue;
      }
      if (!known.includes(terminal))
        reader.unknown(
          'unknown-terminal',
          `no terminal "${terminal}" is known`,
          terminal,
          known,
          path,
        );
      const first = used.get(terminal);
      if (first !== undefined && !terminal.startsWith('battery.'))
        reader.issue(
          'terminal-taken',
          `the wire "${first}" already ends at "${terminal}"`,
          path,
          'join wires at a splice, for example splice.feed',
        );
      used.set(terminal, wire.name);
    }
  for (const [splice, ends] of spliceEnds)
    if (ends < 2) {
      const wire = wires.find((one) => one.from === splice || one.to === splice)!;
      reader.issue('lonely-splice', `only one wire ends at "${splice}"`, ['wires', wire.name]);
    }
  for (const part of parts)
    if (isSensor(part) || part.kind === 'fuse' || part.kind === 'relay')
      for (const pin of part.pins)
        if (!used.has(`${part.name}.${pin}`))
          reader.issue('loose-pin', `no wire ends at "${part.name}.${pin}"`, ['parts', part.name]);
}

/** The faults that show; null with an issue when one of them has no operating point. */
function tellingOf(reader: ValueReader, circuit: Circuit): Fault[] | null {
  const { length } = circuit.faults.filter(withinReach(circuit));
  if (length > FAULTS_MAX) {
    reader.issue(
      'too-many-faults',
      `${length} faults follow from these wires and parts, and no more than ${FAULTS_MAX} are worked out`,
      ['wires'],
      'leave out what is not needed to test this sensor',
    );
    return null;
  }
  try {
    return withSymptoms(circuit);
  } catch (error) {
    if (!(error instanceof UnsolvedCircuit)) throw error;
    reader.issue('not-settled', error.message, ['parts'], error.fix);
    return null;
  }
}
