/**
 * Trees and circuits are written for one place of the sensor: the crankshaft, the left front wheel. Here they are put to
 * the place of the job at hand, so that every sentence, caution and report names the sensor that is tested. The place is
 * what the job sheet says, else what the first trouble code for such a sensor says.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { describeCode } from '../identify/describe-code.ts';
import type { Job } from './job.ts';
import type { Procedure } from './procedure.ts';

type SensorOn = 'crankshaft' | 'camshaft' | 'wheel';

/** Where a sensor sits, as it stands before "sensor" in a sentence: `crankshaft`, `bank 2 camshaft B`, `right rear wheel`. */
interface SensorPlace {
  readonly kind: SensorOn;
  readonly words: string;
}

const SAID =
  /^(?:(crankshaft)|(?:(intake|exhaust) )?camshaft(?: bank ([1-4]))?|((?:left|right) (?:front|rear) wheel))$/;
const WHEEL = /^(left|right) (front|rear) wheel$/;
/** How far each shaft turns with one turn of the crankshaft. */
const TURNS = { crankshaft: 1, camshaft: 0.5 } as const;

/** Places that the sensor of a circuit could have, as a person would write them; null where there is but one. */
export function placeExamples(circuit: Circuit): string | null {
  const own = ownPlace(circuit);
  if (!own) return null;
  return own.kind === 'wheel'
    ? 'left front wheel, right rear wheel'
    : 'crankshaft, intake camshaft, exhaust camshaft bank 2';
}

/** What the job sheet says of the place does not fit the circuit: in words, or null. */
export function placeProblem(
  { position }: Pick<Job, 'position'>,
  circuit: Circuit | null,
): string | null {
  if (position === undefined) return null;
  const own = circuit && ownPlace(circuit);
  if (!own) return 'the sensor of this procedure has only one position';
  const said = placeSaid(position);
  if (said && isAlike(said.kind, own.kind)) return null;
  const what = own.kind === 'wheel' ? 'wheel' : 'shaft';
  return `"${position}" is not a ${what} where the sensor of this procedure could be; for example: ${placeExamples(circuit)}`;
}

/** Circuit and tree with the sensor at the place of the job; as they are where nothing says another place. */
export function atPlaceOf<C extends Circuit | null, P extends Procedure | null>(
  job: Job,
  { circuit, procedure }: { readonly circuit: C; readonly procedure: P },
): { readonly circuit: C; readonly procedure: P } {
  const own = circuit && ownPlace(circuit);
  const place = own && placeOf(job, own);
  if (!place || place.words === own.words) return { circuit, procedure };
  const said = (text: string) => replaced(text, own, place);
  const moved = mapTexts(circuit, said);
  return {
    circuit: place.kind === own.kind ? moved : onOtherShaft(moved, place),
    procedure: mapTexts(procedure, said),
  };
}

/** Where a circuit is written for; null where that is no place this file knows. */
function ownPlace({ target }: Circuit): SensorPlace | null {
  const at = target?.at ?? '';
  if (at === 'crankshaft' || at === 'camshaft') return { kind: at, words: at };
  return WHEEL.test(at) ? { kind: 'wheel', words: at } : null;
}

function placeOf(job: Job, own: SensorPlace): SensorPlace | null {
  const said = job.position === undefined ? null : placeSaid(job.position);
  if (said) return isAlike(said.kind, own.kind) ? said : null;
  const places = job.codes.map(placeOfCode);
  return places.find((place) => place !== null && isAlike(place.kind, own.kind)) ?? null;
}

/** A wheel is no shaft; one shaft can stand for the other. */
function isAlike(one: SensorOn, other: SensorOn): boolean {
  return (one === 'wheel') === (other === 'wheel');
}

/** Of a job sheet: `exhaust camshaft bank 2`; an inlet is an intake. */
function placeSaid(text: string): SensorPlace | null {
  const match = SAID.exec(text.replace('inlet', 'intake'));
  if (!match) return null;
  const [, crankshaft, side, bank, wheel] = match;
  if (crankshaft !== undefined) return { kind: 'crankshaft', words: crankshaft };
  if (wheel !== undefined) return { kind: 'wheel', words: wheel };
  const words = [bank && `bank ${bank}`, side, 'camshaft'].filter(Boolean).join(' ');
  return { kind: 'camshaft', words };
}

function placeOfCode(code: string): SensorPlace | null {
  const found = describeCode(code);
  if (!found || found.kind === 'correlation') return null;
  const { sensorRole, which } = found;
  if (sensorRole === 'wheel') return { kind: 'wheel', words: `${which} wheel` };
  const [letter = '', ...bank] = which.split(' ');
  if (sensorRole === 'crankshaft')
    return { kind: 'crankshaft', words: letter === 'A' ? 'crankshaft' : `crankshaft ${letter}` };
  if (sensorRole !== 'camshaft') return null;
  return { kind: 'camshaft', words: [...bank, 'camshaft', letter].join(' ') };
}

/** A text about `own`, about `place` instead. What it is compared with changes too: the other shaft, the other wheel of the axle. */
function replaced(text: string, own: SensorPlace, place: SensorPlace): string {
  if (own.kind === 'wheel') {
    const axle = (words: string) => WHEEL.exec(words)?.[2] ?? '';
    const swapped: Readonly<Record<string, string>> = {
      [own.words]: place.words,
      [otherSide(own.words)]: otherSide(place.words),
      [`other ${axle(own.words)} wheel`]: `other ${axle(place.words)} wheel`,
    };
    return text.replace(/\b(?:left|right|other) (?:front|rear) wheel\b/gi, (found) =>
      likeCase(found, swapped[found.toLowerCase()] ?? found),
    );
  }
  const shaft = (words: string) =>
    words.replace(/\b(?:crankshaft|camshaft)\b/gi, (found) =>
      likeCase(found, found.toLowerCase() === own.kind ? place.words : (other ?? found)),
    );
  const other = place.kind === own.kind ? null : own.kind;
  if (other === null) return shaft(text);
  const [counts, instead] =
    place.kind === 'camshaft'
      ? [COUNTED.crankshaft, COUNTED.camshaft.replace('camshaft', place.words)]
      : [COUNTED.camshaft, COUNTED.crankshaft];
  return text.split(counts).map(shaft).join(instead);
}

/** What the live data shows of each shaft: the engine speed goes on without a camshaft's signal. Common practice, no source. */
const COUNTED = {
  crankshaft: 'the engine speed',
  camshaft: 'the camshaft position or its synchronisation',
} as const;

function otherSide(wheel: string): string {
  return wheel.startsWith('left') ? wheel.replace('left', 'right') : wheel.replace('right', 'left');
}

function likeCase(found: string, words: string): string {
  return /^[A-Z]/.test(found) ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : words;
}

/** Nothing is known of the teeth of a wheel that the circuit was not written for. */
function onOtherShaft<C extends Circuit | null>(circuit: C, { kind }: SensorPlace): C {
  if (!circuit?.target || kind === 'wheel') return circuit;
  return { ...circuit, target: { ...circuit.target, teeth: null, missing: 0, turns: TURNS[kind] } };
}

/** The same with every text in it put through `change`. */
function mapTexts<T>(value: T, change: (text: string) => string): T {
  if (typeof value === 'string') return change(value) as T & string;
  if (Array.isArray(value)) return value.map((one) => mapTexts(one, change)) as T & unknown[];
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, mapTexts(one, change)]),
  ) as T & object;
}
