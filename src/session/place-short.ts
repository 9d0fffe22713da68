/**
 * Location of a short within a stretch of wire: how it is measured on a circuit, what keeps it from being measured, and
 * what the two drops come to. `quantity/place-on-wire.ts` has the method.
 */
import { type Circuit, type Part, partName, sensorOf, type Wire } from '../circuit/circuit.ts';
import { wayFrom } from '../circuit/joints.ts';
import { joinedTo } from '../circuit/nets.ts';
import { CONTACT, copperOf } from '../circuit/open-values.ts';
import { PLAIN_SETUP } from '../circuit/plain-setup.ts';
import type { Bridge, Meter, Setup, TerminalId, Test } from '../circuit/test.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import {
  DROP_MAX,
  type PlaceOnWire,
  placeOnWire,
  type Stretch,
} from '../quantity/place-on-wire.ts';

/** What touches what, and between which two places on the wire the drops are read. */
export interface ShortStretch {
  /** The whole wire by its name: `signal`. */
  readonly wire: string;
  /** A battery post, which is the body for the negative one, or another wire by its name. */
  readonly touches: string;
  /** From the sensor outward. */
  readonly from: TerminalId;
  readonly to: TerminalId;
}

/** What was read: volts along the stretch, fed at either end; amperes where they were measured; a length where it was typed. */
export interface ShortDrops {
  readonly fedFromVolts: number;
  readonly fedToVolts: number;
  readonly fedFromAmps: number | null;
  readonly fedToAmps: number | null;
  readonly lengthMetres: number | null;
}

export const POSTS = ['battery.negative', 'battery.positive'] as const;

/** Places on a wire where both leads of the method can go, from the sensor outward; none for a wire that there is not. */
export function placesOn(circuit: Circuit, wire: string): readonly TerminalId[] {
  const way = wayOf(circuit, wire);
  return way ? [way.here, ...way.passed.flatMap(({ near, far }) => [near, far]), way.end] : [];
}

/** Of the places on a wire those where a section begins, and those where one ends. */
export function begins(places: readonly TerminalId[]): readonly TerminalId[] {
  return places.filter((_, at) => at % 2 === 0);
}
/** The other half of them. */
export function finishes(places: readonly TerminalId[]): readonly TerminalId[] {
  return places.filter((_, at) => at % 2 === 1);
}

/** Parts whose electronics or loads hang on the wire or on what it touches: all of them come off. */
export function mustBeOff(
  circuit: Circuit,
  { wire, touches }: Pick<ShortStretch, 'wire' | 'touches'>,
): readonly string[] {
  const metal = new Set(
    [wire, touches].flatMap((name) =>
      placesOn(circuit, name)
        .slice(0, 1)
        .flatMap((at) => [...bareMetal(circuit, at)]),
    ),
  );
  return circuit.parts
    .filter((part) => isLoad(part) && part.pins.some((pin) => metal.has(`${part.name}.${pin}`)))
    .map(({ name }) => name)
    .sort();
}

/** Copper that hangs together once everything that can draw a current is unplugged. */
function bareMetal(circuit: Circuit, terminal: TerminalId): ReadonlySet<TerminalId> {
  const unplugged = circuit.parts.filter(isLoad).map(({ name }) => name);
  return joinedTo(circuit, { ...PLAIN_SETUP, state: 'key-off', unplugged }, terminal);
}

function isLoad({ kind }: Part): boolean {
  return kind !== 'fuse' && kind !== 'ground-point' && kind !== 'joint';
}

/** The stretch fed at one end, as a test: a lamp from the battery, the meter along the wire. */
export function testOfShort(circuit: Circuit, stretch: ShortStretch, fed: 'from' | 'to'): Test {
  const { touches, from, to } = stretch;
  const [near, far] = fed === 'from' ? [from, to] : [to, from];
  const isToBattery = touches === 'battery.positive';
  const other = placesOn(circuit, touches)[0];
  const bridges: Bridge[] = [
    { from: isToBattery ? 'battery.negative' : 'battery.positive', to: near, through: 'lamp' },
    // What it touches is led back by a fused lead, unless it is a post or bolted to the body already.
    ...(other === undefined || bareMetal(circuit, other).has('battery.negative')
      ? []
      : [{ from: other, to: 'battery.negative', through: 'lead' } as const]),
  ];
  const setup: Setup = {
    ...PLAIN_SETUP,
    state: 'key-off',
    unplugged: mustBeOff(circuit, stretch),
    bridges,
  };
  return { setup, probe: { kind: 'volts', plus: near, minus: far } };
}

/**
 * Why the place cannot be measured so, as a sentence without a full stop, and the way out; null where it can. Before
 * anything is read, whether the stretch is one.
 */
export function shortFlaw(
  circuit: Circuit,
  stretch: ShortStretch,
  drops: ShortDrops | null,
): readonly [words: string, fix: string] | null {
  const { wire, touches, from, to } = stretch;
  const wires = sensorWires(circuit);
  const places = placesOn(circuit, wire);
  if (places.length === 0)
    return [`no wire of the sensor is called "${wire}"`, `one of: ${wires.join(', ')}`];
  const isPost = (POSTS as readonly string[]).includes(touches);
  if (!isPost && (touches === wire || !wires.includes(touches)))
    return [
      `the ${wire} wire cannot touch "${touches}" here`,
      `ground, battery, or one of: ${wires.filter((one) => one !== wire).join(', ')}`,
    ];
  const [start, end] = [places.indexOf(from), places.indexOf(to)];
  if (start < 0 || end < 0 || start >= end || start % 2 === 1 || end % 2 === 0)
    return [
      `the ${wire} wire has no section from ${from} to ${to}, from the sensor outward`,
      `write from one of ${begins(places).join(', ')} to one of ${finishes(places).join(', ')}`,
    ];
  const metal = bareMetal(circuit, from);
  if (POSTS.some((post) => metal.has(post)))
    return [
      `the ${wire} wire is still connected to the battery with everything unplugged`,
      'disconnect it there first: its fuse, its relay or its ground',
    ];
  if (drops === null) return null;
  if (stretchesOf(circuit, stretch, drops.lengthMetres) === null)
    return [
      'the length of this section is not known',
      'give it after the drops, as in "length 1.2 m", or give the harness on the job sheet',
    ];
  const { fedFromVolts, fedToVolts, fedFromAmps, fedToAmps, lengthMetres } = drops;
  if ([fedFromVolts, fedToVolts].some((volts) => !(Math.abs(volts) <= DROP_MAX)))
    return [
      'no good wire drops that much at a few tenths of an ampere',
      'write millivolts, as in "6.6 mV"',
    ];
  if (Math.abs(fedFromVolts) + Math.abs(fedToVolts) === 0)
    return [
      'there is no drop at either end, so no current is flowing',
      'check whether the lamp is lit',
    ];
  const amps = [fedFromAmps, fedToAmps].filter((one) => one !== null);
  if (amps.length === 1 || amps.some((one) => !(one > 0 && one <= AMPS_MAX)))
    return ['two currents are needed, or none', 'write both, as in "currents 0.21 A, 0.20 A"'];
  if (lengthMetres !== null && !(lengthMetres > 0 && lengthMetres <= METRES_MAX))
    return [
      'this is not a plausible length for a wire in a harness',
      'write it like "length 1.2 m"',
    ];
  return null;
}

/** More current than a lamp of this method draws. */
const AMPS_MAX = 1;
const METRES_MAX = 100;

/** Where the short is, of drops without a flaw. */
export function placeOfShort(
  circuit: Circuit,
  stretch: ShortStretch,
  drops: ShortDrops,
  meter: Meter,
): PlaceOnWire {
  const drop = (volts: number) => ({
    volts,
    limitVolts: meterUncertainty(meter.volts, volts).limit,
  });
  const { fedFromVolts, fedToVolts, fedFromAmps, fedToAmps, lengthMetres } = drops;
  const place = placeOnWire({
    fedHere: drop(fedFromVolts),
    fedThere: drop(fedToVolts),
    currents: fedFromAmps === null || fedToAmps === null ? 1 : fedFromAmps / fedToAmps,
    stretches: stretchesOf(circuit, stretch, lengthMetres)!,
  });
  if (!place) throw new Error('place-short: drops without a flaw have a place');
  return rounded(place);
}

/** To a tenth of a millimetre, so that a file says no more than was known. */
function rounded(place: PlaceOnWire): PlaceOnWire {
  const to = (value: number) => Math.round(value * 1e4) / 1e4;
  return {
    share: to(place.share),
    metres: to(place.metres),
    lowMetres: to(place.lowMetres),
    highMetres: to(place.highMetres),
    lengthMetres: to(place.lengthMetres),
    told: place.told,
  };
}

/** Null where a length is not known. A typed one is of a stretch without a joint. */
function stretchesOf(
  circuit: Circuit,
  { wire, from, to }: ShortStretch,
  typed: number | null,
): Stretch[] | null {
  const way = wayOf(circuit, wire);
  if (!way) return null;
  const places = placesOn(circuit, wire);
  const [start, end] = [places.indexOf(from), places.indexOf(to)];
  // Section i runs from place 2i to place 2i + 1; a joint's contact lies between those.
  const inside = way.sections
    .map((section, at) => ({ section, near: 2 * at, far: 2 * at + 1 }))
    .filter(({ near, far }) => near >= start && far <= end);
  const isPlain = inside.length === 1;
  const stretches = inside.map(({ section, far }): Stretch | null => {
    const metres =
      isPlain && typed !== null ? typed : section.measured ? section.lengthMetres : null;
    if (metres === null) return null;
    const copper = copperOf(section);
    return {
      metres,
      ohmsPerMetre: [copper.low / section.lengthMetres, copper.high / section.lengthMetres],
      jointOhms: far < end ? [CONTACT.low, CONTACT.high] : null,
    };
  });
  return stretches.length > 0 && stretches.every((one) => one !== null) ? stretches : null;
}

function sensorWires(circuit: Circuit): string[] {
  const { name } = sensorOf(circuit);
  return circuit.wires
    .filter(({ from, to }) => [from, to].some((end) => partName(end) === name))
    .map(({ name: own, of }) => of ?? own);
}

function wayOf(circuit: Circuit, wire: string) {
  const { name } = sensorOf(circuit);
  const isAtSensor = ({ from, to }: Wire) => [from, to].some((end) => partName(end) === name);
  const first = circuit.wires.find((one) => (one.of ?? one.name) === wire && isAtSensor(one));
  if (!first) return null;
  const here = partName(first.from) === name ? first.from : first.to;
  return { here, ...wayFrom(circuit, first, here) };
}
