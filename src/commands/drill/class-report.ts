/** A folder of students' drills as one report: table, CSV, page. Files that are repeated, altered or no drills are named. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { type Assignment, seedFor, studentKey } from '../../drill/assignment.ts';
import { type ClassDrill, type ClassSummary, classSummary } from '../../drill/class-summary.ts';
import { replayDrill } from '../../drill/drill.ts';
import type { DrillEvent } from '../../drill/drill-events.ts';
import type { MindStore } from '../../drill/drill-world.ts';
import { verifyDrill } from '../../drill/verify-drill.ts';
import { canonicalJson } from '../../log/canonical-json.ts';
import { errorCode } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { readSessionLog } from '../../log/read-session.ts';
import { classCsv } from './class-csv.ts';
import { classPage } from './class-page.ts';
import { classTable } from './class-table.ts';
import { findCopies } from './find-copies.ts';

/** A file that does not count as it stands. */
export interface DoubtfulFile {
  readonly file: string;
  readonly kind:
    | 'repeated'
    | 'copied'
    | 'altered'
    | 'cut-off'
    | 'no-drill'
    | 'second-try'
    | 'other-circuit'
    | 'other-drill';
  readonly words: string;
}

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
  /** What was set: level, seed and time limit of each part. */
  readonly assignment?: Assignment;
}

/** What is wrong with a folder by the system's name for it, after the folder's name. */
const FOLDER_WORDS = new Map([
  ['ENOENT', 'is not there'],
  ['ENOTDIR', 'is a file and no folder'],
  ['EACCES', 'may not be read by you'],
]);

/** Levels below the folder that are looked into: one folder a student. */
const DEPTH_MAX = 3;
const FILE_BYTES_MAX = 20_000_000;

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
  const minds: MindStore = new Map();
  const seen = new Map<string, string>();
  for (const path of files) {
    const file = path.slice(folder.length).replace(/^[/\\]+/, '');
    const read = readDrill(path, file, minds);
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
    drills.push({ file, drill: read.drill, first: read.first });
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

function readDrill(path: string, file: string, minds: MindStore) {
  const doubt = (kind: DoubtfulFile['kind'], words: string): DoubtfulFile => ({
    file,
    kind,
    words,
  });
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    return doubt('no-drill', 'it cannot be read');
  }
  if (bytes.length > FILE_BYTES_MAX) return doubt('no-drill', 'it is too large for a drill');
  const log = readSessionLog(bytes);
  if (log.events[0]?.type !== 'drill-opened' && !beginsLikeADrill(bytes))
    return doubt('no-drill', 'it is not a drill');
  if (log.verdict === 'damaged') return doubt('altered', log.words ?? 'it was changed');
  const events = log.events as unknown as readonly DrillEvent[];
  const checked = trial(() => verifyDrill(events, sha256, minds));
  if (!checked) return doubt('altered', 'its events are not those of a drill');
  if (checked.verdict === 'false') return doubt('altered', checked.problems.join('; '));
  const drill = replayDrill(events)!;
  return { drill, first: log.hashes[0]!, cutOff: log.verdict === 'torn-tail' };
}

/** A changed first line counts as no event any more, but shows what the file was. */
function beginsLikeADrill(bytes: Buffer): boolean {
  const end = bytes.indexOf(LINE_FEED);
  return bytes.subarray(0, end < 0 ? bytes.length : end).includes('"type":"drill-opened"');
}
const LINE_FEED = 0x0a;

/** An altered file may hold anything; what it makes our code throw is a finding about the file. */
function trial<T>(run: () => T): T | null {
  try {
    return run();
  } catch {
    return null;
  }
}

/** Drills on another circuit than the instructor's, or other than set. They count in the table, and the teacher is told. */
function strangers(drills: readonly ClassDrill[], checks: ClassChecks): DoubtfulFile[] {
  const { circuits, assignment } = checks;
  return drills.flatMap(({ file, drill }): DoubtfulFile[] => {
    const { circuit, assignment: note } = drill.opened;
    const found: DoubtfulFile[] = [];
    const own = circuits?.get(circuit.name);
    if (circuits && (!own || canonicalJson(own) !== canonicalJson(circuit)))
      found.push({
        file,
        kind: 'other-circuit',
        words: 'its circuit is not the one in this library',
      });
    const words = assignment && otherThanSet(drill, assignment);
    if (words) found.push({ file, kind: 'other-drill', words });
    if (assignment && note?.name !== assignment.name)
      found.push({
        file,
        kind: 'other-drill',
        words: `it is not of the assignment "${assignment.name}"`,
      });
    return found;
  });
}

function otherThanSet({ opened }: ClassDrill['drill'], assignment: Assignment): string | null {
  const { assignment: note, level, seed, student, procedure, circuit } = opened;
  if (note?.name !== assignment.name) return null;
  const set = assignment.drills[note.part - 1];
  if (!set) return `the assignment has no part ${note.part}`;
  if (set.procedure !== (procedure?.name ?? circuit.name)) return 'it is on another procedure';
  if (set.level !== level) return `its level is ${level} and not ${set.level}`;
  if (set.limitMinutes !== note.limitMinutes) return 'its time limit is another one';
  if (seedFor(assignment, note.part, student, sha256) !== seed)
    return 'its vehicle is not the one of this student';
  return null;
}

/** The same student with the same vehicle again: both count in the table, and the teacher is told. */
function secondTries(drills: readonly ClassDrill[]): DoubtfulFile[] {
  const firsts = new Map<string, string>();
  return drills.flatMap(({ file, drill }): DoubtfulFile[] => {
    const { student, circuit, level, seed } = drill.opened;
    const key = JSON.stringify([studentKey(student), circuit.name, level, seed]);
    const first = firsts.get(key);
    if (first !== undefined)
      return [{ file, kind: 'second-try', words: `the same student had this vehicle in ${first}` }];
    firsts.set(key, file);
    return [];
  });
}
