/** A mistake in someone's input: an identity, a place, words, and a way out. */

/** A stretch of a text file; lines and columns count from 1, the end is exclusive. */
export interface SourceSpan {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** One mistake, addressed to whoever can put it right. */
export interface Issue {
  /** Stable identity in kebab-case, e.g. `unknown-step`. Tests and tools compare this, never the words. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly at: SourceSpan;
  /** What is wrong, in one sentence without a full stop. */
  readonly words: string;
  /** What to do next, in one sentence without a full stop. */
  readonly fix?: string;
  /** More about it, a line each. */
  readonly notes?: readonly string[];
  /** The cars that the proof of a tree lost here, by fault. */
  readonly cars?: readonly LostCars[];
}

/** How many cars of a fault a finding is about, and which value tells them from the others. */
export interface LostCars {
  /** Fault id, or `healthy`. */
  readonly fault: string;
  readonly wrong: number;
  readonly of: number;
  /** Part of the fault, 0 to 1. */
  readonly share: number;
  /**
   * In SI units, null for an end that is open; `area` under the ROC curve, 0 to 1. Null where no single value tells them, or
   * where no car is right.
   */
  readonly value: {
    readonly key: string;
    readonly words: string;
    readonly unit: string;
    readonly low: number | null;
    readonly high: number | null;
    readonly ways: readonly string[] | null;
    readonly area: number;
  } | null;
}

/** A value that could be made in spite of mistakes, or not at all, and all the mistakes. */
export interface Checked<T> {
  readonly value: T | null;
  readonly issues: readonly Issue[];
}

/** True when nothing in the list forbids use of the value. */
export function isUsable(issues: readonly Issue[]): boolean {
  return !issues.some((issue) => issue.severity === 'error');
}
