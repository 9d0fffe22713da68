/** A file by its path, or by its name in the library. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** Folders of the library that are looked through, in this order. */
const PLACES = ['', 'circuits', 'families', 'jobs'];

/** The path itself if there is such a file, else the library's file of that name, else the path as it was given. */
export function findFile(name: string, library: string | null): string {
  if (library === null || existsSync(name) || !/^[a-z][a-z0-9-]*$/.test(name)) return name;
  return PLACES.map((place) => join(library, place, `${name}.yaml`)).find(existsSync) ?? name;
}
