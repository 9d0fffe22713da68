/** Lines in and out for the plain session: questions wait for a line, and the end of input is an answer too. */
import type { Interface } from 'node:readline/promises';
import { safeText } from '../../source/safe-text.ts';
import type { Dialogue } from '../../ui/plain/plain-session.ts';
import type { Io } from '../command.ts';

/** A dialogue over readline. Lines that arrive before they are asked for are kept, so that a pipe works. */
export function lineDialogue(lines: Interface, io: Io): Dialogue {
  const kept: string[] = [];
  let waiting: ((line: string | null) => void) | null = null;
  let ended = false;
  lines.on('line', (line) => {
    if (waiting) {
      const answer = waiting;
      waiting = null;
      answer(line);
    } else kept.push(line);
  });
  lines.on('close', () => {
    ended = true;
    waiting?.(null);
    waiting = null;
  });
  return {
    say: (line) => io.out(`${safeText(line)}\n`),
    ask: (question) => {
      io.out(safeText(question));
      const next = kept.shift();
      if (next !== undefined) return Promise.resolve(next);
      if (ended) return Promise.resolve(null);
      return new Promise((resolve) => {
        waiting = resolve;
      });
    },
  };
}
