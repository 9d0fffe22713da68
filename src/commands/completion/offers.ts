/**
 * What can stand at a place of the command line, by the word that help and usage have for it.
 *
 * Names come from the text of files, not from the loaders: pressing Tab must not check a whole library.
 * Only the faults of a circuit need the circuit itself.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { libraryFolder, sessionsFolder } from '../../files/folders.ts';
import { readTextFile } from '../../files/read-text.ts';
import { sessionPart } from '../../files/safe-name.ts';
import type { Io } from '../command.ts';

/** One word that fits, with a few words about it. */
export interface CompletionOffer {
  readonly value: string;
  readonly words: string;
}

/** What fits; with `files`, names of files do as well, and the shell knows those best. */
export interface Offers {
  readonly offers: readonly CompletionOffer[];
  readonly files: boolean;
}

/** The line so far, as far as a value depends on it. */
export interface Line {
  readonly command: string;
  readonly positionals: readonly string[];
  readonly folder: string | undefined;
}

const FILES: Offers = { offers: [], files: true };
const NOTHING: Offers = { offers: [], files: false };
/** More sessions than anybody picks from by Tab. */
const SESSIONS_MAX = 200;

/** What fits where help says `word`, for example `FILE` or `FAULT`; nothing for a word that is free text. */
export async function offersFor(word: string, line: Line, io: Io): Promise<Offers> {
  switch (word) {
    case 'FILE':
      return line.command === 'draw'
        ? { offers: [...procedures(io), ...circuits(io)], files: true }
        : FILES;
    case 'PATH':
    case 'GOOD':
    case 'FOLDER':
      return FILES;
    case 'PROCEDURE':
      return { offers: procedures(io), files: false };
    case 'CIRCUIT':
      return { offers: circuits(io), files: true };
    case 'FAULT':
    case 'ID':
      return { offers: await faults(line, io), files: false };
    case 'SESSION':
      return { offers: await sessions(line, io), files: true };
    case 'NAME':
      return line.command === 'settings' ? { offers: await settings(), files: false } : NOTHING;
    case 'LEVEL':
      return { offers: await levels(), files: false };
    default:
      return NOTHING;
  }
}

/** Procedures a person can start: those that need nothing from a caller. */
function procedures(io: Io): CompletionOffer[] {
  return heads(io, '').flatMap(({ text }) => {
    const value = topValue(text, 'procedure');
    if (value === null || /^needs:/m.test(text)) return [];
    return [{ value, words: topValue(text, 'title') ?? '' }];
  });
}

function circuits(io: Io): CompletionOffer[] {
  return heads(io, 'circuits').flatMap(({ text }) => {
    const value = topValue(text, 'circuit');
    return value === null ? [] : [{ value, words: topValue(text, 'title') ?? '' }];
  });
}

async function faults({ command, positionals }: Line, io: Io): Promise<CompletionOffer[]> {
  const { loadCircuit } = await import('../../circuit/load-circuit.ts');
  const [named] = positionals;
  const circuit = command === 'predict' ? named : circuitOf(named, io);
  const loaded = heads(io, 'circuits')
    .filter(({ text }) => circuit === undefined || topValue(text, 'circuit') === circuit)
    .map(({ text, path }) => loadCircuit(text, path).value)
    .filter((value): value is Circuit => value !== null);
  const byId = new Map<string, CompletionOffer>();
  if (command !== 'predict') byId.set('healthy', { value: 'healthy', words: 'nothing is wrong' });
  for (const { id, words } of loaded.flatMap((one) => one.faults))
    if (!byId.has(id)) byId.set(id, { value: id, words });
  return [...byId.values()];
}

/** The circuit of the procedure with this name; undefined when none is named or known. */
function circuitOf(procedure: string | undefined, io: Io): string | undefined {
  const head = heads(io, '').find(({ text }) => topValue(text, 'procedure') === procedure);
  return (head && topValue(head.text, 'circuit')) ?? undefined;
}

/** Names of session files, newest first, each session by its last part. */
async function sessions({ folder }: Line, io: Io): Promise<CompletionOffer[]> {
  const latest = new Map<string, { name: string; part: number }>();
  for (const name of namesIn(folder ?? (await usualFolder(io)))) {
    const own = sessionPart(name);
    if (own && own.part > (latest.get(own.stem)?.part ?? 0))
      latest.set(own.stem, { name, part: own.part });
  }
  const newest = [...latest.keys()].sort().reverse().slice(0, SESSIONS_MAX);
  return newest.map((stem) => ({ value: latest.get(stem)?.name ?? stem, words: '' }));
}

async function usualFolder(io: Io): Promise<string> {
  const where = { env: io.env, cwd: io.cwd };
  if (io.env['OHMWARD_SESSIONS']) return sessionsFolder(where);
  const { openSettings } = await import('../../files/settings.ts');
  const opened = await openSettings(io.env);
  if ('problem' in opened) return sessionsFolder(where);
  return sessionsFolder({ ...where, settings: opened.store.values.sessions });
}

async function settings(): Promise<CompletionOffer[]> {
  const { STANDARD_SETTINGS } = await import('../../files/settings.ts');
  return Object.keys(STANDARD_SETTINGS).map((value) => ({ value, words: '' }));
}

async function levels(): Promise<CompletionOffer[]> {
  const { LEVELS } = await import('../../drill/levels.ts');
  return LEVELS.map(({ name }) => ({ value: name, words: '' }));
}

function heads(io: Io, place: string): { path: string; text: string }[] {
  const library = libraryFolder(io.cwd);
  if (library === null) return [];
  const folder = join(library, place);
  return namesIn(folder)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort()
    .flatMap((name) => {
      const path = join(folder, name);
      const read = readTextFile(path);
      return 'problem' in read ? [] : [{ path, text: read.text }];
    });
}

/** A one-line value of a key at the left margin. */
function topValue(text: string, key: string): string | null {
  return (
    new RegExp(`^${key}:[ \\t]+["']?([^"'\\r\\n]{1,200})`, 'm').exec(text)?.[1]?.trim() ?? null
  );
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
