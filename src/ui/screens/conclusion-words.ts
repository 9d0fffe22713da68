/** A conclusion in words: what it rests on, what it rules out, what is still missing. No React. */

import type { Conclusion } from '../../procedure/procedure.ts';
import { countWords } from '../../quantity/count-words.ts';
import {
  type Better,
  concludedOn,
  readingItRestsOn,
  type SuspectRow,
  type Weighed,
} from '../../session/advisor.ts';
import type { Command } from '../../session/command.ts';
import { moduleFirst } from '../../session/conclusion-words.ts';
import { type Concluded, piecesAmong, type StepImpossible } from '../../session/events.ts';
import { customerWords, GAPS_WORDS, gapsOf } from '../../session/gaps.ts';
import { notRuledOut } from '../../session/not-ruled-out.ts';
import { placeWords } from '../../session/place-words.ts';
import { retestLines } from '../../session/retest.ts';
import { type Session, standingAnswers } from '../../session/session.ts';
import { EVIDENCE_NEEDED } from '../../suspects/corroborate.ts';
import type { OpenedSession } from '../app-services.ts';
import { percentWords } from '../parts/bar.ts';
import { sentenceStart } from '../parts/sentence.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { answerWords, foundWords, stepTitle, testWords } from './answer-words.ts';
import { evidenceWords, readAt, ruledOutWords, unstopped } from './evidence-words.ts';
import { provenBeforeWords } from './proven-before.ts';
import { leftLine } from './step-words.ts';

/** Beside the suspects of a fault that comes and goes. */
export const FLEETING_WORDS =
  'Treated as intermittent: a good reading does not rule any of these out.';

/** A conclusion on its way to be accepted: the tree's, or one's own. */
export interface Proposed {
  readonly title: string;
  readonly say: string;
  /** Empty for "no fault found"; null where it is in words of one's own, which nothing can be weighed for. */
  readonly faults: readonly string[] | null;
  readonly repair: string;
  readonly customer: string;
  /** What the person asserts in its place; null for the tree's. */
  readonly own: OwnConclusion | null;
}

/** A conclusion that the person named and not the tree. */
export type OwnConclusion = NonNullable<Extract<Command, { type: 'conclude' }>['own']>;

/** The tree's conclusion. */
export function fromTree(session: Session, tree: Conclusion): Proposed {
  const { title, say, faults, repair } = tree;
  const customer = customerWords(session, tree);
  return { title, say, faults, repair, customer, own: null };
}

/** One's own, from a suspect. */
export function fromSuspect(
  row: SuspectRow,
): Proposed & { readonly faults: readonly string[]; readonly own: OwnConclusion } {
  const say = 'You picked this from the suspects; the procedure did not reach it by itself.';
  const own = concludedOn(row);
  return {
    ...{ title: row.words, say, faults: own.faults, repair: row.words, customer: '' },
    own,
  };
}

/** A conclusion that the person typed; it names no fault, so nothing can be weighed. */
export function fromOwnWords(words: string): Proposed {
  const say = 'This is your own conclusion, in your own words.';
  const own = { words, faults: [] };
  return { title: words, say, faults: null, repair: words, customer: '', own };
}

/** The whole conclusion, to be read from top to bottom. */
export function conclusionParagraphs(
  opened: OpenedSession,
  session: Session,
  proposed: Proposed,
  weighing: Weighed | 'pending' | null,
): Paragraph[] {
  const bind = (text: string) => opened.bind(text).trim();
  const rests = restsWords(opened, session, weighing === 'pending' ? null : weighing);
  const head: Paragraph[] = [
    { text: bind(proposed.title), bold: true },
    ...(rests === null ? [] : [{ text: `! ${rests}`, bold: true, hang: 2 }]),
    ...(proposed.say === '' ? [] : [{ text: bind(proposed.say) }]),
    ...gapParagraphs(opened, session),
  ];
  const said = proposed.repair === proposed.title ? '' : bind(proposed.repair);
  const repair = `${leftLine(session)} ${said}`.trim();
  if (opened.drill) return [...head, ...part('Repair', repair), { text: '' }, { text: YOURS }];
  const weighed = weighing === 'pending' ? null : weighing;
  const { circuit } = session.opened;
  return [
    ...head,
    { text: '' },
    weighing === 'pending' ? PENDING : proofParagraph(opened, session, proposed, weighed),
    ...whereParagraph(opened, session, proposed, weighed),
    ...unexplainedParagraphs(opened, weighed),
    ...part('Before the module is named', moduleFirstWords(session, proposed)),
    ...part('Repair', repair),
    ...evidenceParagraphs(opened, session, weighed),
    ...part('What the customer should know', bind(proposed.customer)),
    ...list(
      'Must pass after the repair',
      proposed.own ? [] : retestLines(session).map(({ step }) => bind(step.title)),
    ),
    ...list(
      'Ruled out',
      weighed?.ruledOut.map((line) => ruledOutWords(opened, session, line)) ?? [],
    ),
    ...list('What was found along the way', foundLines(opened, session)),
    ...list(
      'Not tested, or not far enough to rule them out',
      circuit && weighed && proposed.faults
        ? notRuledOut(circuit, proposed.faults, weighed.ruledOut, session.opened.job)
        : [],
    ),
  ];
}

/** Of a conclusion of one's own; a tree says it in its repair. */
function moduleFirstWords({ opened }: Session, { own, faults }: Proposed): string {
  return own && faults ? moduleFirst(opened.circuit, faults) : '';
}

/** Of a drill's procedure. */
const YOURS =
  'Whether you believe it is up to you: give your diagnosis, or carry on with tests of your own.';
const PENDING: Paragraph = { text: 'One moment: weighing the evidence.', bold: true };

function part(label: string, text: string): Paragraph[] {
  return text === '' ? [] : [{ text: '' }, { text: label, bold: true }, { text: `  ${text}` }];
}

function list(label: string, lines: readonly string[]): Paragraph[] {
  if (lines.length === 0) return [];
  return [
    { text: '' },
    { text: label, bold: true },
    ...lines.map((text) => ({ text: `- ${text}`, hang: 2 })),
  ];
}

/** Where it sits along its wire, or what would tell that. */
function whereParagraph(
  { bind }: OpenedSession,
  session: Session,
  { faults }: Proposed,
  weighed: Weighed | null,
): Paragraph[] {
  const where = shortWhere(session, faults ?? [], weighed);
  if (where !== '') return [{ text: `Where: ${bind(where)}`, bold: true, hang: 7 }];
  const [first] = weighed?.wouldPlace ?? [];
  if (!first) return [];
  const words = `${unstopped(bind(first.words))} (${minutesWords(first.minutes)})`;
  return [
    { text: `Where along the wire is not known yet; F6 has the test for it: ${words}.`, hang: 7 },
  ];
}

/** Where along its wire it sits, of those faults that the readings leave; empty where that is not told. */
export function shortWhere(
  session: Session,
  faults: readonly string[],
  weighed: Pick<Weighed, 'left'> | null,
): string {
  const place = placeWords(session, weighed?.left ?? faults);
  return place === '' ? '' : `${place.charAt(0).toUpperCase()}${place.slice(1)}.`;
}

/** What points to it, and what would. */
function unexplainedParagraphs({ bind }: OpenedSession, weighed: Weighed | null): Paragraph[] {
  if (!weighed?.unexplained) return [];
  return [{ text: '' }, { text: bind(weighed.unexplained), bold: true }];
}

function evidenceParagraphs(
  opened: OpenedSession,
  session: Session,
  weighed: Weighed | null,
): Paragraph[] {
  if (!weighed) return [];
  const { evidence, missing, wouldProve } = weighed;
  return [
    ...list(
      'Evidence',
      evidence.map((line) => evidenceWords(opened, session, line)),
    ),
    ...list(
      missing > 0 ? 'Quick tests that would prove it (F6 to do one)' : 'Further tests',
      wouldProve.map(({ words, minutes }) => `${minutesWords(minutes)}: ${opened.bind(words)}`),
    ),
  ];
}

/** What could not be done on the way: the words of a conclusion take for granted that all of it was. */
function gapParagraphs(opened: OpenedSession, session: Session): Paragraph[] {
  const gaps = gapsOf(session);
  if (gaps.length === 0) return [];
  const said = (some: readonly StepImpossible[]) =>
    some.map(({ step }) => stepTitle(opened, session, step)).join('; ');
  const own = gaps.filter(({ by }) => by === undefined);
  const round = gaps.filter(({ by }) => by !== undefined);
  const sentences = [
    GAPS_WORDS,
    ...(own.length === 0 ? [] : [`Could not be done: ${said(own)}.`]),
    // A connector that could not be reached is named once.
    ...[...new Set(round.map(({ reason }) => reason))].map(
      (reason) =>
        `${sentenceStart(reason)}: ${said(round.filter((one) => one.reason === reason))}.`,
    ),
  ];
  return [{ text: '' }, { text: `! ${sentences.join(' ')}`, hang: 2 }];
}

/** Everything that was read, a line each: the answers on the way, then the tests that no step asked for. */
export function foundLines(opened: OpenedSession, session: Session): string[] {
  const aside = session.opened.procedure ? ' (outside the procedure)' : '';
  return [
    ...standingAnswers(session).map(
      (answer) =>
        `${stepTitle(opened, session, answer.step)} - ${opened.bind(answerWords(answer, session))}`,
    ),
    ...session.tests.map(
      (one) => `${testWords(opened, session, one.test)} - ${foundWords(one)}${aside}`,
    ),
  ];
}

/** That a conclusion rests on one reading or is not borne out, with what to do first; null where it stands. */
export function restsWords(
  opened: OpenedSession,
  session: Session,
  weighed: Pick<Weighed, 'hangsOn' | 'better' | 'support' | 'chance'> | null,
): string | null {
  if (!weighed) return null;
  const { better, support } = weighed;
  if (better.kind === 'take-back') {
    const { test, found } = readAt(opened, session, better.overturned.answer);
    const now = readAt(opened, session, better.overturned.by).found;
    return `The procedure got here on one answer: ${unstopped(test)}, ${found}. Repeated, it showed: ${now}. Take that answer back, and the procedure goes on with the new one.`;
  }
  if (better.kind === 'repeat' && better.isOdd) {
    const { test, found } = readAt(opened, session, better.reading);
    return `One reading does not fit the rest: ${unstopped(test)}, ${found}. Repeat it first.`;
  }
  const rests = readingItRestsOn(weighed);
  if (rests !== null) {
    const { test, found } = readAt(opened, session, rests);
    return `This rests on one reading: ${unstopped(test)}, ${found}.${firstWords(opened, better)}`;
  }
  // What is concluded where nothing was found: its words say it all.
  if (better.kind === 'instead' && better.row.faults.length === 0)
    return opened.bind(better.row.words);
  if (support === 'too-many') return manyWords(opened, better);
  if (better.kind === 'narrow') return narrowWords(opened, better);
  return notBorneOutWords(opened, weighed);
}

/** The test that holds a conclusion up, as a sentence to follow another; empty for none. */
function firstWords({ bind }: OpenedSession, better: Better): string {
  if (better.kind === 'repeat') return ' Repeat it first.';
  return better.kind === 'first' ? ` First: ${unstopped(bind(better.proposal.words))}.` : '';
}

function notBorneOutWords(
  opened: OpenedSession,
  { better, chance }: Pick<Weighed, 'better' | 'chance'>,
): string | null {
  if (better.kind === 'first')
    return `The readings do not support this yet (${percentWords(chance)}).${firstWords(opened, better)}`;
  if (better.kind !== 'instead') return null;
  const other = rowWords(opened, better.row);
  return chance >= better.row.chance
    ? `The readings narrow it down further: ${other}.`
    : `The readings do not support this (${percentWords(chance)}). They point to: ${other}.`;
}

/** Of one that stands and leaves several repairs: the test that may leave fewer, with its minutes. */
function narrowWords(
  { bind }: OpenedSession,
  { proposal }: Extract<Better, { kind: 'narrow' }>,
): string {
  const { words, minutes } = proposal;
  return `This leaves more than one repair. A test that may leave fewer: ${unstopped(bind(words))} (${minutesWords(minutes)}).`;
}

/** Of a conclusion that leaves too many repairs: the test that tells more, or the one that leads. */
function manyWords(opened: OpenedSession, better: Better): string {
  const many = 'This leaves too many possible repairs to act on.';
  if (better.kind === 'instead')
    return `${many} The readings point to: ${rowWords(opened, better.row)}.`;
  const first = firstWords(opened, better);
  return `${many}${first === '' ? ' No test at hand would tell more.' : first}`;
}

function rowWords({ bind }: OpenedSession, { words, chance }: SuspectRow): string {
  return `${unstopped(bind(words))} (${percentWords(chance)})`;
}

/** What is done with a conclusion, by what is better than to accept it: behind "Enter" and behind "Type yes to". */
export const DO_BETTER: Readonly<Record<Better['kind'], string>> = {
  'take-back': 'take it back',
  repeat: 'repeat it',
  first: 'do that test',
  instead: 'conclude that instead',
  narrow: 'do that test',
  prove: 'do that test',
  accept: 'accept',
};

/** Whether a conclusion is proven, what is missing for it, or why that is not known. */
export function proofParagraph(
  opened: Pick<OpenedSession, 'bind' | 'driver'>,
  session: Session,
  { faults, title }: Pick<Proposed, 'faults' | 'title'>,
  weighed: Weighed | null,
): Paragraph {
  if (faults === null)
    return {
      text: 'Proof: not weighed, because a conclusion in your own words names no fault.',
      hang: 7,
    };
  if (weighed === null)
    return { text: 'Proof: not weighed, because this session has no circuit model.', hang: 7 };
  const { evidence } = weighed;
  const before = provenBeforeWords(opened, session, title, weighed);
  if (weighed.proven)
    return {
      text: `PROVEN: ${countWords(piecesAmong(evidence), 'independent piece')} of evidence.`,
      bold: true,
    };
  return {
    text: `NOT PROVEN YET: ${missingWords(weighed)}. ${before}${nextWords(weighed, opened.bind)}You can accept it anyway; the record will say so.`,
    bold: true,
    colour: 'magenta',
    hang: 2,
  };
}

/** The test that would prove it; what holds it up is said above. */
function nextWords({ better }: Weighed, bind: (text: string) => string): string {
  if (better.kind !== 'prove') return '';
  const { words, minutes } = better.proposal;
  const again = better.isAgain ? ', once more to be sure' : '';
  return `Next${again}: ${unstopped(bind(words))} (${minutesWords(minutes)}). `;
}

/** Pieces enough prove nothing that is not sure, or that one slip of the hand would turn over. */
function missingWords({
  missing,
  hangsOn,
  evidence,
  chance,
  support,
}: Pick<Weighed, 'missing' | 'hangsOn' | 'evidence' | 'chance' | 'support'>): string {
  if (support === 'too-many') return 'it leaves too many possible repairs';
  if (missing > 0 && piecesAmong(evidence) >= EVIDENCE_NEEDED)
    return `${(Math.floor(1000 * chance) / 10).toFixed(1)} % sure, and 99 % is needed`;
  if (missing > 0) return `${countWords(missing, 'independent piece')} of evidence missing`;
  return hangsOn === null ? 'the readings contradict each other' : 'it rests on one reading';
}

/** What was accepted, with how much proof; of one read from a file nobody has recomputed it. */
export function acceptedWords(
  { proven, evidence, restsOn }: Pick<Concluded, 'proven' | 'evidence' | 'restsOn'>,
  { isAsFiled }: Pick<OpenedSession, 'isAsFiled'>,
): string {
  const pieces = countWords(piecesAmong(evidence), 'piece');
  if (proven === null) return 'Accepted; the proof was not weighed.';
  if (proven && isAsFiled())
    return `Accepted and called proven by ${pieces} of evidence, as its file has it, not recomputed.`;
  if (proven) return `Accepted and proven by ${pieces} of evidence.`;
  const rests = restsOn === undefined ? '' : ' It rests on one reading.';
  return `Accepted, not proven: ${pieces} of evidence.${rests}`;
}

/** `2 min`. */
export function minutesWords(minutes: number): string {
  return minutes < 1 ? '<1 min' : `${Math.round(minutes)} min`;
}
