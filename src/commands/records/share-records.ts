/** `records share`, and where `--shared` looks: the folder of sessions and the shared database. */

import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { openSettings } from '../../files/settings.ts';
import { sha256 } from '../../log/hash.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { countWords } from '../../quantity/count-words.ts';
import { indexPath } from '../../records/record-index.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { fetchShared } from '../../records/shared/fetch-shared.ts';
import {
  type Ahead,
  type Alarm,
  type ShareOutcome,
  sessionPaths,
  shareSessions,
} from '../../records/shared/share-folder.ts';
import { SharedProblem, Unreachable } from '../../records/shared/shared-problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { folderOf, Stop, sessionPathOf } from './record-arguments.ts';

const SCHEMA_VERSION = 1;
/** A person waits at the prompt so long for a database that is away; what waits is sent the next time. */
const PATIENCE = { patienceMs: 3_000 };

/** Sends what is not there yet; 1 when something is different there, unreadable here, or has to wait. */
export async function shareRecords(args: Arguments, io: Io): Promise<number> {
  const url = await databaseOf(io);
  const found = await pathsOf(args, io);
  const share = { disk: nodeDisk, url, paths: found, cart: hostname(), patience: PATIENCE };
  const shared = await mended(() => shareSessions(share));
  if (args.values['json'] === true)
    io.out(harmlessJson({ schemaVersion: SCHEMA_VERSION, ...shared }));
  else tell(shared, io);
  const { alarms, ahead, left, waiting } = shared;
  const isOdd = [alarms, ahead, left].some((list) => list.length > 0);
  return isOdd || waiting !== null ? EXIT.wrongInput : EXIT.done;
}

async function pathsOf(args: Arguments, io: Io): Promise<string[]> {
  if (args.positionals.length > 0) {
    const paths: string[] = [];
    for (const name of args.positionals) paths.push(await sessionPathOf(name, args, io));
    return paths;
  }
  const listed = sessionPaths(await folderOf(args, io));
  if ('words' in listed) throw new Stop(EXIT.wrongInput, listed.words);
  return listed.paths;
}

function tell({ inStep, sent, alarms, ahead, left, waiting }: ShareOutcome, io: Io): void {
  io.out(`${countWords(inStep, 'session')} up to date, ${countWords(sent, 'event')} sent\n`);
  for (const { path, words } of left)
    io.err(`ohmward: not shared: ${safeText(path)}: ${safeText(words)}\n`);
  for (const alarm of alarms) io.err(alarmWords(alarm));
  for (const more of ahead) io.err(aheadWords(more));
  if (waiting)
    io.err(
      `ohmward: the database cannot be reached: ${safeText(waiting.words)}\n  ${countWords(waiting.sessions, 'session')} waiting; run it again when the network is back\n`,
    );
}

function alarmWords({ session, seq, here, there, path }: Alarm): string {
  return [
    `ohmward: ALARM: event ${seq} of session ${safeText(session)} differs from the one in the database`,
    `  here:  ${here} (${safeText(path)})`,
    `  there: ${there}`,
    '  Nothing was replaced. One of the two was changed, or two sessions have the same id.',
    WHO_DECIDES,
    '',
  ].join('\n');
}

function aheadWords({ session, path, here, there }: Ahead): string {
  return [
    `ohmward: ALARM: the database has ${there} events of session ${safeText(session)}, the file has ${here}`,
    `  file: ${safeText(path)}`,
    '  Nothing was replaced. The session was continued elsewhere, or the file has lost its end.',
    WHO_DECIDES,
    '',
  ].join('\n');
}

/** The way out of both. */
const WHO_DECIDES =
  '  Which one is right is for the owner of the tables to decide, with set_events_aside (docs/security.md).';

/** The user's copy of the shared sessions, brought up to date; as it was when the database cannot be reached. */
export async function sharedFolder(io: Io): Promise<string> {
  const url = await databaseOf(io);
  const cache = dirname(indexPath(io.env, '/'));
  const folder = join(cache, `shared-${sha256(url).slice(0, 16)}`);
  try {
    const { doubtful } = await mended(() => fetchShared(nodeDisk, url, folder, PATIENCE));
    for (const { session, words } of doubtful)
      io.err(
        `ohmward: in the database session ${safeText(session)} is incomplete: ${safeText(words)}\n`,
      );
  } catch (error) {
    if (!(error instanceof Unreachable)) throw error;
    io.err(
      `ohmward: the database cannot be reached; this is what was there last time: ${safeText(error.message)}\n`,
    );
  }
  return folder;
}

async function databaseOf(io: Io): Promise<string> {
  const fromEnv = io.env['OHMWARD_DATABASE'];
  if (fromEnv) return fromEnv;
  const opened = await openSettings(io.env);
  if ('problem' in opened)
    throw new Stop(EXIT.wrongInput, opened.problem.words, opened.problem.fix);
  const { database } = opened.store.values;
  if (database !== '') return database;
  throw new Stop(
    EXIT.wrongUse,
    'no shared database is named',
    'ohmward settings database postgresql://NAME@HOST/DATABASE, or set OHMWARD_DATABASE',
  );
}

/** A problem that a person must mend ends the verb with its words. */
async function mended<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof SharedProblem)
      throw new Stop(EXIT.wrongInput, safeText(error.message), error.fix);
    throw error;
  }
}
