/** A folder of students' drills as one report: table, CSV, page. Files that are repeated, altered or no drills are named. */

import { readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { type Assignment, seedFor, studentKey } from '../../drill/assignment.ts';
import { type ClassDrill, type ClassSummary, classSummary } from '../../drill/class-summary.ts';
import { verifyDrill } from '../../drill/verify-drill.ts';
import { readPlainFile } from '../../files/plain-file.ts';
import { canonicalJson } from '../../log/canonical-json.ts';
import { errorCode } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { readSessionFile } from '../../log/read-session-file.ts';
import type { CautionRule } from '../../procedure/cautions.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { falselyDerived } from '../../records/verify-session.ts';
import { RULES, type SessionEvent } from '../../session/events.ts';
import { classCsv } from './class-csv.ts';
import { classPage } from './class-page.ts';
import { classTable } from './class-table.ts';
import type { DoubtfulFile } from './doubtful-file.ts';
import { findCopies } from './find-copies.ts';

/** The report of a class in its three forms, and the files that it leaves out. */
export interface ClassReport {
  readonly summary: ClassSummary;
  readonly doubtful: readonly DoubtfulFile[];
  readonly table: string;
  readonly csv: string;
  readonly html: string;
}

/** What the drills of a class are held against, beside themselves. */
export interface ClassChecks {
  /** The instructor's circuits: a student's own would make a drill as easy as wanted. */
  readonly circuits?: ReadonlyMap<string, Circuit>;
  /** The instructor's procedure of that name as a drill has it; null where there is none. */
  readonly procedureOf?: (name: string) => Procedure | null;
  /** The instructor's caution rules: without them nothing can be passed over. */
  readonly cautions?: readonly CautionRule[];
  /** What was set: level, seed and time limit of each part. */
  readonly assignment?: Assignment;
}

/** What is wrong with a folder by the system's name for it, after the folder's name. */
const FOLDER_WORDS = new Map([
  ['ENOENT', 'does not exist'],
  ['ENOTDIR', 'is a file, not a folder'],
  ['EACCES', 'cannot be read: permission denied'],
]);

/** Levels below the folder that are looked into: one folder a student. */
const DEPTH_MAX = 3;
const FILE_BYTES_MAX = 20_000_000;
/** Of what is not the same when it is derived again. */
const TOLD_MOST = 5;

/** Reads and checks every drill in `folder`; words that follow the folder's name when it cannot be read. */
export function classReport(
  folder: string,
  checks: ClassChecks = {},
): ClassReport | { readonly words: string } {
  let files: string[];
  try {
    files = drillFiles(folder, DEPTH_MAX);
  } catch (error) {
    return { words: FOLDER_WORDS.get(errorCode(error)) ?? `cannot be read (${errorCode(error)})` };
  }
  const doubtful: DoubtfulFile[] = [];
  const drills: (ClassDrill & { readonly first: string })[] = [];
  const seen = new Map<string, string>();
  for (const path of files) {
    const file = path.slice(folder.length).replace(/^[/\\]+/, '');
    const read = readDrill(path, file);
    if ('kind' in read) {
      doubtful.push(read);
      continue;
    }
    const twin = seen.get(read.first);
    if (twin !== undefined) {
      doubtful.push({ file, kind: 'repeated', words: `the same drill as ${twin}; counted once` });
      continue;
    }
    seen.set(read.first, file);
    if (read.cutOff)
      doubtful.push({
        file,
        kind: 'cut-off',
        words: 'the last line is incomplete; counted so far',
      });
    if (read.otherRules !== null)
      doubtful.push({
        file,
        kind: 'other-rules',
        words: `by rules ${read.otherRules} of the program: what its vehicle showed, its minutes and its points are as the file says them`,
      });
    drills.push({ file, drill: read.drill, vehicle: read.vehicle, first: read.first });
  }
  doubtful.push(...findCopies(drills), ...strangers(drills, checks), ...secondTries(drills));
  const summary = classSummary(drills);
  return {
    summary,
    doubtful,
    table: classTable(summary, doubtful),
    csv: classCsv(summary, doubtful),
    html: classPage(basename(folder), summary, doubtful),
  };
}

function drillFiles(folder: string, depth: number): string[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) =>
    a.name < b.name ? -1 : 1,
  );
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return depth > 0 ? drillFiles(path, depth - 1) : [];
    return entry.isFile() && entry.name.endsWith('.jsonl') ? [path] : [];
  });
}

function readDrill(path: string, file: string) {
  const doubt = (kind: DoubtfulFile['kind'], words: string): DoubtfulFile => ({
    file,
    kind,
    words,
  });
  if (sizeOf(path) > FILE_BYTES_MAX) return doubt('no-drill', 'it is too large for a drill');
  const read = readSessionFile(nodeDisk, path);
  if (!read.ok) {
    const isDrill = read.isDrill || beginsLikeADrill(path);
    return doubt(isDrill ? 'altered' : 'no-drill', read.problem.problem);
  }
  const { session, events, log } = read;
  const { vehicle } = session.opened;
  if (vehicle.kind !== 'drill') return doubt('no-drill', 'it is not a drill');
  const { verdict, problems } = verifyDrill(events, sha256);
  const wrong = verdict === 'false' ? problems : falselyDerived(read).slice(0, TOLD_MOST);
  if (wrong.length > 0)
    return doubt('altered', wrong.map(({ seq, words }) => `event ${seq}: ${words}`).join('; '));
  const cutOff = log.verdict === 'torn-tail';
  return { drill: session, vehicle, first: log.hashes[0]!, cutOff, otherRules: otherRules(events) };
}

/** The first version of the rules in it that is not ours: anybody can write one, and little is derived again under it. */
function otherRules(events: readonly SessionEvent[]): number | null {
  const named = events.flatMap((event) => ('rules' in event ? [event.rules] : []));
  return named.find((rules) => rules !== RULES) ?? null;
}

/** A changed first line counts as no event any more, but shows what the file was. */
function beginsLikeADrill(path: string): boolean {
  try {
    const bytes = readPlainFile(path, FILE_BYTES_MAX);
    const end = bytes.indexOf(LINE_FEED);
    const first = bytes.subarray(0, end < 0 ? bytes.length : end);
    return DRILL_SIGNS.some((sign) => first.includes(sign));
  } catch (error) {
    errorCode(error);
    return false;
  }
}
const LINE_FEED = 0x0a;
/** Of today's form and of the earlier one. */
const DRILL_SIGNS = ['"kind":"drill"', '"type":"drill-opened"'];

function sizeOf(path: string): number {
  try {
    return statSync(path).size;
  } catch (error) {
    errorCode(error);
    return 0;
  }
}

/** Drills on another circuit, procedure or cautions than the instructor's, or other than set. They count in the table, and the teacher is told. */
function strangers(drills: readonly ClassDrill[], checks: ClassChecks): DoubtfulFile[] {
  const { circuits, assignment } = checks;
  return drills.flatMap(({ file, drill, vehicle }): DoubtfulFile[] => {
    const { circuit } = drill.opened;
    const { assignment: note } = vehicle;
    const found: DoubtfulFile[] = [];
    const own = circuits?.get(circuit?.name ?? '');
    if (circuits && !isSame(own, circuit))
      found.push({
        file,
        kind: 'other-circuit',
        words: 'its circuit is not the one in this library',
      });
    const { procedure, cautionRules } = drill.opened;
    if (procedure && checks.procedureOf && !isSame(checks.procedureOf(procedure.name), procedure))
      found.push({
        file,
        kind: 'other-procedure',
        words: 'its procedure is not the one in this library',
      });
    if (checks.cautions && !isSame(checks.cautions, cautionRules))
      found.push({
        file,
        kind: 'other-cautions',
        words: 'its cautions are not those of this library',
      });
    const words = assignment && otherThanSet({ drill, vehicle }, assignment);
    if (words) found.push({ file, kind: 'other-drill', words });
    if (assignment && note?.name !== assignment.name)
      found.push({
        file,
        kind: 'other-drill',
        words: `it is not part of the assignment "${assignment.name}"`,
      });
    return found;
  });
}

function isSame(own: unknown, given: unknown): boolean {
  return own !== undefined && own !== null && canonicalJson(own) === canonicalJson(given);
}

function otherThanSet(
  { drill, vehicle }: Pick<ClassDrill, 'drill' | 'vehicle'>,
  assignment: Assignment,
): string | null {
  const { person: student, procedure, circuit } = drill.opened;
  const { assignment: note, level, seed } = vehicle;
  if (note?.name !== assignment.name) return null;
  const set = assignment.drills[note.part - 1];
  if (!set) return `the assignment has no part ${note.part}`;
  if (set.procedure !== (procedure?.name ?? circuit?.name)) return 'it is on another procedure';
  if (set.level !== level) return `its level is ${level} and not ${set.level}`;
  if (set.limitMinutes !== note.limitMinutes) return 'its time limit is different';
  if (seedFor(assignment, note.part, student, sha256) !== seed)
    return 'its vehicle is not the one set for this student';
  return null;
}

/** The same student with the same vehicle again: both count in the table, and the teacher is told. */
function secondTries(drills: readonly ClassDrill[]): DoubtfulFile[] {
  const firsts = new Map<string, string>();
  return drills.flatMap(({ file, drill, vehicle }): DoubtfulFile[] => {
    const { person, circuit } = drill.opened;
    const key = JSON.stringify([studentKey(person), circuit?.name, vehicle.level, vehicle.seed]);
    const first = firsts.get(key);
    if (first !== undefined)
      return [{ file, kind: 'second-try', words: `the same student had this vehicle in ${first}` }];
    firsts.set(key, file);
    return [];
  });
}
