/** What the drill's screens are given. */

import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import type { LevelName } from '../../drill/levels.ts';
import type { Problem } from '../../source/problem.ts';

export interface DrillServices {
  /** Procedures with a circuit, then circuits alone. */
  readonly subjects: () => readonly DrillSubject[];
  readonly begin: (subject: string, level: LevelName) => DrillInHand | Problem;
  /** Monotonic milliseconds. */
  readonly clock: () => number;
}

export interface DrillSubject {
  readonly name: string;
  readonly title: string;
  readonly about: string;
}
