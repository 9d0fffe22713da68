/**
 * Files of one kind by the name that each bears inside, each read when it is first asked for: reading a whole library
 * takes a tenth of a second and more, working out the faults of one circuit as long again, and a session needs one
 * circuit, one procedure and a few of its families.
 */
import { basename } from 'node:path';
import type { LibraryFile } from './library-file.ts';

/** Which files of a kind are read first, and which only on demand. */
export interface LazyPaths {
  /** Read before all others whatever they are called: of two with one name the first is used. */
  readonly first: readonly string[];
  /** A file here is tried under its own name before the rest are read. */
  readonly rest: readonly string[];
}

/**
 * A map by name that behaves as if all files had been read. A file that cannot be used stands for its name all the same:
 * where one's own is broken, none further down is taken in its place, since another circuit or sub-procedure than the
 * one beside a tree would be proved and followed.
 */
export class LazyFiles<T> implements ReadonlyMap<string, T> {
  private readonly paths: LazyPaths;
  private readonly load: (path: string) => LibraryFile<T>;
  private readonly nameOf: (value: T) => string;
  private readonly loaded = new Map<string, LibraryFile<T>>();

  constructor(
    paths: LazyPaths,
    load: (path: string) => LibraryFile<T>,
    nameOf: (value: T) => string,
  ) {
    this.paths = paths;
    this.load = load;
    this.nameOf = nameOf;
  }

  /** Every file, read, whether or not it can be used. */
  files(): LibraryFile<T>[] {
    return [...this.paths.first, ...this.paths.rest].map((path) => this.file(path));
  }

  /** The file at a path, if it has been read. */
  known(path: string): LibraryFile<T> | undefined {
    return this.loaded.get(path);
  }

  get(name: string): T | undefined {
    for (const path of this.paths.first) {
      const { value } = this.file(path);
      if (value === null ? stem(path) === name : this.nameOf(value) === name)
        return value ?? undefined;
    }
    const own = this.paths.rest.find((path) => stem(path) === name);
    if (own === undefined) return this.all().get(name);
    const { value } = this.file(own);
    if (value === null) return undefined;
    return this.nameOf(value) === name ? value : this.all().get(name);
  }

  /** The file that stands for a name and cannot be used, or null. */
  lost(name: string): LibraryFile<T> | null {
    if (this.has(name)) return null;
    return this.files().find(({ path, value }) => value === null && stem(path) === name) ?? null;
  }

  /** Path of the file with this name, or null. */
  pathOf(name: string): string | null {
    const value = this.get(name);
    if (value === undefined) return null;
    return [...this.loaded.values()].find((file) => file.value === value)?.path ?? null;
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  get size(): number {
    return this.all().size;
  }

  keys(): MapIterator<string> {
    return this.all().keys();
  }

  values(): MapIterator<T> {
    return this.all().values();
  }

  entries(): MapIterator<[string, T]> {
    return this.all().entries();
  }

  forEach(call: (value: T, name: string, map: ReadonlyMap<string, T>) => void): void {
    this.all().forEach((value, name) => {
      call(value, name, this);
    });
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.entries();
  }

  private file(path: string): LibraryFile<T> {
    const known = this.loaded.get(path) ?? this.load(path);
    this.loaded.set(path, known);
    return known;
  }

  private all(): Map<string, T> {
    const map = new Map<string, T | null>();
    for (const { path, value } of this.files()) {
      const name = value === null ? stem(path) : this.nameOf(value);
      if (!map.has(name)) map.set(name, value);
    }
    return new Map([...map].flatMap(([name, value]) => (value === null ? [] : [[name, value]])));
  }
}

function stem(path: string): string {
  return basename(path).replace(/\.ya?ml$/, '');
}
