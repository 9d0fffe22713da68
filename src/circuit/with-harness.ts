/**
 * A circuit with the connectors and splices of one car's harness put in: each wire that passes them becomes sections with
 * faults of their own, and each contact a suspect. Faults, weights and sizes come from the whole wire and its plug, so
 * that the same harness always gives the same circuit and nothing needs to be solved:
 * a section fails as often as its share of the length says, a contact as often as the one in the sensor's connector.
 */
import { mapped, unknownBetween } from '../quantity/value-at.ts';
import { copperOhms, STRANDED } from '../quantity/wire.ts';
import { type Circuit, type JointPart, partName, sensorOf, type Wire } from './circuit.ts';
import { WIRE_SPREAD } from './open-values.ts';
import {
  type Cut,
  type Joint,
  ofContacts,
  ofSections,
  type WireSection,
} from './section-faults.ts';
import { connectorsOf, terminalsOf } from './terminals.ts';

/** What is known of the harness of one car: joints from the sensor's connector outward, and copper. */
export interface Harness {
  readonly joints: readonly Joint[];
  readonly wires: readonly KnownWire[];
}
/** Length and size of a wire, as far as they are known of this car; SI units. */
export interface KnownWire {
  readonly name: string;
  /** From end to end; null where it is not known. */
  readonly metres: number | null;
  readonly squareMetres: number | null;
}

/** The circuit of this car, and what each fault of the whole wires has become. */
export interface WithHarness {
  readonly circuit: Circuit;
  /** Faults of sections and contacts by the fault of the whole wire that they count as. */
  readonly becomes: ReadonlyMap<string, readonly string[]>;
}

/** A size that nobody gives lies between the usual one and so many times more or less: 0.35 to 0.75 mm2. Common practice, no source. */
const SIZE_FACTOR = 1.5;
/** No section has less, so that its values stay within what a circuit may have. */
const OHMS_MIN = 1e-3;
/** A wire that no joint's distance fits any more is taken to go on for this part of the distance. Our choice. */
const GOES_ON = 0.25;

/** The circuit with the harness in it; the faults of a wire without joints stay as they are. */
export function withHarness(circuit: Circuit, harness: Harness): WithHarness {
  const cuts = circuit.wires.map((wire) => cutOf(circuit, wire, harness));
  const wires = cuts.flatMap(({ sections }) => sections.map(({ wire }) => wire));
  const parts = [...circuit.parts, ...harness.joints.map(jointPart)];
  const connectors = connectorsOf(parts, wires);
  const made = { ...circuit, parts, wires, connectors, terminals: terminalsOf(connectors, parts) };
  const becomes = new Map<string, readonly string[]>();
  const faults = circuit.faults.flatMap((fault) => {
    const own = ofSections(fault, cuts, made);
    const contacts = ofContacts(fault, harness.joints, circuit);
    if (own)
      becomes.set(
        fault.id,
        own.map(({ id }) => id),
      );
    return [...(own ?? [fault]), ...contacts];
  });
  for (const { whole, sections } of cuts)
    if (sections.length > 1)
      for (const mode of ['open', 'resistive'] as const) {
        const id = `wire.${whole.name}.${mode}`;
        const passed = harness.joints.filter((joint) => joint.wires.includes(whole.name));
        const contacts = passed
          .map(({ name }) => `contact.${name}.${whole.name}.${mode}`)
          .filter((contact) => faults.some((fault) => fault.id === contact));
        becomes.set(id, [...(becomes.get(id) ?? []), ...contacts]);
      }
  return { circuit: { ...made, faults }, becomes };
}

function jointPart({ name, words, splice, metres, minutes, wires }: Joint): JointPart {
  return { kind: 'joint', name, words, pins: wires, splice, metres, minutes };
}

function cutOf(circuit: Circuit, given: Wire, harness: Harness): Cut {
  const known = harness.wires.find(({ name }) => name === given.name);
  const whole = known ? withKnownCopper(given, known, circuit.celsius) : given;
  const places = harness.joints.flatMap((joint, place) =>
    joint.wires.includes(given.name) ? [{ joint, place }] : [],
  );
  if (places.length === 0)
    return { whole, sections: [{ wire: whole, share: 1, between: [-1, Infinity] }] };
  const isKnown = known?.metres != null;
  const { metres, isMeasured } = lengthsOf(
    places.map(({ joint }) => joint.metres),
    whole.lengthMetres,
    isKnown,
  );
  const { measured: _, ...rest } = whole;
  const sensor = sensorOf(circuit).name;
  const fromSensor = partName(whole.from) === sensor;
  const [near, far] = fromSensor ? [whole.from, whole.to] : [whole.to, whole.from];
  const at = ({ joint }: (typeof places)[number]) => `${joint.name}.${whole.name}`;
  const all = metres.reduce((sum, one) => sum + one, 0);
  const sections = metres.map((lengthMetres, index): WireSection => {
    const [before, after] = [places[index - 1], places[index]];
    const from = before ? `${at(before)}.pin` : near;
    const to = after ? at(after) : far;
    // Of the copper that the file gives the whole wire.
    const part = lengthMetres / whole.lengthMetres;
    return {
      share: lengthMetres / all,
      between: [before?.place ?? -1, after?.place ?? Infinity],
      wire: {
        ...rest,
        ...(isMeasured && (after || isKnown) && { measured: true as const }),
        name: `${whole.name}.${index + 1}`,
        of: whole.name,
        from,
        to,
        ohms: part * whole.ohms,
        lengthMetres,
        ...(whole.copper && {
          copper: mapped(whole.copper, (ohms) => Math.max(OHMS_MIN, part * ohms), 'ohm'),
        }),
      },
    };
  });
  return { whole, sections };
}

/** Known length or size narrow the copper; with both there is only the usual spread left. */
function withKnownCopper(wire: Wire, { metres, squareMetres }: KnownWire, celsius: number): Wire {
  const { copper, ...rest } = wire;
  const lengthMetres = metres ?? wire.lengthMetres;
  const sizeSquareMetres = squareMetres ?? wire.sizeSquareMetres;
  const ohms = copperOhms({
    areaM2: sizeSquareMetres,
    metres: lengthMetres,
    degC: celsius,
    factor: STRANDED.usual,
  });
  const measured = metres === null ? {} : { measured: true as const };
  const plain = { ...rest, ...measured, ohms, lengthMetres, sizeSquareMetres };
  if (!copper || (metres !== null && squareMetres !== null)) return plain;
  if (metres === null)
    return { ...plain, copper: mapped(copper, (value) => (value * ohms) / wire.ohms, 'ohm') };
  const low = ((1 - WIRE_SPREAD) * ohms) / SIZE_FACTOR;
  return { ...plain, copper: unknownBetween(low, (1 + WIRE_SPREAD) * ohms * SIZE_FACTOR, 'ohm') };
}

/**
 * Lengths of the sections from the sensor outward. Distances count where all of them are known; else the sections are taken
 * as equal. What lies behind the last joint is as long as the whole wire leaves it.
 */
function lengthsOf(
  distances: readonly (number | null)[],
  wholeMetres: number,
  isKnown: boolean,
): { readonly metres: readonly number[]; readonly isMeasured: boolean } {
  const known = distances.filter((one) => one !== null);
  const last = known.at(-1);
  if (last === undefined || known.length < distances.length) {
    const count = distances.length + 1;
    return { metres: Array(count).fill(wholeMetres / count), isMeasured: false };
  }
  const end = isKnown ? wholeMetres : Math.max(wholeMetres, last * (1 + GOES_ON));
  return {
    metres: [...known, end].map((to, index) => to - (known[index - 1] ?? 0)),
    isMeasured: true,
  };
}
