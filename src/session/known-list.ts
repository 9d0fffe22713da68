/** What of a car can be known, what is known of it, and what its readings have shown: for lists and prompts. */
import { type Knowable, knowablesOf } from '../circuit/knowable.ts';
import { readIs } from '../circuit/known-values.ts';
import { describedWords, isWords, sourceWords } from '../circuit/known-words.ts';
import type { CarView } from './car-view.ts';
import type { SetValue } from './events.ts';
import { knownNow } from './known-circuit.ts';
import type { Session } from './session.ts';

/** One value of the car, described, known and shown side by side. */
export interface KnownLine {
  readonly quantity: string;
  /** `battery at rest` */
  readonly words: string;
  /** As the circuit file has it: `11.8 to 14.6 V`. */
  readonly described: string;
  /** What it can be instead of a value: `battery`. */
  readonly ways: readonly string[];
  /** What was set, by the job sheet or in the session. */
  readonly known: SetValue | null;
  /** What the readings have shown: `about 11.9 V`. */
  readonly shown: string | null;
  /** The readings disagree with what is described or was set: the first thing to make sure of. */
  readonly disagrees: boolean;
}

/** Everything that can be known of the session's car: what disagrees first, then what is known; none without a circuit or on a drill. */
export function knownLines(session: Session, car: CarView | null): readonly KnownLine[] {
  const { circuit, vehicle } = session.opened;
  if (circuit === null || vehicle.kind === 'drill') return [];
  const known = new Map(knownNow(session).map((one) => [one.quantity, one]));
  const shown = new Map(car?.values.map((one) => [one.quantity, one.shown]));
  const odd = car?.misfit.value ?? null;
  if (odd) shown.set(odd.quantity, odd.shown);
  const lines = knowablesOf(circuit).map((one) => ({
    quantity: one.key,
    words: one.words,
    described: describedWords(one),
    ways: one.ways,
    known: known.get(one.key) ?? null,
    shown: [one.key, ...one.also].map((key) => shown.get(key)).find(Boolean) ?? null,
    disagrees: odd !== null && [one.key, ...one.also].includes(odd.quantity),
  }));
  const place = ({ disagrees, known: set }: KnownLine) => (disagrees ? 0 : set ? 1 : 2);
  return lines.sort((a, b) => place(a) - place(b));
}

/** `12.2 to 12.6 V (measured)`; for what nobody said, what the readings show, or what the circuit has. */
export function knownWords({ known, described, shown, disagrees }: KnownLine): string {
  if (disagrees)
    return `! ${known ? isWords(known.is) : described}, but the readings show ${shown}`;
  if (known) return `${isWords(known.is)} (${sourceWords(known.from)})`;
  return shown === null ? `as described, ${described}` : `${shown}, as the readings show`;
}

/** What was set, as a sentence: `battery at rest: 12.2 to 12.6 V (measured)`. */
export function setWords(session: Session, { quantity, is, from }: SetValue): string {
  const words = quantityNamed(session, quantity)?.words ?? quantity;
  return is === null ? `${words}: cleared` : `${words}: ${isWords(is)} (${sourceWords(from)})`;
}

/** What of the circuit has this key; undefined where there is none. */
export function quantityNamed({ opened }: Session, key: string): Knowable | undefined {
  return opened.circuit ? knowablesOf(opened.circuit).find((one) => one.key === key) : undefined;
}

/** What a text that is being typed comes to, for the line under the prompt; `ok` when it can be taken. */
export function typedIs(
  one: Knowable,
  typed: string,
): { readonly ok: boolean; readonly words: string } {
  const read = readIs(one, typed.trim());
  if (read !== null && 'code' in read) return { ok: false, words: `${read.words}; ${read.fix}` };
  return { ok: true, words: `Understood: ${one.words}: ${isWords(read)}` };
}
