/**
 * A circuit with what a person says shares the feed or the ground of the sensor on one car. Which neighbours a feed has no
 * file knows; one that is named becomes a part at the sensor's own feed and ground, and can drag the feed down. It is at
 * the module's pin or the splice that the sensor's wire comes from, so that the sensor's own wire stays as it is.
 */
import type { Toleranced } from '../quantity/quantity.ts';
import { oneOfSeveral, unknownBetween } from '../quantity/value-at.ts';
import {
  type Circuit,
  type Fault,
  type ModulePin,
  moduleOf,
  type NeighbourPart,
  type PullChoice,
  type PullEnd,
  partName,
  sensorOf,
  type Wire,
} from './circuit.ts';
import { partFaults } from './part-faults.ts';
import { connectorsOf, terminalsOf } from './terminals.ts';

/** A neighbour by its part's name, and what of the sensor's it has too. */
export interface Neighbour {
  readonly name: string;
  readonly words: string;
  readonly feed: boolean;
  readonly ground: boolean;
}

/** What a track, a switch or a part with electronics draws, and what is left of one that is shorted. Common practice, no source. */
const OHMS = unknownBetween(250, 8000, 'ohm');
const SHORTED = unknownBetween(0.05, 20, 'ohm');
/** Beside its other faults, where the circuit has no neighbour yet. Common practice, no source. */
const WEIGHT = 0.7;
/** A level that was read lies in a range that is so much wider: the meter, and what the resistor loses. Ours. */
const READ_SHARE = 0.03;

/** The circuit with them; those that it has already are marked as told. */
export function withNeighbours(circuit: Circuit, neighbours: readonly Neighbour[]): Circuit {
  return neighbours.reduce(withOne, circuit);
}

/** The neighbours that a person has named. */
export function toldNeighbours({ parts }: Pick<Circuit, 'parts'>): NeighbourPart[] {
  return parts.filter((part) => part.kind === 'neighbour').filter(({ told }) => told);
}

/** Whether a terminal is one of these parts, or a pin elsewhere from which wires go to nothing but them. */
export function isOnlyOf(
  terminal: string,
  parts: readonly string[],
  { wires }: Pick<Circuit, 'wires'>,
): boolean {
  if (parts.includes(partName(terminal))) return true;
  const pin = terminal.replace(/\.pin$/, '');
  const fars = wires.flatMap(({ from, to }) => (from === pin ? [to] : to === pin ? [from] : []));
  return fars.length > 0 && fars.every((far) => parts.includes(partName(far)));
}

function withOne(circuit: Circuit, one: Neighbour): Circuit {
  const has = circuit.parts.find(({ kind, name }) => kind === 'neighbour' && name === one.name);
  if (has?.kind === 'neighbour') return withPart(circuit, has, { ...has, told: true });
  const { name, words } = one;
  const part: NeighbourPart = {
    kind: 'neighbour',
    ...{ name, words, pins: ['feed', 'ground'], ohms: OHMS, shorted: SHORTED, told: true },
  };
  const feed = one.feed ? branchOf(circuit, ['reference', 'supply'], `${name}-feed`) : null;
  const withFeed = feed?.circuit ?? circuit;
  const ground = one.ground ? branchOf(withFeed, ['ground'], `${name}-ground`) : null;
  const [any] = circuit.wires;
  const wire = (like: Wire, pin: 'feed' | 'ground', from: string): Wire => {
    const { measured: _, of: __, ...rest } = like;
    return { ...rest, name: `${name}-${pin}`, from, to: `${name}.${pin}` };
  };
  const own = [
    feed
      ? wire(feed.wire, 'feed', feed.from)
      : { ...wire(any!, 'feed', 'battery.positive'), role: 'supply' as const },
    ground
      ? wire(ground.wire, 'ground', ground.from)
      : { ...wire(any!, 'ground', 'battery.negative'), role: 'ground' as const },
  ];
  const base = ground?.circuit ?? withFeed;
  const parts = [...base.parts, part];
  const wires = [...base.wires, ...own];
  const connectors = connectorsOf(parts, wires);
  const made = { ...base, parts, wires, connectors, terminals: terminalsOf(connectors, parts) };
  if (!feed) return made;
  const weight = Math.max(0, ...circuit.faults.filter(isNeighbours).map((fault) => fault.weight));
  const faults = partFaults(part).map((fault) => ({ ...fault, weight: weight || WEIGHT }));
  return { ...made, faults: [...made.faults, ...faults] };
}

function isNeighbours(fault: Fault): boolean {
  return fault.class === 'neighbour';
}

/** Where the sensor's wire of such a role comes from, as a place for another wire; null where it has none. */
function branchOf(
  circuit: Circuit,
  roles: readonly Wire['role'][],
  pin: string,
): { readonly circuit: Circuit; readonly wire: Wire; readonly from: string } | null {
  const { name } = sensorOf(circuit);
  const isOurs = (end: string) => partName(end) === name;
  const wire = circuit.wires.find(
    ({ role, from, to }) => roles.includes(role) && [from, to].some(isOurs),
  );
  if (!wire) return null;
  const far = isOurs(wire.from) ? wire.to : wire.from;
  if (far.startsWith('splice.') || far.startsWith('battery.')) return { circuit, wire, from: far };
  const module = moduleOf(circuit);
  if (partName(far) !== module.name) return null;
  const at = module.inside.find((one) => `${module.name}.${one.name}` === far)!;
  const joined: ModulePin = {
    ...{ name: pin, reference: null, pull: null, input: null, ground: null },
    joinedTo: at.joinedTo ?? at.name,
  };
  const changed = {
    ...module,
    pins: [...module.pins, pin],
    inside: [...module.inside, joined],
  };
  return { circuit: withPart(circuit, module, changed), wire, from: `${module.name}.${pin}` };
}

function withPart<P extends Circuit['parts'][number]>(circuit: Circuit, part: P, to: P): Circuit {
  return { ...circuit, parts: circuit.parts.map((one) => (one === part ? to : one)) };
}

/**
 * The circuit in which the resistor behind the signal leads only to what a sister of the same kind showed: what stands at her
 * own unplugged signal, in volts. Null where none of what the circuit leaves open does, or where another pin hangs on it.
 */
export function withSisterLevel(circuit: Circuit, volts: number): Circuit | null {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ input, pull }) => input !== null && pull !== null);
  const pull = pin?.pull;
  if (!pin || !pull) return null;
  const hangs = module.inside.some((one) => one.pull?.alike === pin.name);
  if (hangs) return null;
  const all: readonly PullChoice[] =
    pull.to.kind === 'one-of' ? pull.to.ends : [{ chance: 1, end: pull.to }];
  const fitting = all.flatMap((one) => fitTo(circuit, one, volts));
  const sum = fitting.reduce((so, { chance }) => so + chance, 0);
  if (sum <= 0) return null;
  const ends = fitting.map(({ chance, end }) => ({ chance: chance / sum, end }));
  const [only] = ends;
  const to = ends.length === 1 ? only!.end : { kind: 'one-of' as const, ends };
  const inside = module.inside.map((one) =>
    one === pin ? { ...pin, pull: { ...pull, to } } : one,
  );
  return withPart(circuit, module, { ...module, inside });
}

/** What is left of one end where so many volts were seen. */
function fitTo(circuit: Circuit, { chance, end }: PullChoice, volts: number): PullChoice[] {
  if (end.kind === 'battery') return covers(circuit.battery.rest, volts) ? [{ chance, end }] : [];
  if (end.kind === 'pin') {
    const given = moduleOf(circuit).inside.find(({ name }) => name === end.pin)?.reference?.volts;
    const fits =
      given === 'battery'
        ? covers(circuit.battery.rest, volts)
        : given !== undefined && covers(given, volts);
    return fits ? [{ chance, end }] : [];
  }
  if (end.kind !== 'volts') return [];
  const parts = end.volts.oneOf ?? [{ chance: 1, value: end.volts }];
  const left = parts.filter(({ value }) => covers(value, volts));
  const share = left.reduce((so, one) => so + one.chance, 0);
  if (share <= 0) return [];
  const value = oneOfSeveral(left.map((one) => ({ ...one, chance: one.chance / share })));
  const narrowed: PullEnd = { ...end, volts: value };
  return [{ chance: chance * share, end: narrowed }];
}

function covers({ low, high }: Toleranced, volts: number): boolean {
  return volts >= low * (1 - READ_SHARE) && volts <= high * (1 + READ_SHARE);
}
