/** Which files a check is about, and which others they may refer to. */
import { readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { readTextFile } from '../../files/read-text.ts';
import type { Issue } from '../../source/issue.ts';

/** A file as it is on the disk now. `wanted` files are reported on; the others are only referred to. `shipped` ones are of the program's library. */
export interface GatheredFile {
  readonly path: string;
  readonly text: string;
  readonly wanted: boolean;
  readonly shipped: boolean;
}

/** The files to check, the paths that are none, and the folders to watch. */
export interface Gathered {
  readonly files: readonly GatheredFile[];
  /** Paths that cannot be read. */
  readonly issues: readonly Issue[];
  /** Folders in which a new or changed file would matter. */
  readonly folders: readonly string[];
}

/** Folders of a library, beside the procedures themselves. */
const PARTS = ['circuits', 'families', 'jobs'];
const DEPTH_MAX = 4;

/** The named files and the files of the named folders, then what lies beside them, then the shipped library. */
export function gatherFiles(paths: readonly string[], library: string | null): Gathered {
  const seen = new Map<string, GatheredFile>();
  const issues: Issue[] = [];
  const folders = new Set<string>();
  const add = (path: string, wanted: boolean, shipped = false) => {
    const real = realPath(path);
    const known = seen.get(real);
    if (known) {
      seen.set(real, {
        ...known,
        wanted: wanted || known.wanted,
        shipped: shipped || known.shipped,
      });
      return;
    }
    const read = readTextFile(path);
    if ('text' in read) seen.set(real, { path, text: read.text, wanted, shipped });
    else if (wanted) issues.push(unreadable(path, read.problem.words, read.problem.fix));
  };
  const addFolder = (folder: string, wanted: boolean, depth: number, shipped = false) => {
    folders.add(folder);
    for (const path of yamlFiles(folder)) add(path, wanted, shipped);
    if (depth < DEPTH_MAX)
      for (const inner of innerFolders(folder)) addFolder(inner, wanted, depth + 1, shipped);
  };
  for (const path of paths) {
    if (isFolder(path)) addFolder(path, true, 0);
    else add(path, true);
  }
  for (const path of paths) {
    const root = rootOf(path);
    for (const folder of [root, ...PARTS.map((part) => join(root, part))])
      if (isFolder(folder)) addFolder(folder, false, DEPTH_MAX);
  }
  if (library !== null) addFolder(library, false, 0, true);
  return { files: [...seen.values()], issues, folders: [...folders] };
}

/** The library folder that a path belongs to, by its place. */
function rootOf(path: string): string {
  const folder = isFolder(path) ? path : dirname(path);
  return PARTS.includes(basename(folder)) ? dirname(folder) : folder;
}

function yamlFiles(folder: string): string[] {
  return entries(folder)
    .filter((name) => /\.ya?ml$/.test(name))
    .map((name) => join(folder, name))
    .filter((path) => !isFolder(path));
}

function innerFolders(folder: string): string[] {
  return entries(folder)
    .filter((name) => !name.startsWith('.') && name !== 'node_modules')
    .map((name) => join(folder, name))
    .filter(isFolder);
}

function entries(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function unreadable(path: string, words: string, fix: string): Issue {
  const at = { file: path, line: 1, column: 1, endLine: 1, endColumn: 1 };
  return { code: 'unreadable-file', severity: 'error', at, words, fix };
}
