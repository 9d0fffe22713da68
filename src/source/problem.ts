/** A thing that could not be done, in words for the person. Mistakes with a place in a file are `Issue`s. */

/** Why it could not be done, and the way out. */
export interface Problem {
  readonly problem: string;
  readonly fix: string;
}

/** Tells a problem from what was asked for. */
export function isProblem<T extends object>(value: T | Problem): value is Problem {
  return 'problem' in value && 'fix' in value;
}
