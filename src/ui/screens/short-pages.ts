/** Location of a short along a wire: which one, how it is measured, and the two drops. No React. */
import { spaced } from '../../circuit/part-faults.ts';
import type { Test } from '../../circuit/test.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { mustBeOff, placesOn, shortFlaw, testOfShort } from '../../session/place-short.ts';
import { distanceWords, stretchWords, touchedWords } from '../../session/place-words.ts';
import { readDrops, stretchOn } from '../../session/read-short.ts';
import type { Session } from '../../session/session.ts';
import { shortSteps, shortsOf } from '../../session/short-steps.ts';
import { percentWords } from '../parts/bar.ts';
import { sentence } from '../parts/sentence.ts';
import {
  adviceOf,
  type Here,
  open,
  type PageParts,
  type PagesState,
  refusedTurn,
  replace,
  send,
  stay,
  type Turn,
} from './pages-state.ts';

/** A line of the list. */
export interface ShortItem {
  readonly text: string;
  readonly about: string;
  readonly id: string;
}

const WHOLE = 'The whole wire is measured unless you name a section before the drops.';

/** What touches what, the likeliest first. */
export function shortItems({ opened, state }: Here): ShortItem[] {
  const { circuit } = state.session.opened;
  if (!circuit) return [];
  const rows = adviceOf(opened)?.suspects(state.session).rows ?? [];
  return shortsOf(circuit, rows).map(({ wire, touches, chance }) => ({
    text: `${percentWords(chance).padStart(5)}  the ${spaced(wire)} wire touches ${touchedWords(touches)}`,
    about: WHOLE,
    id: `${wire} ${touches}`,
  }));
}

/** The list over the session; refused where nothing can be placed. */
export function openShorts({ opened, state }: Here): Turn {
  if (opened.drill) return refusedTurn(state, 'the location of a short is not asked in a drill');
  if (state.session.status !== 'open')
    return refusedTurn(state, 'the conclusion is accepted: F2 goes back to locate a short');
  return open(state, { name: 'shorts' });
}

/** A line of the list was chosen: its whole wire, unless a stretch is named. */
export function afterShort(state: PagesState, id: string): Turn {
  const { circuit } = state.session.opened;
  const [wire = '', touches = ''] = id.split(' ');
  if (!circuit || wire === '') return stay(state);
  const stretch = stretchOn(circuit, { wire, touches });
  const flaw = shortFlaw(circuit, stretch, null);
  return flaw
    ? refusedTurn(state, `${sentence(flaw[0])} ${sentence(flaw[1])}`)
    : open(state, { name: 'short-drops', stretch });
}

/** The measurement as a test, whose cautions come before it. */
export function testOfPage({ session }: PagesState, { stretch }: PageParts['short-drops']): Test {
  const { circuit } = session.opened;
  if (!circuit) throw new Error('short-pages: a stretch is of a circuit');
  return testOfShort(circuit, stretch, 'from');
}

/** What is asked of the stretch. */
export function dropsQuestion({ state }: Here, { stretch }: PageParts['short-drops']) {
  const { session } = state;
  const { circuit } = session.opened;
  const words = circuit ? stretchWords(circuit, stretch) : stretch.wire;
  // With a joint on the way a stretch is known better than the whole wire.
  const [near, far, more] = circuit ? placesOn(circuit, stretch.wire) : [];
  const part = more === undefined ? [] : [`For a section: from ${near} to ${far}: 6.6 mV, 15.5 mV`];
  return {
    title: 'Location of a short',
    question: `Drops along ${words}, as in 6.6 mV, 15.5 mV:`,
    about: [...shortSteps(session, stretch), ...part].join(' '),
  };
}

/** The line under the drops that are being typed, and whether they can be taken. */
export function dropsCheck({ state }: Here, page: PageParts['short-drops'], typed: string) {
  if (typed.trim() === '') return null;
  const read = readTyped(state.session, page, typed);
  return 'words' in read
    ? { ok: false, words: `${sentence(read.words)} ${sentence(read.fix)}` }
    : { ok: true, words: 'Understood.' };
}

/** The drops were typed: they are recorded with the place that they come to. */
export function afterDrops(state: PagesState, page: PageParts['short-drops'], typed: string): Turn {
  const { circuit } = state.session.opened;
  const read = readTyped(state.session, page, typed);
  if ('words' in read) return refusedTurn(state, `${sentence(read.words)} ${sentence(read.fix)}`);
  if (!circuit) return stay(state);
  const { stretch, drops, typed: text } = read;
  // Other places may have cautions of their own: they are read before that stretch is fed.
  const test = testOfShort(circuit, stretch, 'from');
  if (pendingTestCautions(state.session, test).length > 0)
    return replace(state, { name: 'short-drops', stretch });
  const unplugged = mustBeOff(circuit, stretch);
  return send(state, { type: 'place-short', stretch, unplugged, typed: text, drops });
}

/** `6.6 mV, 15.5 mV`, of a stretch of the wire `from sensor.signal to bulkhead.signal: 6.6 mV, 15.5 mV`. */
function readTyped(
  { opened }: Session,
  { stretch: whole }: PageParts['short-drops'],
  typed: string,
) {
  const { circuit } = opened;
  const colon = typed.indexOf(':');
  const part = colon < 0 ? '' : typed.slice(0, colon).trim();
  const [, from, to] = /^from\s+(\S+)\s+to\s+(\S+)$/i.exec(part) ?? [];
  if (part !== '' && (from === undefined || to === undefined))
    return {
      words: `"${part}" names no section`,
      fix: 'write it like "from A to B: 6.6 mV, 15.5 mV"',
    };
  const stretch = circuit
    ? stretchOn(circuit, { ...whole, ...(from && { from }), ...(to && { to }) })
    : whole;
  const read = readDrops(typed.slice(colon + 1));
  if ('fix' in read) return read;
  const { typed: text, ...drops } = read;
  const flaw = circuit ? shortFlaw(circuit, stretch, drops) : null;
  return flaw ? { words: flaw[0], fix: flaw[1] } : { stretch, drops, typed: text };
}

/** What was found, for the line over the session; null after other events. */
export function shortMessage({ opened, shorts }: Session): string | null {
  const last = shorts.at(-1);
  return last && opened.circuit
    ? `In the record: ${stretchWords(opened.circuit, last.stretch)}: ${distanceWords(opened.circuit, last)}.`
    : null;
}
