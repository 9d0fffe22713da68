/** A file of the library as it was read. */
import type { Issue } from '../source/issue.ts';

/** A file that was read, whether or not it could be used. */
export interface LibraryFile<T> {
  readonly path: string;
  readonly text: string;
  readonly value: T | null;
  readonly issues: readonly Issue[];
}
