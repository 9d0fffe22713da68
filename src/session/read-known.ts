/** What a person says is known of the car, in three texts, as a command or as a part of the job sheet. */
import type { Circuit } from '../circuit/circuit.ts';
import { readKnown } from '../circuit/known-values.ts';
import { readFrom } from '../circuit/known-words.ts';
import type { KnownSaid } from '../procedure/job.ts';
import type { SetValue } from './events.ts';

/** Which of the three texts is wrong, why, and what to write instead; words without a full stop. */
export interface KnownProblem {
  readonly at: keyof KnownSaid;
  readonly code: string;
  readonly words: string;
  readonly fix: string;
}

/** The value that is meant, or the first thing that is wrong with it. */
export function readSaid(circuit: Circuit, { what, is, from }: KnownSaid): SetValue | KnownProblem {
  const read = readKnown(circuit, what, is);
  if (!read.ok) {
    const { at, code, words, fix } = read;
    return { at, code, words, fix };
  }
  const source = readFrom(from);
  if (!('kind' in source)) return { at: 'from', code: 'unknown-source', ...source };
  return { quantity: read.quantity, is: read.is, typed: is.trim(), from: source };
}

/** All of a list, and what is wrong with the others, by their places in it. */
export function readAllSaid(
  circuit: Circuit | null,
  said: readonly KnownSaid[],
): {
  readonly known: readonly SetValue[];
  readonly problems: readonly (KnownProblem & { readonly index: number })[];
} {
  const read = said.map((one) => (circuit ? readSaid(circuit, one) : NO_CIRCUIT));
  return {
    known: read.filter((one) => 'quantity' in one),
    problems: read.flatMap((one, index) => ('quantity' in one ? [] : [{ ...one, index }])),
  };
}

const NO_CIRCUIT: KnownProblem = {
  at: 'what',
  code: 'no-circuit',
  words: 'there is no circuit model, so no value of the car can be set',
  fix: 'leave it out, or choose a procedure with a circuit',
};
