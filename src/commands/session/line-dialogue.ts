/** Lines in and out for the plain session: questions wait for a line, and the end of input is an answer too. */
import { createInterface } from 'node:readline';
import { safeText } from '../../source/safe-text.ts';
import type { Dialogue } from '../../ui/plain/dialogue.ts';
import { columnsOfStream, wrapLine } from '../../ui/plain/wrap-line.ts';
import type { Io } from '../command.ts';

/** A dialogue over standard input; close it, or the process waits for more lines. */
export interface LineDialogue extends Dialogue {
  readonly close: () => void;
}

/** Lines that arrive before they are asked for are kept, so that a pipe works as well as a person. */
export function lineDialogue(io: Io): LineDialogue {
  const lines = createInterface({ input: process.stdin });
  const kept: string[] = [];
  let waiting: ((line: string | null) => void) | null = null;
  let ended = false;
  const hand = (line: string | null) => {
    const answer = waiting;
    waiting = null;
    answer?.(line);
  };
  // Asked anew for each line: the window may have changed.
  const wrapped = (text: string) => wrapLine(safeText(text), columnsOfStream(process.stdout));
  lines.on('line', (line) => {
    if (waiting) hand(line);
    else kept.push(line);
  });
  lines.on('close', () => {
    ended = true;
    hand(null);
  });
  return {
    say: (line) => io.out(`${wrapped(line)}\n`),
    ask: (question) => {
      io.out(wrapped(question));
      const next = kept.shift();
      if (next !== undefined || ended) {
        // A pipe is not echoed: without this the next sentence would stand behind the question.
        if (process.stdin.isTTY !== true) io.out('\n');
        return Promise.resolve(next ?? null);
      }
      return new Promise((resolve) => {
        waiting = (line) => {
          if (process.stdin.isTTY !== true) io.out('\n');
          resolve(line);
        };
      });
    },
    edit: async () => {
      // Two readers of one terminal would each get every other key.
      lines.pause();
      const { editNote } = await import('./edit-note.ts');
      const edited = await editNote(io.env, io.cwd);
      if (!ended) lines.resume();
      return edited;
    },
    close: () => lines.close(),
  };
}
