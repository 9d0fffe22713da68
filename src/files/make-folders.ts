/**
 * Makes a folder and those above it, one at a time. Our own, since Node's recursive `mkdir` asks for ever in a place
 * that refuses new names with ENOENT, such as /proc (seen with Node 20.20).
 */
import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/** The folders that were made, topmost first; none when it is there. Throws the system's error, ENOTDIR where a file stands in the way. */
export function makeFolders(folder: string, mode?: number): string[] {
  const path = resolve(folder);
  const there = statSync(path, { throwIfNoEntry: false });
  if (there?.isDirectory()) return [];
  if (there)
    throw Object.assign(new Error(`a file is where the folder should be: ${path}`), {
      code: 'ENOTDIR',
    });
  const above = dirname(path);
  const made = above === path ? [] : makeFolders(above, mode);
  try {
    mkdirSync(path, mode === undefined ? {} : { mode });
  } catch (error) {
    // Somebody else made it meanwhile.
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return made;
    throw error;
  }
  return [...made, path];
}
