/** The field of the job sheet for what is known of the car: several sentences with ; between. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { knowablesOf } from '../../circuit/knowable.ts';
import { isWords, splitKnown } from '../../circuit/known-words.ts';
import type { KnownSaid } from '../../procedure/job.ts';
import { type KnownProblem, readSaid } from '../../session/read-known.ts';
import { sentence } from '../parts/sentence.ts';

/** What the field asks for. */
export const KNOWN_HINT =
  'With ; between, for example: battery at rest is 12.4 V from measured; reference is 8 V from label. Sources: maker, measured, label, other.';

/** The field's text for what a job file says. */
export function knownText(known: readonly KnownSaid[]): string {
  return known.map(({ what, is, from }) => `${what} is ${is} from ${from}`).join('; ');
}

/** What the field says, sentence by sentence; one without an "is" is all "what". */
export function knownSaid(text: string): KnownSaid[] {
  return text
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map((one) => splitKnown(one) ?? { what: one, is: '', from: '' });
}

/** What was understood of the last sentence, or what is wrong with the first that is. */
export function knownRemark(text: string, circuit: Circuit): string {
  const wrong = knownWrong(text, circuit);
  if (wrong !== null) return wrong;
  const last = knownSaid(text).at(-1);
  const read = last && readSaid(circuit, last);
  if (!read || !('quantity' in read)) return KNOWN_HINT;
  const words = knowablesOf(circuit).find(({ key }) => key === read.quantity)?.words ?? '';
  return `Understood: ${words}: ${isWords(read.is)}.`;
}

/** Why the field cannot be taken as it stands, or null. */
export function knownWrong(text: string, circuit: Circuit): string | null {
  for (const said of knownSaid(text)) {
    const read = readSaid(circuit, said);
    if (!('quantity' in read)) return problemWords(said, read);
  }
  return null;
}

function problemWords({ what, is }: KnownSaid, { words, fix }: KnownProblem): string {
  const how = is === '' ? 'write it as: WHAT is VALUE from WHERE' : fix;
  return `"${what}": ${sentence(words)} ${sentence(how)}`;
}
