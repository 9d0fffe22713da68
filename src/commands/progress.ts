/** How far a command has come, on a terminal and only there, once it has taken over a second. */
import { safeText } from '../source/safe-text.ts';
import type { Io } from './command.ts';

/** What is done sooner needs no word. */
const QUIET_MS = 1000;
/** Often enough to be seen to move, seldom enough to cost nothing. */
const EVERY_MS = 100;
/** Back to the first column, and the rest of the line away (ECMA-48, EL). */
const FRESH_LINE = '\r\u001b[K';
/** Columns of a terminal that does not say how many it has. */
const USUAL_COLUMNS = 80;

/** A line on the terminal that comes and goes by itself. */
export interface Progress {
  /** What is being done now, and the part of it that is done, 0 to 1. */
  readonly at: (what: string, share: number) => void;
  /** Takes the line away. Called before anything else is printed. */
  readonly end: () => void;
}

/** One line on the error output that is written over again and again; nothing when that is no terminal. */
export function progressOn(io: Io, now: () => number = () => performance.now()): Progress {
  if (io.terminal === undefined || io.env['TERM'] === 'dumb')
    return { at: () => {}, end: () => {} };
  // Some terminals say none, and some say 0.
  const columns = () => io.terminal?.columns() || USUAL_COLUMNS;
  let begun = now();
  let last = Number.NEGATIVE_INFINITY;
  let isShown = false;
  return {
    at: (what, share) => {
      const time = now();
      if (time - begun < QUIET_MS || time - last < EVERY_MS) return;
      last = time;
      isShown = true;
      const done = ` ${Math.floor(100 * Math.min(1, share))} %`;
      // One column is left free: a full line wraps, and could not be taken away.
      const words = safeText(what).slice(0, Math.max(0, columns() - done.length - 1));
      io.err(`${FRESH_LINE}${words}${done}`);
    },
    end: () => {
      if (isShown) io.err(FRESH_LINE);
      isShown = false;
      begun = now();
    },
  };
}
