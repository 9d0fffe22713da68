/** What the verbs of `ohmward records` share: the folder, the index, the session a person means, the output file. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { sessionsFolder } from '../../files/folders.ts';
import { openSettings } from '../../files/settings.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { located } from '../../log/read-session-file.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { sessionAtPath, sessionFileIn, sessionInIndex } from '../../records/find-session.ts';
import { judgedAgain } from '../../records/judged-by.ts';
import { type ReadRecord, readRecord } from '../../records/read-record.ts';
import { indexPath, openIndex, type RecordIndex } from '../../records/record-index.ts';
import { derivedFrom } from '../../records/verify-session.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, optionText } from '../command.ts';

/** Ends a verb with an exit code after words on standard error. */
export class Stop extends Error {
  readonly exit: number;
  constructor(exit: number, words: string, fix?: string) {
    super(fix === undefined ? words : `${words}\n  ${fix}`);
    this.exit = exit;
  }
}

/** Sessions read before the person is told that it takes a while. */
const TOLD_EVERY = 500;

/** The folder of sessions: `--folder`, with `--shared` the copy of the shared database, else the usual one. */
export async function folderOf(args: Arguments, io: Io): Promise<string> {
  if (args.values['shared'] === true) return (await import('./share-records.ts')).sharedFolder(io);
  const given = optionText(args, 'folder');
  if (given !== undefined) return resolve(io.cwd, given);
  const where = { env: io.env, cwd: io.cwd };
  if (io.env['OHMWARD_SESSIONS']) return sessionsFolder(where);
  const opened = await openSettings(io.env);
  if ('problem' in opened) {
    io.err(`ohmward: ${safeText(opened.problem.words)}; the usual folder is used\n`);
    return sessionsFolder(where);
  }
  return sessionsFolder({ ...where, settings: opened.store.values.sessions });
}

/** The index of the folder, brought up to date. */
export async function indexOf(args: Arguments, io: Io): Promise<RecordIndex> {
  const folder = await folderOf(args, io);
  // The usual folder comes with the first session; one that was named is a slip of the hand.
  if (optionText(args, 'folder') !== undefined && !existsSync(folder))
    throw new Stop(EXIT.wrongInput, `there is no folder ${folder}`, 'check the spelling');
  const opened = openIndex(nodeDisk, folder, indexPath(io.env, folder), (done, of) => {
    if (done % TOLD_EVERY === 0) io.err(`reading sessions: ${done} of ${of}\n`);
  });
  if ('words' in opened) throw new Stop(EXIT.wrongInput, opened.words);
  const { warning } = opened.index;
  if (warning !== null) io.err(`ohmward: ${safeText(warning)}\n`);
  return opened.index;
}

/** The path of the session that a person means. */
export async function sessionPathOf(name: string, args: Arguments, io: Io): Promise<string> {
  const path =
    sessionAtPath(nodeDisk, io.cwd, name) ??
    sessionFileIn(nodeDisk, await folderOf(args, io), name);
  if (path !== null) return path;
  const index = await indexOf(args, io);
  const found = sessionInIndex(index, name);
  if (found.ok) return found.path;
  const drill = sessionFileIn(nodeDisk, join(index.folder, 'drills'), name);
  if (drill !== null) return drill;
  throw new Stop(EXIT.wrongInput, found.words, found.fix);
}

/** The one session that a verb is about. */
export function oneSession({ positionals }: Arguments, verb: string): string {
  const [name] = positionals;
  if (name !== undefined && positionals.length === 1) return name;
  const words = name === undefined ? `${verb} which session?` : `${verb} takes one session`;
  throw new Stop(EXIT.wrongUse, words, `ohmward records ${verb} last`);
}

type ReadSession = Extract<ReadRecord, { ok: true }>;

/** The session's record as far as its file can be believed, and the flaw where that ends. */
async function readAny(name: string, args: Arguments, io: Io): Promise<ReadSession> {
  const read = readRecord(nodeDisk, await sessionPathOf(name, args, io));
  if (!read.ok) throw new Stop(EXIT.wrongInput, read.words, read.fix);
  return read;
}

/**
 * The session's record for a paper. A damaged one is refused, since a paper would not show it, and one that says what its
 * own rules do not derive; where other rules judged it, the record says what comes out otherwise today.
 */
export async function readNamed(name: string, args: Arguments, io: Io): Promise<ReadSession> {
  const read = await readAny(name, args, io);
  const { flaw } = read;
  if (flaw)
    throw new Stop(EXIT.wrongInput, located(flaw), `${flaw.fix}; what comes before it: ${SHOW_IT}`);
  const derived = derivedFrom(read);
  const wrong = derived.find(({ isFalse }) => isFalse);
  if (wrong)
    throw new Stop(
      EXIT.wrongInput,
      `event ${wrong.seq} ${wrong.words}`,
      'no paper is made of it; all that is wrong: ohmward records verify',
    );
  return { ...read, record: judgedAgain(read.record, derived) };
}

const SHOW_IT = 'ohmward records show';

/** The same for reading on the screen: of a damaged one what stands before the damage, which is told. */
export async function readStanding(name: string, args: Arguments, io: Io): Promise<ReadSession> {
  const read = await readAny(name, args, io);
  const { flaw } = read;
  if (flaw) {
    io.err(`ohmward: ${safeText(located(flaw))}\n  ${safeText(flaw.fix)}\n`);
    io.err('This session is damaged: what is shown ends before that line.\n');
  }
  return read;
}

/** One of a few words given with an option. */
export function optionChoice<T extends string>(
  args: Arguments,
  name: string,
  choices: readonly T[],
  standard: T,
): T {
  const typed = optionText(args, name);
  if (typed === undefined) return standard;
  const choice = choices.find((one) => one === typed);
  if (choice !== undefined) return choice;
  const near = nearestName(typed, choices);
  const fix = near ? `did you mean "${near}"?` : `one of: ${choices.join(', ')}`;
  throw new Stop(EXIT.wrongUse, `--${name} cannot be "${typed}"`, fix);
}

/** Puts a text into the file of `--output`, or on standard output for `-` and when there is none. */
export function deliver(text: string, args: Arguments, io: Io): void {
  const output = optionText(args, 'output');
  if (output === undefined || output === '-') {
    io.out(text);
    return;
  }
  const path = resolve(io.cwd, output);
  if (existsSync(path) && args.values['force'] !== true)
    throw new Stop(
      EXIT.wrongInput,
      `${output} is there already`,
      'choose another name, or add --force',
    );
  const written = writeWholeFile(nodeDisk, path, text);
  if (!written.ok) throw new Stop(EXIT.wrongInput, written.problem.words, written.problem.fix);
  io.err(`written: ${safeText(path)}\n`);
}
