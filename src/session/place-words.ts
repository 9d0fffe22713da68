/** Where along its wire a fault sits, as far as the session tells: between which joints, and how far from the near one. */
import { type Circuit, partName } from '../circuit/circuit.ts';
import { betweenWords, endWords, jointAt } from '../circuit/joints.ts';
import { spaced } from '../circuit/part-faults.ts';
import type { TerminalId } from '../circuit/test.ts';
import { metresWords } from '../quantity/place-on-wire.ts';
import type { ShortPlaced } from './events.ts';
import { placesOn, type ShortStretch } from './place-short.ts';
import type { Session } from './session.ts';

/**
 * The place of these faults, as in `in the signal wire between the sensor's connector and the connector at the bulkhead, 0.8 to
 * 1.1 m from the sensor's connector`; empty where they are of several wires, or the place is no narrower than the wire.
 */
export function placeWords(session: Session, faults: readonly string[]): string {
  const { circuit } = session.opened;
  if (!circuit || faults.length === 0) return '';
  const spots = faults.map((id) => spotOf(circuit, id));
  const [first] = spots;
  if (!first || spots.some((spot) => spot?.wire !== first.wire)) return '';
  const places = placesOn(circuit, first.wire);
  const short = session.shorts.findLast(({ stretch }) => stretch.wire === first.wire);
  const isShort = faults.some((id) => effectOf(circuit, id)?.kind === 'wire-short');
  if (short?.place.told && isShort)
    return `in ${stretchWords(circuit, short.stretch)}, ${distanceWords(circuit, short)}`;
  const at = spots.flatMap((spot) => spot?.places ?? []);
  const [from, to] = [Math.min(...at), Math.max(...at)];
  if (from === 0 && to === places.length - 1) return '';
  const [near, far] = [places[from]!, places[to]!];
  const joint = jointAt(circuit.parts, near);
  if (joint && joint === jointAt(circuit.parts, far))
    return `in the ${joint.words}, at the contact of the ${spaced(first.wire)} wire`;
  // A stretch that begins before a joint or ends behind one has its contact in it.
  const ends = [from % 2 === 1 ? near : null, to % 2 === 0 ? far : null];
  const contacts = ends.flatMap((end) => (end === null ? [] : [endWords(circuit.parts, end)]));
  const more = contacts.length === 0 ? '' : `, with the contact of ${contacts.join(' and of ')}`;
  return `in the ${spaced(first.wire)} wire ${betweenWords(circuit.parts, [near, far])}${more}`;
}

/** Whether these faults lie along one wire with joints on its way, and at more than one place of it. */
export function isUnplaced(circuit: Circuit, faults: readonly string[]): boolean {
  const spots = faults.map((id) => spotOf(circuit, id));
  const [first] = spots;
  if (!first || spots.some((spot) => spot?.wire !== first.wire)) return false;
  return new Set(spots.map((spot) => Math.min(...(spot?.places ?? [])))).size > 1;
}

/** `the signal wire between the sensor's connector and the connector at the bulkhead`. */
export function stretchWords({ parts }: Circuit, { wire, from, to }: ShortStretch): string {
  return `the ${spaced(wire)} wire ${betweenWords(parts, [from, to])}`;
}

/** `0.8 to 1.1 m from the sensor's connector`, or that it cannot be told. */
export function distanceWords(
  { parts }: Circuit,
  { stretch, place }: Pick<ShortPlaced, 'stretch' | 'place'>,
): string {
  return place.told
    ? `${metresWords(place)} from ${endWords(parts, stretch.from)}`
    : 'it cannot be located: more than half of the section is left';
}

/** What a shorted wire touches: `ground`, `battery positive`, `the feed wire`. */
export function touchedWords(touches: string): string {
  if (touches === 'battery.negative') return 'ground';
  return touches === 'battery.positive' ? 'battery positive' : `the ${spaced(touches)} wire`;
}

/** Places of a wire that a fault lies between, by their numbers from the sensor outward. */
interface Spot {
  readonly wire: string;
  readonly places: readonly number[];
}

function spotOf(circuit: Circuit, id: string): Spot | null {
  const effect = effectOf(circuit, id);
  if (effect === null) return null;
  if ('terminal' in effect) {
    const joint = jointAt(circuit.parts, effect.terminal);
    if (!joint) return null;
    const wire = effect.terminal.slice(partName(effect.terminal).length + 1);
    return spotAt(circuit, wire, [effect.terminal, `${effect.terminal}.pin`]);
  }
  if (!('wire' in effect)) return null;
  const found = circuit.wires.find(({ name }) => name === effect.wire);
  return found ? spotAt(circuit, found.of ?? found.name, [found.from, found.to]) : null;
}

function spotAt(circuit: Circuit, wire: string, ends: readonly TerminalId[]): Spot | null {
  const places = placesOn(circuit, wire);
  const numbers = ends.map((end) => places.indexOf(end));
  return numbers.some((one) => one < 0) ? null : { wire, places: numbers };
}

function effectOf({ faults }: Circuit, id: string) {
  return faults.find((fault) => fault.id === id)?.effect ?? null;
}
