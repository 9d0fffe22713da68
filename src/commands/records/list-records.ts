/** `records list` and `records find`: one line a session, newest first. */
import { findRecords, type Query } from '../../records/find-records.ts';
import type { IndexRow } from '../../records/index-row.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { dateWords } from '../../records/report-words.ts';
import type { Hand } from '../../session/events.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, optionText } from '../command.ts';
import { indexOf, Stop } from './record-arguments.ts';

const SCHEMA_VERSION = 1;
const SHOWN_ROWS = 50;
/** Fields of a query that are options of the command by the same name. */
const FIELDS = [
  'plate',
  'vin',
  'order',
  'code',
  'conclusion',
  'person',
  'customer',
  'status',
  'verdict',
  'since',
  'until',
] as const;
const DAY = /^\d{4}(-\d\d(-\d\d)?)?$/;

/** Prints the sessions that fit the words and the options; 1 when none does. */
export async function listRecords(args: Arguments, io: Io): Promise<number> {
  const query = queryOf(args);
  const limit = limitOf(args);
  const { rows, respelled } = findRecords(await indexOf(args, io), query);
  if (args.values['json'] === true) {
    io.out(
      harmlessJson({
        schemaVersion: SCHEMA_VERSION,
        respelled,
        // A list takes each conclusion as its file has it; whether it is proven takes the model to recompute.
        sessions: rows.slice(0, limit).map((row) => ({ ...row, recomputed: false })),
      }),
    );
    return rows.length > 0 ? EXIT.done : EXIT.wrongInput;
  }
  for (const { typed, taken } of respelled)
    io.err(`there is no "${safeText(typed)}"; taken for: ${taken.map(safe).join(', ')}\n`);
  if (rows.length === 0) {
    io.err('no session matches\n');
    return EXIT.wrongInput;
  }
  io.out(`${rows.slice(0, limit).map(rowText).join('\n')}\n`);
  if (rows.length > limit)
    io.err(`${rows.length - limit} more; see them with --limit ${rows.length}\n`);
  return EXIT.done;
}

function queryOf(args: Arguments): Query {
  const given = FIELDS.flatMap((name) => {
    const value = optionText(args, name);
    return value === undefined ? [] : [[name, value] as const];
  });
  for (const [name, value] of given)
    if ((name === 'since' || name === 'until') && !DAY.test(value))
      throw new Stop(
        EXIT.wrongUse,
        `--${name} cannot be "${value}"`,
        'write it like 2026-03-04, 2026-03 or 2026',
      );
  return { words: args.positionals.join(' '), ...Object.fromEntries(given) };
}

function limitOf(args: Arguments): number {
  const typed = optionText(args, 'limit');
  if (typed === undefined) return SHOWN_ROWS;
  if (/^[1-9]\d{0,6}$/.test(typed)) return Number(typed);
  throw new Stop(EXIT.wrongUse, `--limit cannot be "${typed}"`, 'give a whole number from 1');
}

/** Two lines: when, vehicle, where it stands, what came out; then the name to use with the other verbs. */
function rowText(row: IndexRow): string {
  const vehicle = [row.plate, row.vehicle].filter((words) => words !== '').join(', ');
  const result = row.conclusion || row.complaint || row.procedure;
  const first = [dateWords(row.at), vehicle, statusWords(row), result].map(safe);
  return `${first.filter((part) => part !== '').join('  ')}\n    ${row.stem}`;
}

function statusWords(row: IndexRow): string {
  const words: string[] = [row.verdict ?? row.status];
  if (row.drive !== null) words.push(row.drive === 'came-back' ? 'CAME BACK' : 'stayed away');
  if (row.state === 'damaged') words.push('DAMAGED');
  if (row.source !== 'real') words.push(row.source === 'drill' ? 'drill' : 'practice');
  // A practice run is no record of a vehicle, whoever gave its answers.
  else words.push(...row.by.flatMap((hand) => HAND_MARKS[hand] ?? []));
  return `[${words.join(', ')}]`;
}

const HAND_MARKS: Partial<Record<Hand, string>> = {
  'answers-file': 'from a file',
  program: 'from a program',
  pipe: 'from a pipe',
};

function safe(text: string): string {
  return safeText(text);
}
