/** One session in the index: what lists show and what is searched. */
import type { Disk } from '../log/disk.ts';
import type { DrivenCode, Hand } from '../session/events.ts';
import { foldText } from './fold-text.ts';
import { readRecord } from './read-record.ts';
import type { RecordVehicle, SessionRecord } from './record-form.ts';

/** One session as the index keeps it. */
export interface IndexRow {
  /** Name of the session's files without part and ending. */
  readonly stem: string;
  /** Its last file, from the folder of the index on. */
  readonly file: string;
  /** Sizes and times of its files; another stamp means that it must be read anew. */
  readonly stamp: string;
  readonly id: string;
  readonly at: string;
  readonly status: SessionRecord['status'] | 'unreadable';
  readonly state: 'whole' | 'torn-tail' | 'damaged' | 'unreadable';
  readonly real: boolean;
  /** Which kind of vehicle the readings come from. */
  readonly source: RecordVehicle;
  /** Who gave the answers. */
  readonly by: readonly Hand[];
  readonly person: string;
  readonly customer: string;
  readonly vehicle: string;
  readonly plate: string;
  readonly vin: string;
  readonly order: string;
  readonly codes: readonly string[];
  readonly complaint: string;
  readonly conclusion: string;
  readonly proven: boolean | null;
  readonly verdict: SessionRecord['retest']['verdict'];
  /** What the trouble codes did when it was driven last; null where nobody said. */
  readonly drive: DrivenCode | null;
  readonly procedure: string;
  readonly head: string;
}

/** Words of a list; the whole text is in the record. */
const SHOWN_SIGNS = 120;

/** Reads a session and makes its row and the folded text that is searched. */
export function indexRow(
  disk: Disk,
  path: string,
  file: { readonly stem: string; readonly file: string; readonly stamp: string },
): { readonly row: IndexRow; readonly text: string } {
  const read = readRecord(disk, path);
  if (!read.ok) {
    const row: IndexRow = {
      ...file,
      ...UNREADABLE,
      at: timeOfName(file.stem),
      complaint: read.words.slice(0, SHOWN_SIGNS),
    };
    return { row, text: '' };
  }
  const { record, state } = read;
  const { job } = record;
  const row: IndexRow = {
    ...file,
    id: record.id,
    at: record.startedAt,
    status: record.status,
    state,
    real: record.vehicle === 'real',
    source: record.vehicle,
    by: record.by,
    person: record.person,
    customer: job.customer,
    vehicle: job.vehicle.words,
    plate: job.vehicle.plate,
    vin: job.vehicle.vin,
    order: job.order,
    codes: job.codes,
    complaint: record.complaint.slice(0, SHOWN_SIGNS),
    conclusion: record.cause.slice(0, SHOWN_SIGNS),
    proven: record.conclusion?.proven ?? null,
    verdict: record.retest.verdict,
    drive: record.retest.drives.at(-1)?.code ?? null,
    procedure: record.title,
    head: record.head.hash,
  };
  return { row, text: foldText(searched(record).join(' ')) };
}

const UNREADABLE = {
  id: '',
  status: 'unreadable',
  state: 'unreadable',
  real: true,
  source: 'real',
  by: [],
  person: '',
  customer: '',
  vehicle: '',
  plate: '',
  vin: '',
  order: '',
  codes: [],
  conclusion: '',
  proven: null,
  verdict: null,
  drive: null,
  procedure: '',
  head: '',
} as const;

/** Everything that people wrote, and what the session came to. Titles of steps are the same in every session. */
function searched(record: SessionRecord): string[] {
  const { job, conclusion, drill, retest } = record;
  return [
    record.id,
    record.person,
    record.shop,
    job.customer,
    job.name,
    job.order,
    job.vehicle.words,
    job.vehicle.plate,
    job.vehicle.vin,
    ...job.codes,
    record.complaint,
    job.notes,
    ...job.earlierRepairs.map(({ words }) => words),
    ...job.told.map(({ words }) => words),
    record.title,
    ...record.notes.map(({ text }) => text),
    ...record.lines.map(({ reason }) => reason),
    ...record.tests.flatMap(({ title, note = '' }) => [title, note]),
    record.cause,
    record.correction,
    ...(conclusion?.faults ?? []).flatMap(({ id, words }) => [id, words]),
    retest.words,
    ...(drill ? [drill.level, drill.assignment?.name ?? ''] : []),
  ];
}

/** The time in a file's name, for files whose first line cannot be read. */
function timeOfName(stem: string): string {
  const match = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z/.exec(stem);
  if (!match) return '';
  const [year, month, day, hour, minute, second] = match.slice(1);
  return `${year}-${month}-${day}T${hour}:${minute}:${second}Z`;
}

/** Codes are words; what separates them in a line occurs in none. */
const CODES = ' ';
const FIELD = '\t';

/** A row as one line; tabs and line ends in a field become blanks. */
export function lineOfRow(row: IndexRow): string {
  const { stem, file, stamp, id, at, status, state, source, person, customer } = row;
  const { vehicle, plate, vin, order, codes, complaint, conclusion, proven, verdict } = row;
  return [
    ...[stem, file, stamp, id, at, status, state, source, person, customer],
    ...[vehicle, plate, vin, order, codes.map((code) => code.replace(/\s/g, '')).join(CODES)],
    ...[complaint, conclusion, String(proven), verdict ?? '', row.procedure, row.head],
    row.by.join(CODES),
    row.drive ?? '',
  ]
    .map((field) => field.replace(/[\t\r\n]/g, ' '))
    .join(FIELD);
}

const FIELDS_IN_LINE = 23;

/** The row of a line, or null when it has another number of fields. */
export function rowOfLine(line: string): IndexRow | null {
  const fields = line.split(FIELD);
  if (fields.length !== FIELDS_IN_LINE) return null;
  const field = (i: number) => fields[i]!;
  return {
    stem: field(0),
    file: field(1),
    stamp: field(2),
    id: field(3),
    at: field(4),
    status: field(5) as IndexRow['status'],
    state: field(6) as IndexRow['state'],
    real: field(7) === 'real',
    source: field(7) as IndexRow['source'],
    by: field(21) === '' ? [] : (field(21).split(CODES) as Hand[]),
    person: field(8),
    customer: field(9),
    vehicle: field(10),
    plate: field(11),
    vin: field(12),
    order: field(13),
    codes: field(14) === '' ? [] : field(14).split(CODES),
    complaint: field(15),
    conclusion: field(16),
    proven: field(17) === 'null' ? null : field(17) === 'true',
    verdict: field(18) === '' ? null : (field(18) as NonNullable<IndexRow['verdict']>),
    drive: field(22) === '' ? null : (field(22) as DrivenCode),
    procedure: field(19),
    head: field(20),
  };
}
