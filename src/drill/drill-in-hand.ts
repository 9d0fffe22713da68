/** One drill in hand: commands in, state out. Screens, dialogue and action files drive the same thing. */
import type { Test } from '../circuit/test.ts';
import type { Debrief } from './debrief.ts';
import type { DrillCommand } from './decide-drill.ts';
import type { Drill } from './drill.ts';
import type { DrillWorld } from './drill-world.ts';

export interface DrillInHand {
  readonly drill: () => Drill;
  readonly world: DrillWorld;
  /** Saves before it shows. */
  readonly perform: (command: DrillCommand) => DrillPerformed;
  /** Null until the answer is revealed. */
  readonly debrief: () => Debrief | null;
  /** The wiring with the leads of a test on it. */
  readonly sketch: (test: Test | null, columns: number) => readonly string[];
  readonly path: () => string;
  readonly close: () => void;
}

export interface DrillPerformed {
  /** Why it had no effect, with the way out; null when it had. */
  readonly refused: {
    readonly words: string;
    readonly fix: string;
    /** The disk refused; nothing has changed. */
    readonly disk: boolean;
  } | null;
}
