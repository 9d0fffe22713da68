/** What the drill's screens are given. */

import type { LevelName } from '../../session/events.ts';
import type { Problem } from '../../source/problem.ts';
import type { OpenedSession } from '../app-services.ts';

/** The rooms below, as far as a drill needs them. */
export interface DrillServices {
  /** Procedures with a circuit, then circuits alone. */
  readonly subjects: () => readonly DrillSubject[];
  readonly begin: (subject: string, level: LevelName) => OpenedSession | Problem;
  /** Monotonic milliseconds. */
  readonly clock: () => number;
}

/** Something to drill on, as a line of the choice. */
export interface DrillSubject {
  readonly name: string;
  readonly title: string;
  readonly about: string;
}
