/** What a person types of a short: `6.6 mV, 15.5 mV`, with more behind it; and what touches what, before it. */
import type { Circuit } from '../circuit/circuit.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import type { Unit } from '../quantity/quantity.ts';
import { POSTS, placesOn, type ShortDrops, type ShortStretch } from './place-short.ts';

/** What is wrong, and what to write instead; words without a full stop. */
export interface ShortProblem {
  readonly words: string;
  readonly fix: string;
}

/** The drops as typed and as understood. */
export interface ReadDrops extends ShortDrops {
  readonly typed: string;
}

const HOW =
  'write it like "6.6 mV, 15.5 mV" or "6.6 mV, 15.5 mV; currents 0.21 A, 0.20 A; length 1.2 m"';

/** Two drops, and behind ; the currents and the length of the stretch where they are known. */
export function readDrops(text: string): ReadDrops | ShortProblem {
  const [drops = '', ...more] = text.split(';').map((one) => one.trim());
  const volts = numbers(drops, 'V');
  if (volts?.length !== 2) return { words: `"${drops}" is not two drops`, fix: HOW };
  let amps: readonly number[] | null = null;
  let length: number | null = null;
  for (const one of more) {
    const [, what = '', rest = ''] = /^(currents?|length)\s+(.+)$/i.exec(one) ?? [];
    const read = numbers(rest, what.toLowerCase() === 'length' ? 'm' : 'A');
    if (what.toLowerCase() === 'length' && read?.length === 1) length = read[0]!;
    else if (what !== '' && read?.length === 2) amps = read;
    else return { words: `"${one}" is not understood`, fix: HOW };
  }
  return {
    typed: text.trim(),
    fedFromVolts: volts[0]!,
    fedToVolts: volts[1]!,
    fedFromAmps: amps?.[0] ?? null,
    fedToAmps: amps?.[1] ?? null,
    lengthMetres: length,
  };
}

function numbers(text: string, unit: Unit): number[] | null {
  // A comma between digits is a decimal one.
  const read = text.split(/,(?!\d)|\band\b/).map((one) => parseReading(one.trim(), { unit }));
  const values = read.flatMap((one) => (one.status === 'read' ? [one.quantity.value] : []));
  return values.length === read.length && values.every(Number.isFinite) ? values : null;
}

/** What touches what; places that are left out are the ends of the whole wire. */
export interface StretchSaid {
  readonly wire: string;
  readonly touches: string;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** The stretch that is meant, `touches` being typed. Whether there is such a one, `shortFlaw` says. */
export function stretchOf(circuit: Circuit, said: StretchSaid): ShortStretch {
  return stretchOn(circuit, { ...said, touches: postOf(said.touches) });
}

/** The same with `touches` as the circuit has it. */
export function stretchOn(
  circuit: Circuit,
  { wire, touches, from, to }: StretchSaid,
): ShortStretch {
  const places = placesOn(circuit, wire);
  return {
    ...{ wire, touches },
    from: facing(from ?? places[0] ?? '', places, 'on'),
    to: facing(to ?? places.at(-1) ?? '', places, 'back'),
  };
}

/** Of a connector in between the side that the section ends at: nobody at the vehicle knows the two by their names. */
function facing(place: string, places: readonly string[], way: 'on' | 'back'): string {
  const at = places.indexOf(place);
  const isFacing = way === 'on' ? at % 2 === 0 : at % 2 === 1;
  const other = places[way === 'on' ? at + 1 : at - 1];
  const isSame = other !== undefined && bare(other) === bare(place);
  return at >= 0 && !isFacing && isSame ? other : place;
}

function bare(place: string): string {
  return place.replace(/\.pin$/, '');
}

/** The body is where the battery's negative post is; a wire called `ground` is written `ground-wire`. */
function postOf(touches: string): string {
  const word = touches.trim().toLowerCase();
  if (word === 'ground' || word === 'body') return POSTS[0];
  return word === 'battery' ? POSTS[1] : touches.trim().replace(/-wire$/, '');
}

/** `signal touching ground from sensor.signal to bulkhead.signal`; without places the whole wire. */
export function readStretch(circuit: Circuit, text: string): ShortStretch | ShortProblem {
  const [, wire, touches, from, to] =
    /^(\S+)\s+touch(?:ing|es)\s+(\S+)(?:\s+from\s+(\S+))?(?:\s+to\s+(\S+))?$/i.exec(text.trim()) ??
    [];
  return wire !== undefined && touches !== undefined
    ? stretchOf(circuit, { wire, touches, from, to })
    : {
        words: 'this does not say what is touching what',
        fix: 'write it like "signal touching ground", or "signal touching ground from sensor.signal to module.signal"',
      };
}
