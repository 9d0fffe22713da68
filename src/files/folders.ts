/** Where things live: sessions, settings, and the library of procedures that comes with the program. */
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readPlainFile } from './plain-file.ts';

/** Environment variables as they came from the shell. */
export type Env = Readonly<Record<string, string | undefined>>;

const NAME = 'ohmward';
/** From dist/parts/x.mjs or src/files/x.ts the library is at most this many folders up. */
const LIBRARY_LEVELS = 4;

/**
 * The folder for sessions: OHMWARD_SESSIONS, else the one in the settings, else ./sessions in a clone of the
 * project, else `$XDG_DATA_HOME/ohmward/sessions`. Nothing is created here.
 */
export function sessionsFolder(where: {
  readonly env: Env;
  readonly cwd: string;
  readonly settings?: string | undefined;
}): string {
  const { env, cwd, settings } = where;
  if (env.OHMWARD_SESSIONS) return resolve(cwd, env.OHMWARD_SESSIONS);
  if (settings)
    return resolve(
      homeOf(env),
      settings.replace(TILDE, () => homeOf(env)),
    );
  if (isClone(cwd)) return join(cwd, 'sessions');
  return join(dataFolder(env), 'sessions');
}

/** A folder as a person types it: `~` is the home folder, and what is not absolute lies in `cwd`. */
export function folderTyped(
  typed: string,
  { home, cwd }: { readonly home: string | undefined; readonly cwd: string },
): string {
  return resolve(
    cwd,
    typed.replace(TILDE, () => home || homedir()),
  );
}

const TILDE = /^~(?=[/\\]|$)/;

/** `$XDG_DATA_HOME/ohmward`, by default ~/.local/share/ohmward (XDG Base Directory Specification 0.8). */
export function dataFolder(env: Env): string {
  return xdgFolder(env, 'XDG_DATA_HOME', ['.local', 'share']);
}

/** `$XDG_CONFIG_HOME/ohmward`, by default ~/.config/ohmward. */
export function settingsFolder(env: Env): string {
  return xdgFolder(env, 'XDG_CONFIG_HOME', ['.config']);
}

/** `$XDG_CACHE_HOME/ohmward`, by default ~/.cache/ohmward; null where the environment names no home: nothing is kept then. */
export function cacheFolder(env: Env): string | null {
  const hasHome = Boolean(env.HOME || env['USERPROFILE'] || env['XDG_CACHE_HOME']);
  return hasHome ? xdgFolder(env, 'XDG_CACHE_HOME', ['.cache']) : null;
}

/** The shipped `procedures` folder, looked for above the running file, then under `cwd`; null when there is none. */
export function libraryFolder(cwd: string, runningFile: string = import.meta.url): string | null {
  const shipped = shippedFolder('procedures', runningFile);
  if (shipped) return shipped;
  return existsSync(join(cwd, 'procedures')) ? join(cwd, 'procedures') : null;
}

/** The pages of the guide that come with the program, looked for above the running file; null when there are none. */
export function guideFolder(runningFile: string = import.meta.url): string | null {
  return shippedFolder('docs', runningFile);
}

/** A folder of the package or clone that the running file belongs to. */
function shippedFolder(name: string, runningFile: string): string | null {
  let folder = dirname(runningFile.startsWith('file:') ? fileURLToPath(runningFile) : runningFile);
  for (let level = 0; level < LIBRARY_LEVELS; level += 1) {
    if (isClone(folder) && existsSync(join(folder, name))) return join(folder, name);
    folder = dirname(folder);
  }
  return null;
}

/** The specification says to pass over a relative path in these variables. */
function xdgFolder(env: Env, variable: string, standard: readonly string[]): string {
  const given = env[variable];
  const base = given && isAbsolute(given) ? given : join(homeOf(env), ...standard);
  return join(base, NAME);
}

function homeOf(env: Env): string {
  return env.HOME || homedir();
}

/** True in a folder whose package.json bears our name: a clone or the installed package itself. */
function isClone(folder: string): boolean {
  try {
    const about: unknown = JSON.parse(readPlainFile(join(folder, 'package.json')).toString('utf8'));
    return typeof about === 'object' && about !== null && 'name' in about && about.name === NAME;
  } catch {
    return false;
  }
}
