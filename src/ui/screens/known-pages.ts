/** Setting a value of the car: which one, what it is, from where. No React. */
import { KNOWN_FROM, readFrom } from '../../circuit/known-words.ts';
import type { SessionEvent } from '../../session/events.ts';
import {
  type KnownLine,
  knownLines,
  knownWords,
  quantityNamed,
  setWords,
  typedIs,
} from '../../session/known-list.ts';
import { readSaid } from '../../session/read-known.ts';
import type { Session } from '../../session/session.ts';
import { sentence } from '../parts/sentence.ts';
import {
  adviceOf,
  closePage,
  type Here,
  open,
  type PageParts,
  type PagesState,
  refusedTurn,
  send,
  stay,
  type Turn,
} from './pages-state.ts';

/** A line of the list, and what stands below it. */
export interface KnownItem {
  readonly text: string;
  readonly also: string;
  readonly about: string;
  readonly id: string;
}

/** The list of what can be known, with what is known of each. */
export function knownItems({ opened, state }: Here): KnownItem[] {
  const { session } = state;
  const car = adviceOf(opened)?.diagnosis(session).car ?? null;
  return knownLines(session, car).map((line) => ({
    text: `${line.words}: ${knownWords(line)}`,
    also: line.quantity,
    about: aboutLine(line),
    id: line.quantity,
  }));
}

function aboutLine({ described, shown, known }: KnownLine): string {
  return [
    `The circuit file says ${described}.`,
    ...(shown === null ? [] : [`The readings have shown ${shown}.`]),
    ...(known ? [`It was set as "${known.typed}"; setting it again replaces it.`] : []),
  ].join(' ');
}

/** The list over the session; refused where nothing can be set. */
export function openKnown(here: Here): Turn {
  const { opened, state } = here;
  if (opened.drill)
    return refusedTurn(state, 'in a drill the vehicle is as its circuit describes it');
  if (state.session.status !== 'open')
    return refusedTurn(state, 'the conclusion is accepted: F2 goes back to set a value');
  return open(state, { name: 'known' });
}

/** What is asked of the value that was chosen. */
export function valueQuestion({ state }: Here, { quantity }: PageParts['known-value']) {
  const line = knownLines(state.session, null).find((one) => one.quantity === quantity);
  const words = line?.words ?? quantity;
  const ways = line?.ways.join(', ') ?? '';
  const isWayOnly = quantityNamed(state.session, quantity)?.unit === null;
  const can = isWayOnly
    ? ` It is one of: ${ways};`
    : `${ways && ` It can also be: ${ways}.`} A value without a tolerance counts as within 2 %;`;
  return {
    title: 'A value of this car',
    question: `${words}: what is it?`,
    about: `The circuit file says ${line?.described ?? 'nothing'}.${can} "unknown" clears it.`,
  };
}

/** The line under the value that is being typed, and whether it can be taken. */
export function valueCheck({ state }: Here, { quantity }: PageParts['known-value'], typed: string) {
  const one = quantityNamed(state.session, quantity);
  if (!one || typed.trim() === '') return null;
  const { ok, words } = typedIs(one, typed);
  return { ok, words: sentence(words) };
}

/** What is asked about the source. */
export const FROM_QUESTION = {
  title: 'A value of this car',
  question: 'How do you know it?',
  about: `One of: ${KNOWN_FROM.join(', ')}; then words of your own, for example: label on the module. The record shows it.`,
};

/** The line under the source that is being typed. */
export function fromCheck(typed: string) {
  if (typed.trim() === '') return null;
  const read = readFrom(typed);
  return 'kind' in read
    ? { ok: true, words: 'Understood.' }
    : { ok: false, words: `${sentence(read.words)} ${sentence(read.fix)}` };
}

/** The value was typed: then from where. */
export function afterValue(
  state: PagesState,
  { quantity }: PageParts['known-value'],
  typed: string,
): Turn {
  return open(state, { name: 'known-from', quantity, is: typed });
}

/** The source was typed: the value is set. */
export function afterFrom(
  state: PagesState,
  { quantity, is }: PageParts['known-from'],
  from: string,
): Turn {
  const { circuit } = state.session.opened;
  if (!circuit) return closePage(state);
  const read = readSaid(circuit, { what: quantity, is, from });
  if (!('quantity' in read))
    return refusedTurn(state, `${sentence(read.words)} ${sentence(read.fix)}`);
  return send(state, { type: 'set-value', ...read });
}

/** What was set or taken back, for the line over the session; null after other events. */
export function setMessage(session: Session): string | null {
  const last: SessionEvent | undefined = session.events.at(-1);
  if (last?.type === 'value-set')
    return `Set: ${setWords(session, last)}. All readings are weighed with it: F5.`;
  if (last?.type !== 'value-taken-back') return null;
  const set = session.events[last.set - 1];
  return set?.type === 'value-set' ? `Taken back: ${setWords(session, set)}.` : null;
}

/** A line of the list was chosen. */
export function afterKnown(state: PagesState, quantity: string): Turn {
  return quantity === '' ? stay(state) : open(state, { name: 'known-value', quantity });
}
