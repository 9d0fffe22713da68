/**
 * The circuits of a folder, each loaded when it is first asked for: working out the faults of a circuit takes a tenth
 * of a second and more, and a session needs one of them.
 */
import { basename } from 'node:path';
import type { Circuit } from '../circuit/circuit.ts';
import type { LibraryFile } from './load-library.ts';

/** A map by the circuit's name that behaves as if all had been loaded. A file is tried under its own name first. */
export class LazyCircuits implements ReadonlyMap<string, Circuit> {
  private readonly paths: readonly string[];
  private readonly load: (path: string) => LibraryFile<Circuit>;
  private readonly loaded = new Map<string, LibraryFile<Circuit>>();

  constructor(paths: readonly string[], load: (path: string) => LibraryFile<Circuit>) {
    this.paths = paths;
    this.load = load;
  }

  /** Every file, loaded, whether or not it can be used. */
  files(): LibraryFile<Circuit>[] {
    return this.paths.map((path) => this.file(path));
  }

  get(name: string): Circuit | undefined {
    const own = this.paths.find((path) => basename(path).replace(/\.ya?ml$/, '') === name);
    const circuit = own === undefined ? null : this.file(own).value;
    return circuit?.name === name ? circuit : this.all().get(name);
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

  values(): MapIterator<Circuit> {
    return this.all().values();
  }

  entries(): MapIterator<[string, Circuit]> {
    return this.all().entries();
  }

  forEach(call: (circuit: Circuit, name: string, map: ReadonlyMap<string, Circuit>) => void): void {
    this.all().forEach((circuit, name) => {
      call(circuit, name, this);
    });
  }

  [Symbol.iterator](): MapIterator<[string, Circuit]> {
    return this.entries();
  }

  private file(path: string): LibraryFile<Circuit> {
    const known = this.loaded.get(path) ?? this.load(path);
    this.loaded.set(path, known);
    return known;
  }

  /** The first file of a name wins. */
  private all(): Map<string, Circuit> {
    const map = new Map<string, Circuit>();
    for (const { value } of this.files())
      if (value && !map.has(value.name)) map.set(value.name, value);
    return map;
  }
}
