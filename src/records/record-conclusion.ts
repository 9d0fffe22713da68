/** The conclusion of a session in words: what it says, what points to it, and what is ruled out. */
import { conclusionWords, repairsOfFaults } from '../session/conclusion-words.ts';
import type { Concluded, EvidenceLine, RuledOutLine } from '../session/events.ts';
import { customerWords } from '../session/gaps.ts';
import { isFarFetched, notRuledOut } from '../session/not-ruled-out.ts';
import { placeWords } from '../session/place-words.ts';
import { presentConclusion } from '../session/session.ts';
import { judgedBy } from './judged-by.ts';
import type { RecordContext } from './record-context.ts';
import type {
  RecordConclusion,
  RecordEvidence,
  RecordLine,
  RecordRuledOut,
  RecordTest,
} from './record-form.ts';

/** What was read before the conclusion, by the number of its event. */
type Readings = ReadonlyMap<number, Pick<RecordLine, 'title' | 'where' | 'found'>>;

/** The conclusion that stands; null while there is none. */
export function recordConclusion(
  context: RecordContext,
  lines: readonly RecordLine[],
  tests: readonly RecordTest[],
): RecordConclusion | null {
  const { session, bind, clock } = context;
  const { concluded } = session;
  if (!concluded) return null;
  const { title, repair } = conclusionWords(session) ?? { title: '', repair: '' };
  const end = concluded.conclusion === null ? null : presentConclusion(session);
  const tree = end?.id === concluded.conclusion ? end : null;
  const moment = clock(concluded);
  const readings = readingsBefore(moment.event, lines, tests);
  const towards = pointsTo(context, concluded) || repair || title;
  return {
    ...moment,
    title,
    own: concluded.conclusion === null,
    faults: concluded.faults.map((id) => ({ id, words: recordedFault(context, id) })),
    repair,
    place: placeWords(session, concluded.faults),
    customer: tree ? bind(customerWords(session, tree)) : '',
    proven: concluded.proven,
    ...judgedBy(session),
    ...(tree && tree.faults.length === 0 ? { nothingFound: true as const } : {}),
    ...(tree && tree.faults.length === session.opened.circuit?.faults.length
      ? { leavesOpen: true as const }
      : {}),
    restsOn: restsOn(concluded, readings),
    evidence: concluded.evidence.flatMap((line) => evidenceOf(context, line, readings, towards)),
    ruledOut: concluded.ruledOut.flatMap((line) => ruledOutOf(context, line, readings)),
    notRuledOut: leftOpen(context, concluded, tree?.faults ?? concluded.faults),
  };
}

function restsOn({ restsOn: reading }: Concluded, readings: Readings): RecordConclusion['restsOn'] {
  const read = reading === undefined ? undefined : readings.get(reading);
  return reading === undefined || !read ? null : { reading, words: `${read.title}: ${read.found}` };
}

/** A fault in the circuit's words. */
export function recordedFault({ session }: RecordContext, id: string): string {
  const fault = session.opened.circuit?.faults.find((one) => one.id === id);
  return fault?.words ?? id.replace(/[.-]/g, ' ');
}

/** A repair in the circuit's words. */
export function recordedRepair({ session }: RecordContext, repair: string): string {
  const fault = session.opened.circuit?.faults.find((one) => one.repair === repair);
  return fault?.repairWords ?? repair.replace(/[.-]/g, ' ');
}

/** What was read after the repair says nothing of what was wrong before it. */
function readingsBefore(
  concluded: number,
  lines: readonly RecordLine[],
  tests: readonly RecordTest[],
): Readings {
  // What wakes a fault that comes and goes has no leads: how the vehicle stood says where.
  const answers = lines.map((line) => (line.where === '' ? { ...line, where: line.setup } : line));
  return new Map(
    [...answers, ...tests].filter(({ event }) => event < concluded).map((one) => [one.event, one]),
  );
}

function evidenceOf(
  { bind }: RecordContext,
  line: EvidenceLine,
  readings: Readings,
  towards: string,
): RecordEvidence[] {
  const { counted } = line;
  if ('said' in line) {
    const { test, where, found, pointsTo: to } = line.said;
    const words = { test: bind(test), where: bind(where), found, pointsTo: bind(to) };
    return [{ reading: null, ...words, counted }];
  }
  const read = readings.get(line.reading);
  if (!read) return [];
  const { title, where, found } = read;
  return [{ reading: line.reading, test: title, where, found, pointsTo: towards, counted }];
}

function ruledOutOf(
  context: RecordContext,
  line: RuledOutLine,
  readings: Readings,
): RecordRuledOut[] {
  if ('said' in line) {
    const { words, by } = line.said;
    return [{ words: context.bind(words), by: context.bind(by), readings: [] }];
  }
  const by = line.by.flatMap((reading) => {
    const read = readings.get(reading);
    return read ? [{ reading, words: `${read.title}: ${read.found}` }] : [];
  });
  if (by.length === 0) return [];
  return [
    {
      words: recordedRepair(context, line.repair),
      by: by.map(({ words }) => words).join('; '),
      readings: by.map(({ reading }) => reading),
      ...(isFarFetched(context.session.opened.circuit, context.session.opened.job, line.repair)
        ? { assumed: true as const }
        : {}),
    },
  ];
}

/**
 * Repairs of the circuit that are neither the conclusion's nor ruled out by a reading: not tested, or not far enough. What
 * the tree's conclusion has repaired, all `faults` that it names, is none of them, however few the readings leave.
 */
function leftOpen(
  { session }: RecordContext,
  { ruledOut, proven }: Concluded,
  faults: readonly string[],
): string[] {
  const { circuit } = session.opened;
  // Early versions named what was ruled out by words.
  const isSaid = ruledOut.some((line) => 'said' in line);
  if (!circuit || proven === null || isSaid) return [];
  return notRuledOut(circuit, faults, ruledOut, session.opened.job);
}

/** The repairs of the faults that the conclusion names, as one sentence. */
function pointsTo({ session }: RecordContext, { faults }: Concluded): string {
  const repairs = repairsOfFaults(session.opened.circuit, faults);
  const last = repairs.length - 1;
  return repairs
    .map((words, at) => (at < last ? words.replace(/\.$/, '') : words))
    .map((words, at) => (at > 0 ? words.replace(/^\p{Lu}(?=\p{Ll})/u, lowerCase) : words))
    .join(', or ');
}

function lowerCase(letter: string): string {
  return letter.toLowerCase();
}
