/**
 * One session in hand: commands in, state out. Screen, plain dialogue and answers file drive the same thing.
 *
 * `perform` saves before it shows: the state changes only after every event of the command is safely on disk.
 */
import type { Look } from '../circuit/test.ts';
import type { Command } from './command.ts';
import type { Refusal } from './refusal.ts';
import type { Session } from './session.ts';

/** A session that can be read and told what to do. */
export interface SessionDriver {
  readonly session: () => Session;
  readonly perform: (command: Command) => Performed;
  /** Path of the session file now written. */
  readonly path: () => string;
  /** Number and hash of the last saved event. */
  readonly head: () => { readonly seq: number; readonly hash: string };
  /** Another window has the session open and went on with it: nothing can be saved here any more. */
  readonly isElsewhere: () => boolean;
  /**
   * After a disk problem: go on in another folder, `~` and the current folder understood. Null where nobody is there to
   * name one: beside the old file, else where sessions usually go.
   */
  readonly continueIn: (folder: string | null) => Performed;
  /** Looks at the disk: why not everything is in the file at `path()`; null when all is. */
  readonly unsaved: () => { readonly words: string; readonly fix: string } | null;
  /** The simulated vehicle's answer to the present step, or null with a real vehicle. */
  readonly vehicleShows: () => VehicleAnswer | null;
  /**
   * Closes the file. What is in no file by then, refused or deleted while in use, is first written to one as `continueIn`
   * does without a folder. Whether that was possible, `unsaved` tells.
   */
  readonly close: () => void;
}

/** The new state, or why nothing has changed. */
export type Performed =
  | { readonly ok: true; readonly session: Session }
  /** `disk`: the disk refused and not the session, and then nothing has changed. */
  | {
      readonly ok: false;
      readonly words: string;
      readonly fix: string;
      /** Why the session refused it; null where the disk did. */
      readonly refusal: Refusal | null;
      readonly disk: boolean;
    };

/** A number to record: as typed, and in SI units; `Infinity` is the meter's OL. */
export interface TakenReading {
  readonly typed: string;
  readonly value: number;
}

/** What a simulated vehicle answers: words for the screen and what to type or choose. */
export interface VehicleAnswer {
  readonly words: string;
  readonly answer:
    | ({ readonly kind: 'reading' } & TakenReading)
    | { readonly kind: 'outcome'; readonly outcome: string; readonly look: Look | null }
    | { readonly kind: 'done' };
}
