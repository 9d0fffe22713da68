/** YAML as it was read: its data, and where each of them stands. */
import type { SourceSpan } from './issue.ts';

/** Way to a value in a file: keys and places in lists. */
export type Path = readonly (string | number)[];

/** The parsed data and where each piece of it stands. */
export interface YamlSource {
  readonly file: string;
  readonly text: string;
  readonly data: unknown;
  /** Place of the value at `path`, or of its key; the nearest existing ancestor when there is none. */
  readonly locate: (path: Path, what?: 'key' | 'value') => SourceSpan;
}
