/** An instructor's assignment: which drills, at which level, with whose seed, in what time. */

import type { LevelName } from '../session/events.ts';
import type { Checked } from '../source/issue.ts';
import { parseShaped } from '../source/parse-shaped.ts';
import type { AssignmentDraft } from './generated/assignment.mjs';
import validate from './generated/assignment.mjs';
import type { Hash } from './hidden-fault.ts';

/** One drill that every student is to do. */
export interface AssignedDrill {
  /** Name of a procedure or of a circuit. */
  readonly procedure: string;
  readonly level: LevelName;
  /** Null when every student has a vehicle of their own. */
  readonly seed: number | null;
  readonly limitMinutes: number | null;
}

/** The drills of a class in the order in which they are set. */
export interface Assignment {
  readonly name: string;
  readonly title: string;
  readonly drills: readonly AssignedDrill[];
}

/** The assignment in `text`; null with issues when it cannot be used. */
export function loadAssignment(text: string, file: string): Checked<Assignment> {
  const { value: shaped, issues } = parseShaped(text, file, validate);
  if (!shaped) return { value: null, issues };
  return { value: assignmentOf(shaped.data), issues };
}

function assignmentOf(draft: AssignmentDraft): Assignment {
  return {
    name: draft.assignment,
    title: draft.title ?? draft.assignment,
    drills: draft.drills.map((one) => ({
      procedure: one.procedure,
      level: one.level,
      seed: typeof one.seed === 'number' ? one.seed : null,
      limitMinutes: one['limit-minutes'] ?? null,
    })),
  };
}

/** The seed of part `part` (from 1) for a student; names that differ in case or spaces only are the same student. */
export function seedFor(assignment: Assignment, part: number, student: string, hash: Hash): number {
  const drill = assignment.drills[part - 1];
  if (!drill) throw new Error(`assignment: no part ${part}`);
  if (drill.seed !== null) return drill.seed;
  const text = `ohmward assignment\n${assignment.name}\n${part}\n${studentKey(student)}`;
  return Number.parseInt(hash(text).slice(0, 8), 16);
}

/** A student's name as it is compared. */
export function studentKey(student: string): string {
  return student.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
}
