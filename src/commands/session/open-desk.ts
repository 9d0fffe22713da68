/**
 * The desk a session is worked at: the library, the person's settings, the folder for sessions, the clock.
 * Everything above the pure rooms that `run`, `resume`, `drill` and the screens need, brought together once.
 */
import { basename, dirname, join } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { loadCircuit } from '../../circuit/load-circuit.ts';
import { startClock } from '../../files/clock.ts';
import { dataFolder, libraryFolder, sessionsFolder } from '../../files/folders.ts';
import { type LoadedLibrary, loadFile, loadLibrary } from '../../files/load-library.ts';
import {
  openSettings,
  type Settings,
  type SettingsStore,
  STANDARD_SETTINGS,
} from '../../files/settings.ts';
import type { Disk } from '../../log/disk.ts';
import { memoryDisk } from '../../log/memory-disk.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { type FreeOrder, freeOrder, freeOrderTitle } from '../../procedure/free-order.ts';
import type { Drive } from '../../procedure/job.ts';
import { type LinkedProcedure, linkProcedure } from '../../procedure/link-procedure.ts';
import { type ParsedProcedure, parseProcedure } from '../../procedure/parse-procedure.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import type { When } from '../../session/events.ts';
import { modelFor } from '../../session/session-model.ts';
import { formatIssue } from '../../source/format-issue.ts';
import { type Checked, isUsable } from '../../source/issue.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { type FileKind, fileKind, KIND_WORDS } from '../check/file-kind.ts';
import { treesIn } from '../check/kept-verdicts.ts';
import type { Io } from '../command.ts';
import { ownFile } from '../own-file.ts';
import { filesBeside } from './files-beside.ts';
import { NO_LIBRARY } from './no-library.ts';
import { isPath } from './what-is-named.ts';

/** All that commands work with besides their flags. */
export interface Desk {
  readonly library: LoadedLibrary;
  readonly settings: () => Settings;
  readonly store: SettingsStore | null;
  readonly sessions: () => string;
  /** Where a session goes on when its own folder takes no more and nobody names another. */
  readonly refuge: string;
  /** Where known-good captures are kept. */
  readonly goodCaptures: string;
  /** What a later command finds a session by, as typed in a shell: its name in the usual folder, else its path. */
  readonly nameOf: (path: string) => string;
  readonly now: () => When;
  readonly program: string;
  /** Where sessions are written: the disk, or in a preview the memory. */
  readonly disk: Disk;
  /** Nothing is kept. */
  readonly preview: boolean;
  /** Folder that paths typed in a session are relative to. */
  readonly cwd: string;
  /** The environment, for what is kept beside the sessions. */
  readonly env: Io['env'];
  /** The person's home folder, which `~` stands for. */
  readonly home: string | undefined;
}

/** What the flags of a command ask of the desk. */
export interface DeskWish {
  /** Folder for sessions instead of the usual one. */
  readonly sessions?: string | undefined;
  /** A file of the person's own; what lies beside it comes before the library. */
  readonly file?: string | undefined;
  readonly preview?: boolean;
}

/** Stands for the folder of sessions that are not kept. */
const NOWHERE = '(preview, not saved)';

/** Opens the desk. A broken settings file is told once on `io.err`, and the standard settings hold. */
export async function openDesk(
  io: Io,
  program: string,
  { sessions, file, preview = false }: DeskWish = {},
): Promise<Desk | Problem> {
  const folder = libraryFolder(io.cwd);
  if (folder === null) return NO_LIBRARY;
  const opened = await openSettings(io.env);
  const store = 'store' in opened ? opened.store : null;
  if ('problem' in opened)
    io.err(
      `ohmward: ${opened.problem.words}\n  ${opened.problem.fix}\n  Standard settings hold meanwhile.\n`,
    );
  const settings = () => store?.values ?? STANDARD_SETTINGS;
  const usual = () => sessionsFolder({ env: io.env, cwd: io.cwd, settings: settings().sessions });
  const library = loadLibrary(folder, file === undefined ? undefined : filesBeside(file));
  if (library.cautionFlaws.length > 0) return cautionProblem(library);
  return {
    library,
    settings,
    store,
    sessions: () => (preview ? NOWHERE : (sessions ?? usual())),
    refuge: join(dataFolder(io.env), 'sessions'),
    goodCaptures: join(dataFolder(io.env), 'good-captures'),
    nameOf: (path) => asTyped(dirname(path) === usual() ? basename(path, '.jsonl') : path),
    disk: preview ? memoryDisk() : nodeDisk,
    preview,
    now: startClock(),
    program,
    cwd: io.cwd,
    env: io.env,
    home: io.env.HOME,
  };
}

/** Cautions that cannot all be shown: with one missing, no test is begun. */
function cautionProblem({ cautionFlaws }: LoadedLibrary): Problem {
  const files = [...new Set(cautionFlaws.map(({ issue }) => issue.at.file))];
  return {
    problem: cautionFlaws.map(({ issue, text }) => formatIssue(issue, text)).join('\n'),
    fix: `no session starts without its cautions; see everything with: ohmward check ${files.join(' ')}`,
  };
}

/** One word for a shell. */
function asTyped(word: string): string {
  return /^[\w./:@%+=-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}

/** What a session is on: a procedure, or a circuit alone in free order. */
export type SessionSubject =
  | { readonly kind: 'procedure'; readonly procedure: ParsedProcedure }
  | { readonly kind: 'free-order'; readonly circuit: Circuit };

/** A procedure with its circuit when it has one, both ready for a vehicle; null for the procedure in free order. */
export interface LinkedSubject {
  readonly procedure: Procedure | null;
  readonly circuit: Circuit | null;
  /** Null in free order. */
  readonly linked: LinkedProcedure | null;
}

/** A procedure by its name in the library or the path of its file; free order by `guided-CIRCUIT`, a circuit's name or file. */
export function findSubject(desk: Desk, nameOrPath: string): SessionSubject | Problem {
  const { circuits, procedures } = desk.library;
  // No name is a path, and to know that a name is missing the whole library is read.
  if (!isPath(nameOrPath) && !procedures.has(nameOrPath)) {
    const free = freeOrders(desk).find(({ name }) => name === nameOrPath);
    const circuit = circuits.get(free?.circuit ?? nameOrPath);
    if (circuit) return { kind: 'free-order', circuit };
    if (free) return circuitProblem(desk, free.circuit);
  }
  const own = isPath(nameOrPath) ? circuitOfFile(nameOrPath) : null;
  if (own) return isProblem(own) ? own : { kind: 'free-order', ...own };
  const procedure = findProcedure(desk, nameOrPath);
  return isProblem(procedure) ? procedure : { kind: 'procedure', procedure };
}

/** Links a subject for a vehicle; the issues as text when it cannot be used. */
export function linkSubject(
  desk: Desk,
  subject: SessionSubject,
  drive: Drive,
): LinkedSubject | Problem {
  if (subject.kind === 'free-order')
    return { procedure: null, circuit: subject.circuit, linked: null };
  const linked = linkFor(desk, subject.procedure, drive);
  if (isProblem(linked)) return linked;
  return { procedure: linked.procedure, circuit: linked.circuit, linked };
}

/** Title of a subject, as screens and reports head it. */
export function subjectTitle(subject: SessionSubject): string {
  return subject.kind === 'free-order'
    ? freeOrderTitle(subject.circuit)
    : subject.procedure.draft.title;
}

/** Name of a subject, for files and messages. */
export function subjectName(subject: SessionSubject): string {
  return subject.kind === 'free-order' ? subject.circuit.name : subject.procedure.draft.procedure;
}

function circuitProblem(desk: Desk, name: string): Problem {
  const broken = desk.library.circuits.lost(name);
  return {
    problem: broken
      ? broken.issues.map((issue) => formatIssue(issue, broken.text)).join('\n')
      : `the circuit "${name}" cannot be used`,
    fix: broken ? `see everything with: ohmward check ${broken.path}` : 'choose another',
  };
}

/** A circuit of one's own by its file; null where the file holds a procedure or cannot be told. */
function circuitOfFile(path: string): { readonly circuit: Circuit } | Problem | null {
  const kindFile = loadFile(path, (text, file): Checked<FileKind> => {
    const found = fileKind(text, file);
    return 'kind' in found
      ? { value: found.kind, issues: [] }
      : { value: null, issues: found.issues };
  });
  const kind = kindFile.value;
  if (kind === null || kind === 'procedure') return null;
  if (kind !== 'circuit')
    return {
      problem: `${path} is ${KIND_WORDS[kind]}`,
      fix: 'name a procedure or a circuit',
    };
  const file = loadFile(path, loadCircuit);
  if (file.value) return { circuit: file.value };
  return {
    problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
    fix: `see everything with: ohmward check ${path}`,
  };
}

/** A procedure by its name in the library, or by the path of a file. */
function findProcedure(desk: Desk, nameOrPath: string): ParsedProcedure | Problem {
  const known = isPath(nameOrPath) ? undefined : desk.library.procedures.get(nameOrPath);
  if (known) return known;
  if (isPath(nameOrPath)) {
    const file = loadFile(nameOrPath, parseProcedure);
    if (file.value) return file.value;
    return {
      problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
      fix: 'fix the file, then try again',
    };
  }
  const broken = desk.library.procedures.lost(nameOrPath);
  if (broken)
    return {
      problem: broken.issues.map((issue) => formatIssue(issue, broken.text)).join('\n'),
      fix: `fix ${broken.path}, then try again`,
    };
  const names = startable(desk).map(({ draft }) => draft.procedure);
  const all = [
    ...names,
    ...desk.library.circuits.keys(),
    ...freeOrders(desk).map((one) => one.name),
  ];
  const near = nearestName(nameOrPath, all);
  const own = ownFile(nameOrPath, desk.cwd);
  return {
    problem: `there is no procedure "${nameOrPath}"`,
    fix: own ?? (near ? `did you mean "${near}"?` : `known: ${names.join(', ')}`),
  };
}

/** Procedures a person can start: those that need nothing from a caller. */
export function startable(desk: Desk): ParsedProcedure[] {
  return [...desk.library.procedures.values()].filter(({ draft }) => draft.needs === undefined);
}

/** Free order on each circuit. */
export function freeOrders(desk: Desk): FreeOrder[] {
  return desk.library.circuitHeads().map(freeOrder);
}

/** Links a procedure for a vehicle; the issues as text when it cannot be used. */
function linkFor(desk: Desk, parsed: ParsedProcedure, drive: Drive): LinkedProcedure | Problem {
  const { meter } = desk.settings();
  const linked = linkProcedure(parsed, desk.library, {
    drive,
    modelOf: (circuit) => modelFor(circuit, meter),
  });
  if (linked.value) return linked.value;
  const errors = linked.issues.filter((issue) => !isUsable([issue]));
  const text = (file: string) => desk.library.procedures.known(file)?.text ?? parsed.source.text;
  const told = [
    ...errors.map((issue) => formatIssue(issue, text(issue.at.file))),
    ...lostBeside(desk, parsed),
  ];
  return {
    problem: told.join('\n'),
    fix: `see everything with: ohmward check ${parsed.source.file}`,
  };
}

/** What is wrong with the files of the circuit and the sub-procedures that a tree names and cannot use. */
function lostBeside({ library }: Desk, parsed: ParsedProcedure): string[] {
  const { circuits, procedures } = library;
  const used = [...treesIn(parsed, library)].flatMap(({ draft }) =>
    Object.values(draft.steps).flatMap(({ use }) => (use === undefined ? [] : [use])),
  );
  const lost = [
    circuits.lost(parsed.draft.circuit ?? ''),
    ...[...new Set(used)].map((name) => procedures.lost(name)),
  ];
  return lost.flatMap((file) =>
    file === null ? [] : file.issues.map((issue) => formatIssue(issue, file.text)),
  );
}
