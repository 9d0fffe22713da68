/**
 * Neighbours that a circuit file assumes and nobody has named on this car: which they are no file knows, so all texts call them
 * by what they share with the sensor. One that is named, or has a pin on the job sheet, keeps its name.
 */
import { type Circuit, type NeighbourPart, partName, sensorOf } from '../circuit/circuit.ts';
import { spaced } from '../circuit/part-faults.ts';
import type { Job } from './job.ts';
import type { Procedure } from './procedure.ts';

/** What holds texts of one car. */
interface TextsOfCar {
  readonly procedure: Procedure | null;
  readonly circuit: Circuit | null;
}
/** A phrase of the texts, and what stands in its place. */
type Phrase = readonly [from: RegExp, to: string];

/** Circuit and tree with these neighbours called by their role. */
export function calledByRole(
  fitted: TextsOfCar,
  { terminals }: Pick<Job, 'terminals'>,
): TextsOfCar {
  const { circuit, procedure } = fitted;
  const pinned = Object.keys(terminals).map(partName);
  const phrases = (circuit?.parts ?? []).flatMap((part) =>
    part.kind === 'neighbour' && !part.told && !pinned.includes(part.name)
      ? phrasesOf(part, circuit!)
      : [],
  );
  if (phrases.length === 0) return fitted;
  return { circuit: inTexts(circuit, phrases), procedure: inTexts(procedure, phrases) };
}

function phrasesOf(part: NeighbourPart, circuit: Circuit): Phrase[] {
  const role = `part on the same ${sharedWith(part, circuit)}`;
  const own = circuit.wires.filter(({ from, to }) => [from, to].some(isAt(part.name)));
  const wires = own.map(({ name, role: carries }): Phrase => {
    const of = carries === 'ground' ? 'ground' : 'feed';
    return [phrase(`the ${spaced(name)} wire`), `the ${of} wire of the other ${role}`];
  });
  // Pins elsewhere that serve nothing but it: `throttle reference at the engine control module`.
  const pins = own.flatMap(({ from, to }): Phrase[] => {
    const far = isAt(part.name)(from) ? to : from;
    const of = circuit.parts.find(({ name }) => name === partName(far));
    const pin = spaced(far.slice(partName(far).length + 1));
    const kind = /(reference|feed|supply|ground)$/.exec(pin)?.[1];
    if (of?.kind !== 'module' || kind === undefined || kind === pin) return [];
    return [[phrase(pin), `${kind} for the other ${role}`]];
  });
  return [
    ...wires,
    ...pins,
    [phrase(`the ${part.words}'s feed wire`), `the feed wire of the other ${role}`],
    [phrase(`a ${part.words}`), `another ${role}`],
    [phrase(`an ${part.words}`), `another ${role}`],
    [phrase(part.words), `other ${role}`],
  ];
}

/** What the sensor's feed is called, where the neighbour hangs on it; else they share a ground. */
function sharedWith({ name }: NeighbourPart, { parts, wires }: Circuit): string {
  const sensor = sensorOf({ parts }).name;
  const feeds = wires.filter(({ role }) => role === 'reference' || role === 'supply');
  if (!feeds.some(({ from, to }) => [from, to].some(isAt(name)))) return 'ground';
  const ours = feeds.find(({ from, to }) => [from, to].some(isAt(sensor)));
  return ours?.role === 'supply' ? 'feed' : 'reference';
}

function isAt(part: string): (terminal: string) => boolean {
  return (terminal) => partName(terminal) === part;
}

/** Whole words only, in any case. */
function phrase(words: string): RegExp {
  const plain = words.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\d])${plain}(?![\\p{L}\\d])`, 'giu');
}

/** Texts are all strings with a blank in them; names have none. */
function inTexts<T>(value: T, phrases: readonly Phrase[]): T {
  if (typeof value === 'string') return (value.includes(' ') ? said(value, phrases) : value) as T;
  if (Array.isArray(value)) return value.map((one) => inTexts(one, phrases)) as T;
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, one]) => [key, inTexts(one, phrases)]);
  return Object.fromEntries(entries) as T;
}

function said(text: string, phrases: readonly Phrase[]): string {
  return phrases.reduce(
    (so, [from, to]) =>
      so.replace(from, (found) =>
        /^[A-Z]/.test(found) ? to.charAt(0).toUpperCase() + to.slice(1) : to,
      ),
    text,
  );
}
