/** A conclusion in words, made when it is shown: what is wrong, and what puts it right. */
import type { Circuit } from '../circuit/circuit.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { Concluded } from './events.ts';
import type { Session } from './session.ts';

/** The two sentences of a conclusion. */
export interface ConclusionWords {
  readonly title: string;
  /** Empty where a conclusion in the person's own words says all of it. */
  readonly repair: string;
}

/** What a drill that was given up says. */
const GIVEN_UP = 'Given up without a diagnosis';

/** The words of the conclusion that stands; null before there is one. */
export function conclusionWords(session: Session): ConclusionWords | null {
  return session.concluded && wordsOf(session, session.concluded);
}

function wordsOf({ opened }: Session, concluded: Concluded): ConclusionWords {
  const { job, circuit, procedure } = opened;
  const step = concluded.conclusion === null ? null : procedure?.steps[concluded.conclusion];
  if (step?.kind === 'conclude')
    return {
      title: bindText(step.title, job, circuit),
      repair: bindText(step.repair, job, circuit),
    };
  const { ownWords, faults } = concluded;
  if (faults.length === 0) return { title: ownWords ?? GIVEN_UP, repair: '' };
  const first = moduleFirst(circuit, faults);
  const puts = inOneSentence(repairsOfFaults(circuit, faults), '; ');
  const repair = bindText(first === '' ? puts : `${first} If they hold: ${puts}`, job, circuit);
  const named = bindText(faultWords(circuit, faults), job, circuit);
  return { title: ownWords ?? capital(named), repair };
}

/** Words for faults begin small, as they stand inside a sentence; a title does not. */
function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/**
 * What comes before a module is replaced, as a sentence; empty for a conclusion on anything else. Its own feeds and grounds
 * are mostly beyond the circuit, and fail oftener than it does (common practice, no source); a tree says so itself.
 */
export function moduleFirst(circuit: Circuit | null, ids: readonly string[]): string {
  const named = (circuit?.faults ?? []).filter(({ id }) => ids.includes(id));
  const module = circuit?.parts.find(({ kind }) => kind === 'module');
  if (!module || named.length === 0 || named.some((fault) => fault.class !== 'module')) return '';
  return `First test the feeds and grounds of the ${module.words} itself under load, using the maker's diagram.`;
}

/** Faults in words, those with one repair in one row. */
function faultWords(circuit: Circuit | null, ids: readonly string[]): string {
  const known = ids.map((id) => circuit?.faults.find((fault) => fault.id === id)?.words ?? id);
  return known.length <= FAULTS_NAMED
    ? known.join(', or ')
    : inOneSentence(repairsOfFaults(circuit, ids), '; ');
}
/** More faults than these are named by what puts them right. */
const FAULTS_NAMED = 3;

/** What puts faults right, each repair once, in words. */
export function repairsOfFaults(circuit: Circuit | null, ids: readonly string[]): string[] {
  const known = ids.map(
    (id) => circuit?.faults.find((fault) => fault.id === id)?.repairWords ?? id,
  );
  return [...new Set(known)];
}

/** `Mend the wire.` and `Clean the plug.` as `Mend the wire; clean the plug.` */
export function inOneSentence(sentences: readonly string[], between: string): string {
  const last = sentences.length - 1;
  return sentences
    .map((words, at) => (at < last ? words.replace(/\.$/, '') : words))
    .map((words, at) => (at > 0 ? words.replace(/^\p{Lu}(?=\p{Ll})/u, lowerCase) : words))
    .join(between);
}

function lowerCase(letter: string): string {
  return letter.toLowerCase();
}
