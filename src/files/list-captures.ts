/**
 * The captures in a folder, newest first, and the folders beside them, for choosing one without typing its path.
 *
 * Only names, sizes and times are looked at, no file is opened. Names come as the disk has them: whoever shows one
 * sends it through `safeText`.
 */
import { opendirSync, type Stats, statSync } from 'node:fs';
import { dirname, extname, isAbsolute, join, resolve } from 'node:path';
import type { Problem } from '../source/problem.ts';
import { errorCodeOf } from './error-code.ts';

/** One capture file or folder to choose. */
export interface CaptureEntry {
  readonly kind: 'file' | 'folder';
  /** Without its folder; `..` is the folder above. */
  readonly name: string;
  readonly bytes: number;
  /** Since it was last written; never negative. */
  readonly ageMs: number;
}

/** A folder as a person chooses from it. With a `problem` it could not be read and has no entries but the way up. */
export interface CaptureFolder {
  readonly path: string;
  /** Captures, newest first; folders by name; the folder above. */
  readonly entries: readonly CaptureEntry[];
  /** Entries that are left out: more than anybody chooses from. */
  readonly leftOut: number;
  readonly problem: Problem | null;
}

/** Endings of files that can be captures. */
const ENDINGS: ReadonlySet<string> = new Set(['.csv', '.tsv', '.txt', '.wav']);
/** A folder with more is no folder of captures, and looking at each would take long. */
const LOOKED_AT_MOST = 5000;
const UP = '..';

/** What can be chosen in `folder`. `nowMs` is the time that ages are counted from. */
export function listCaptures(folder: string, nowMs: number): CaptureFolder {
  const path = resolve(folder);
  const up: CaptureEntry[] =
    dirname(path) === path ? [] : [{ kind: 'folder', name: UP, bytes: 0, ageMs: 0 }];
  const found: CaptureEntry[] = [];
  let leftOut = 0;
  try {
    const opened = opendirSync(path);
    try {
      let looked = 0;
      for (let one = opened.readSync(); one; one = opened.readSync()) {
        const { name } = one;
        const isCapture = ENDINGS.has(extname(name).toLowerCase());
        // Whoever hides a folder does not want it in a list; it can still be typed.
        if (name.startsWith('.') || (one.isFile() && !isCapture)) continue;
        looked += 1;
        const entry = looked <= LOOKED_AT_MOST ? entryOf(path, name, isCapture, nowMs) : null;
        if (entry) found.push(entry);
        else if (looked > LOOKED_AT_MOST) leftOut += 1;
      }
    } finally {
      opened.closeSync();
    }
  } catch (error) {
    return { path, entries: up, leftOut: 0, problem: problemOf(error) };
  }
  const files = found.filter(({ kind }) => kind === 'file');
  const folders = found.filter(({ kind }) => kind === 'folder');
  files.sort((a, b) => a.ageMs - b.ageMs || (a.name < b.name ? -1 : 1));
  folders.sort((a, b) => (a.name < b.name ? -1 : 1));
  return { path, entries: [...files, ...folders, ...up], leftOut, problem: null };
}

/** Where a name chosen or typed in `folder` leads: into a folder, or to a file, which need not exist. `~` is `home`. */
export function followName(
  folder: string,
  typed: string,
  home: string | undefined,
): { readonly folder: string } | { readonly file: string } {
  const named = home && /^~(?=$|[/\\])/.test(typed) ? join(home, typed.slice(1)) : typed;
  const path = isAbsolute(named) ? resolve(named) : resolve(folder, named);
  return statOf(path)?.isDirectory() ? { folder: path } : { file: path };
}

/** Folders and files, also through links; null for what is neither, or is gone meanwhile. */
function entryOf(
  folder: string,
  name: string,
  isCapture: boolean,
  nowMs: number,
): CaptureEntry | null {
  const about = statOf(join(folder, name));
  if (!about) return null;
  const ageMs = Math.max(0, nowMs - about.mtimeMs);
  if (about.isDirectory()) return { kind: 'folder', name, bytes: 0, ageMs };
  return about.isFile() && isCapture ? { kind: 'file', name, bytes: about.size, ageMs } : null;
}

function statOf(path: string): Stats | null {
  try {
    return statSync(path, { throwIfNoEntry: false }) ?? null;
  } catch {
    return null; // a link in a circle, a folder on the way that is closed to us, a name no disk can hold
  }
}

const CAUSES: Readonly<Record<string, readonly [problem: string, fix: string]>> = {
  ENOENT: ['there is no such folder', 'check the spelling'],
  ENOTDIR: ['this is a file, not a folder', 'name its folder'],
  EACCES: ['you are not allowed to read this folder', 'ask its owner for the right to read it'],
  EPERM: ['you are not allowed to read this folder', 'ask its owner for the right to read it'],
  EIO: ['the disk reported a fault', 'check the disk and its cable'],
};

function problemOf(error: unknown): Problem {
  const code = errorCodeOf(error);
  const [problem, fix] = CAUSES[code] ?? [
    `this folder cannot be read (${code})`,
    'choose another one',
  ];
  return { problem, fix };
}
