/**
 * Readings as CSV (RFC 4180): one line a reading, look or answer, with CRLF, texts quoted, numbers bare.
 *
 * Spreadsheet programs run a text that begins like a formula (CWE-1236). An apostrophe goes before such texts, also
 * behind anything inside a text that another program may take for the end of a cell. Numbers come from numbers and
 * never need it. The JSON export is the exact form.
 */
import { safeText } from '../source/safe-text.ts';
import type { RecordReading, SessionRecord } from './record-form.ts';
import { madeWords, todayWords } from './report-words.ts';

type Field = string | number | null;

export const CSV_HEADS = [
  'session',
  'part',
  'number',
  'time',
  'worked_seconds',
  'step',
  'title',
  'where',
  'vehicle_state',
  'instrument',
  'expected',
  'expected_low',
  'expected_high',
  'found',
  'value',
  'unit',
  'typed',
  'verdict',
  'outcome',
  'standing',
  'reason',
  'today',
  'origin',
] as const;

const BYTE_ORDER_MARK = '\ufeff';

/** The file; `bom` begins it with a byte-order mark, which some spreadsheet programs want. */
export function readingsCsv(record: SessionRecord, options: { bom?: boolean } = {}): string {
  const rows = [CSV_HEADS, ...lineRows(record), ...testRows(record), ...retestRows(record)];
  const lines = rows.map((row) => `${row.map(csvField).join(',')}\r\n`);
  return (options.bom ? BYTE_ORDER_MARK : '') + lines.join('');
}

function lineRows({ id, lines, origin }: SessionRecord): Field[][] {
  // What a test had read already stands in that test's row.
  const read = lines.filter(({ by }) => by === undefined);
  return read.map((line) => [
    id,
    'procedure',
    line.number,
    line.at,
    seconds(line.workedMs),
    line.step,
    line.title,
    line.where,
    line.setup,
    line.instrument,
    line.expected,
    line.expectedRange?.low ?? null,
    line.expectedRange?.high ?? null,
    line.found,
    ...readingFields(line.reading),
    line.verdict,
    line.outcome,
    line.standing,
    line.reason,
    todayWords(line.today) || null,
    origin,
  ]);
}

function testRows({ id, tests, origin }: SessionRecord): Field[][] {
  return tests.map((test) => [
    id,
    test.afterRepair ? 'test after the repair' : 'test',
    test.number,
    test.at,
    seconds(test.workedMs),
    null,
    test.title,
    test.where,
    test.setup,
    test.instrument,
    test.expected,
    test.expectedRange?.low ?? null,
    test.expectedRange?.high ?? null,
    test.found,
    ...readingFields(test.reading),
    test.verdict,
    null,
    'standing',
    madeWords(test) || null,
    todayWords(test.today) || null,
    origin,
  ]);
}

function retestRows({ id, retest, origin }: SessionRecord): Field[][] {
  return retest.rows.map((row, i) => [
    id,
    'retest',
    i + 1,
    row.at,
    seconds(row.workedMs),
    row.step,
    row.title,
    row.where,
    null,
    null,
    row.expected,
    row.expectedRange?.low ?? null,
    row.expectedRange?.high ?? null,
    row.after,
    ...readingFields(row.reading),
    row.passed === null ? 'not made' : row.passed ? 'passed' : 'failed',
    null,
    'standing',
    null,
    null,
    origin,
  ]);
}

function readingFields(reading: RecordReading | null): [Field, Field, Field] {
  return reading ? [reading.value, reading.unit, reading.typed] : [null, null, null];
}

function seconds(ms: number): number {
  return Math.round(ms) / 1000;
}

/** What a person types for a plain number; as a cell it is a number and no formula. */
const PLAIN_NUMBER = /^-?\d{1,15}(\.\d{1,15})?$/;
/** Begins a formula; the wide forms are taken for the narrow ones by some programs. */
const FORMULA_SIGNS = new Set('=+-@＝＋－＠');
/** Begins one at the start of a cell besides; line ends and null are cut off by some programs before they look. */
const START_SIGNS = new Set([...FORMULA_SIGNS, '\t', '\r', '\n', '\0', '|', '%']);
/** Where another program may take a new cell to begin. */
const SEPARATORS = new Set(';\t\n\r|');
const BLANK = /\s/;

/** One cell: nothing for null and the empty text, numbers bare, texts quoted and guarded. */
export function csvField(field: Field): string {
  if (field === null || field === '') return '';
  if (typeof field === 'number') return Number.isFinite(field) ? String(field) : '';
  if (PLAIN_NUMBER.test(field)) return field;
  return `"${safeText(guarded(field), { lines: true }).replace(/"/g, '""')}"`;
}

/** The text with an apostrophe before every place where a program may see a formula begin, blanks passed over. */
function guarded(text: string): string {
  let out =
    START_SIGNS.has(text.trimStart().charAt(0)) || START_SIGNS.has(text.charAt(0)) ? "'" : '';
  let mayBegin = false;
  for (const sign of text) {
    if (mayBegin && FORMULA_SIGNS.has(sign)) out += "'";
    mayBegin = SEPARATORS.has(sign) || (mayBegin && BLANK.test(sign));
    out += sign;
  }
  return out;
}
