/** A preview that begins again whenever its file, or what lies beside it, is saved. */
import type { Dialogue } from '../../ui/plain/dialogue.ts';
import { type Gathered, gatherFiles } from '../check/gather-files.ts';
import { watchFiles } from '../check/watch-files.ts';
import { EXIT, type Io } from '../command.ts';
import { lineDialogue } from './line-dialogue.ts';

/** The preview that is begun again and again, and what it depends on. */
export interface WatchedRun {
  readonly file: string;
  /** Folder of the shipped library, whose changes matter too. */
  readonly library: string | null;
  /** A person answers line by line. */
  readonly plain: boolean;
  /** One preview from the files as they are now; the exit code. */
  readonly once: (io: Io, dialogue: Dialogue | null) => Promise<number>;
}

/** Runs until interrupted, or until a person's input ends. A save cuts short the preview that is under way. */
export async function watchRun(
  { file, library, plain, once }: WatchedRun,
  io: Io,
): Promise<number> {
  const stop = new AbortController();
  process.once('SIGINT', () => stop.abort());
  const lines = plain ? lineDialogue(io) : null;
  let present: PreviewTurn | null = null;
  let before: Promise<void> = Promise.resolve();
  const begin = async (turn: PreviewTurn, again: boolean) => {
    if (turn.isOver()) return;
    if (again) io.out('\nSaved: the preview starts again.\n\n');
    const code = await once({ ...io, out: turn.out, err: turn.err }, turn.dialogue);
    if (turn.isOver()) return;
    if (code === EXIT.interrupted) stop.abort();
    else io.out(`Waiting for the next save of ${file}; Ctrl+C ends.\n`);
  };
  await watchFiles<Gathered>({
    read: () => gatherFiles([file], library),
    foldersOf: ({ folders }) => folders,
    contentOf: ({ files }) => JSON.stringify(files),
    changed: () => {
      const again = present !== null;
      present?.end();
      const turn = turnOf(io, lines);
      present = turn;
      before = before.then(() => begin(turn, again));
    },
    signal: stop.signal,
  });
  lines?.close();
  return EXIT.interrupted;
}

/** One preview's turn at the terminal: after its end it hears nothing more and is not heard. */
interface PreviewTurn {
  readonly dialogue: Dialogue | null;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly end: () => void;
  readonly isOver: () => boolean;
}

function turnOf(io: Io, lines: Dialogue | null): PreviewTurn {
  let over = false;
  let release: (line: null) => void = () => {};
  const ended = new Promise<null>((resolve) => {
    release = resolve;
  });
  const unlessOver = (write: (text: string) => void) => (text: string) => {
    if (!over) write(text);
  };
  return {
    dialogue: lines && {
      say: unlessOver(lines.say),
      ask: (question) =>
        over ? Promise.resolve(null) : Promise.race([lines.ask(question), ended]),
    },
    out: unlessOver(io.out),
    err: unlessOver(io.err),
    end: () => {
      over = true;
      release(null);
    },
    isOver: () => over,
  };
}
