/**
 * A record that may be handed to the owner of the vehicle: what the paper for the customer says, in its words, and
 * nothing else. The paper itself is made of it, so the forms for programs hold no more than the one for reading.
 *
 * Built field by field from a list of what may go out, so that a field added to the record later stays in the shop
 * until someone allows it. Left out are notes, known values, corrections, interruptions, instruments, captures, pins
 * and colours, what was typed, and answers that neither point to the conclusion nor rule anything out.
 */
import { customerWordsFor } from './customer-words.ts';
import {
  KEPT_AS,
  type Moment,
  type RecordConclusion,
  type RecordJob,
  type RecordLine,
  type RecordReading,
  type RecordTest,
  type RetestRow,
  type SessionRecord,
} from './record-form.ts';

/** The record without what is the shop's own: only the fields that a customer's paper shows. */
export function recordForCustomer(record: SessionRecord): SessionRecord {
  const words = customerWordsFor(record);
  const { conclusion, retest } = record;
  const told = toldReadings(record);
  return {
    format: record.format,
    id: record.id,
    program: record.program,
    status: record.status,
    title: record.title,
    procedure: record.procedure && { name: record.procedure.name, title: record.procedure.title },
    circuit: record.circuit,
    wiring: [],
    picture: pictureFor(record),
    vehicle: record.vehicle,
    by: record.by,
    origin: record.origin,
    rules: record.rules,
    person: record.person,
    shop: record.shop,
    instruments: [],
    meter: '',
    startedAt: record.startedAt,
    endedAt: record.endedAt,
    workedMs: record.workedMs,
    minutes: null,
    complaint: record.complaint,
    cause: words.text(record.cause),
    correction: words.text(record.correction),
    job: jobFor(record.job),
    lines: linesFor(record, words, told),
    tests: record.tests.map((test) => ({
      ...made(test),
      number: test.number,
      afterRepair: test.afterRepair,
      ...(test.made === undefined ? {} : { made: test.made }),
      title: words.reading(test.event),
    })),
    shorts: [],
    cautions: [],
    known: [],
    notes: [],
    corrections: [],
    interruptions: [],
    conclusion: conclusion && conclusionFor(conclusion, words),
    call: [],
    ...(record.prices === undefined ? {} : { prices: record.prices }),
    work: record.work.map((one) => ({
      ...when(one),
      answer: one.answer,
      by: one.by,
      words: one.words,
    })),
    retest: {
      rows: lastOfEach(retest.rows).map((row) => retestRowFor(row, words.test(row.title))),
      missing: retest.missing.map(words.test),
      drives: retest.drives.map((one) => ({ ...when(one), code: one.code, words: one.words })),
      verdict: retest.verdict,
      words: retest.words,
    },
    drill: null,
    head: record.head,
    howToVerify: record.howToVerify,
  };
}

function linesFor(
  { lines }: SessionRecord,
  words: ReturnType<typeof customerWordsFor>,
  told: ReturnType<typeof toldReadings>,
): SessionRecord['lines'] {
  return lines
    .filter((line) => isGap(line) || (told.has(line.event) && line.by === undefined))
    .map((line) => ({
      ...made(line),
      number: line.number,
      kind: line.kind,
      step: line.step,
      title: isGap(line) ? words.test(line.title) : words.reading(line.event),
      outcome: line.verdict === null ? words.text(line.outcome) : '',
      reason: line.reason,
      standing: line.standing,
    }));
}

/** Pins and colours are not in it; what was read at its places is told anyway. */
function pictureFor({ picture }: SessionRecord): SessionRecord['picture'] {
  if (!picture) return null;
  return {
    left: picture.left,
    right: picture.right,
    wires: picture.wires.map(({ words, left, right, module }) => ({ words, left, right, module })),
    readings: picture.readings.map(({ reading, wire, at, against }) => ({
      reading,
      wire,
      at,
      against,
    })),
    faults: picture.faults.map(({ words, wire, at, touches }) => ({ words, wire, at, touches })),
  };
}

/** Steps that could not be done, and are still on the way. */
function isGap({ kind, standing }: RecordLine): boolean {
  return kind === 'impossible' && standing === 'standing';
}

/**
 * Answers that the customer is told: what points to the conclusion and what rules a repair out, or, where nothing was
 * weighed, whatever was read and stands; and what was seen last, where the procedure concluded from that.
 */
function toldReadings({ conclusion, lines }: SessionRecord): ReadonlySet<number> {
  const standing = lines.filter((line) => line.standing === 'standing');
  const last = conclusion && !conclusion.own ? standing.at(-1) : undefined;
  const seen = last?.kind === 'answer' ? [last.event] : [];
  // Where nothing was found, moving and warming in vain is what the work was.
  if (conclusion?.nothingFound)
    seen.push(
      ...standing
        .filter(({ kind, judgement }) => kind === 'answer' && judgement !== '')
        .map(({ event }) => event),
    );
  if (conclusion && conclusion.evidence.length > 0)
    return new Set([
      ...conclusion.evidence.flatMap(({ reading }) => (reading === null ? [] : [reading])),
      ...conclusion.ruledOut.flatMap(({ readings }) => readings),
      ...seen,
    ]);
  const taken = standing.filter(({ kind }) => kind === 'reading' || kind === 'look');
  return new Set([...taken.map(({ event }) => event), ...seen]);
}

/** What answers and tests have in common, without how it was measured. */
function made(one: RecordLine | RecordTest) {
  const { family, expected, expectedRange, found, verdict } = one;
  return {
    ...when(one),
    family,
    where: '',
    setup: '',
    instrument: '',
    expected,
    expectedRange,
    found,
    reading: untyped(one.reading),
    verdict,
    judgement: '',
  };
}

function when({ event, at, workedMs }: Moment): Moment {
  return { event, at, workedMs };
}

function untyped(reading: RecordReading | null): RecordReading | null {
  return reading && { ...reading, typed: '' };
}

function jobFor({ order, customer, codes, vehicle, earlierRepairs, told }: RecordJob): RecordJob {
  const { words, vin, plate, odometer } = vehicle;
  return {
    name: '',
    order,
    customer,
    codes,
    vehicle: { words, vin, plate, odometer, drive: '' },
    earlierRepairs: earlierRepairs.map(({ words, outcome }) => ({ words, part: '', outcome })),
    harness: [],
    told: told
      .filter(({ what }) => what === KEPT_AS)
      .map(({ what, words }) => ({ what, words, moved: '' })),
    terminals: [],
    notes: '',
  };
}

function conclusionFor(
  conclusion: RecordConclusion,
  words: ReturnType<typeof customerWordsFor>,
): RecordConclusion {
  const { restsOn } = conclusion;
  return {
    ...when(conclusion),
    title: words.text(conclusion.title),
    own: conclusion.own,
    faults: [],
    repair: words.text(conclusion.repair),
    place: words.text(conclusion.place),
    customer: words.text(conclusion.customer),
    proven: conclusion.proven,
    ...(conclusion.judgedBy ? { judgedBy: { ...conclusion.judgedBy, differs: [] } } : {}),
    ...(conclusion.nothingFound ? { nothingFound: true as const } : {}),
    ...(conclusion.leavesOpen ? { leavesOpen: true as const } : {}),
    restsOn: restsOn && { reading: restsOn.reading, words: words.reading(restsOn.reading) },
    evidence: conclusion.evidence.map(({ reading, test, found, counted }) => ({
      reading,
      test: reading === null ? words.test(test) : words.reading(reading),
      where: '',
      found,
      pointsTo: '',
      counted,
    })),
    ruledOut: conclusion.ruledOut
      .filter(({ assumed }) => !assumed)
      .map((one) => ({
        words: one.words,
        by: words.ruledOutBy(one),
        readings: one.readings,
      })),
    notRuledOut: conclusion.notRuledOut,
  };
}

/** Each test as it was made last: one that failed may have been made again. */
function lastOfEach(rows: readonly RetestRow[]): RetestRow[] {
  return [...new Map(rows.map((row) => [row.step, row])).values()];
}

function retestRowFor(row: RetestRow, title: string): RetestRow {
  const { step, expected, expectedRange, before, after, reading, passed } = row;
  return {
    ...when(row),
    step,
    title,
    where: '',
    expected,
    expectedRange,
    before,
    after,
    reading: untyped(reading),
    passed,
  };
}
