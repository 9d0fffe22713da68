/**
 * The terminal as it was before, by every way out. Enters the alternate screen, raw keys and bracketed
 * paste, hides the cursor; undoes it on leaving, on each signal, on a crash, around a suspension.
 */
import { safeText } from '../../source/safe-text.ts';
import { Unworkable } from '../../source/unworkable.ts';
import { createKeyboard, type Keyboard } from './keyboard.ts';
import { ScreenPainter } from './screen-painter.ts';

/** Why the terminal was left. `quit` is the program's own wish. */
export type LeaveCause = 'quit' | 'signal' | 'hangup' | 'crash';

/** The streams, and what is to happen on every way out. */
export interface TerminalOptions {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr?: { write(text: string): unknown };
  /** False keeps the normal screen: what was on it is scrolled up first, the last frame stays. */
  readonly altScreen?: boolean;
  /** Where the work is and how to go on, for the last words after a signal or a crash. */
  readonly farewell?: () => string | null;
  /** The last, synchronous duties before the process ends against its will; `exit` handlers may not run. */
  readonly onHangup?: (cause: LeaveCause) => void;
  /** Ends the process; only tests pass one. */
  readonly exit?: (code: number) => void;
}

/** The terminal while the program has it. */
export interface TerminalSession {
  readonly screen: ScreenPainter;
  readonly keyboard: Keyboard;
  /** Restores the terminal; the program goes on and may print. Calling again does nothing. */
  close(): void;
  /** Resolves once the terminal has been restored, with the reason. */
  readonly closed: Promise<LeaveCause>;
  /** Back to the shell until the process is continued (Ctrl+Z does the same). */
  suspend(): void;
  /** An error of ours: restores, says so, ends with 70. */
  crash(error: unknown): void;
}

/** Signals that end the program, with their numbers: the exit code is 128 + n. SIGBREAK, Ctrl+Break, is known to Windows only. */
const ENDING_SIGNALS = { SIGHUP: 1, SIGINT: 2, SIGQUIT: 3, SIGTERM: 15, SIGBREAK: 21 } as const;

const HANGUP_CODE = 128 + ENDING_SIGNALS.SIGHUP;

/** sysexits.h EX_SOFTWARE. */
const CRASH_CODE = 70;
/** What was given cannot be worked with. */
const UNWORKABLE_CODE = 1;

/** Takes over the terminal. One at a time. */
export function openTerminal(options: TerminalOptions): TerminalSession {
  const { stdin, stdout, farewell, onHangup } = options;
  const stderr = options.stderr ?? process.stderr;
  const altScreen = options.altScreen ?? true;
  const exit = options.exit ?? ((code: number) => (gone ? dieOfHangup() : process.exit(code)));
  const screen = new ScreenPainter(stdout);
  const keyboard = createKeyboard();
  let entered = false;
  let ended = false;
  let gone = false; // the terminal is dead: no writing, no setting of modes
  let resolveClosed: (cause: LeaveCause) => void = () => {};
  const closed = new Promise<LeaveCause>((resolve) => {
    resolveClosed = resolve;
  });

  function setRaw(raw: boolean): void {
    try {
      stdin.setRawMode?.(raw);
    } catch {
      gone = true; // the terminal went away between two calls
    }
  }

  function enter(): void {
    entered = true;
    setRaw(true);
    const rows = screen.rows;
    const top = altScreen ? '\x1b[?1049h' : `\x1b[${rows};1H${'\n'.repeat(rows)}`;
    stdout.write(`${top}\x1b[2J\x1b[H\x1b[?2004h\x1b[?25l`);
    screen.silence(false);
  }

  function leave(): void {
    if (!entered) return;
    entered = false;
    screen.silence(true);
    const bottom = altScreen ? '\x1b[?1049l' : `\x1b[${screen.rows};1H`;
    if (!gone) stdout.write(`\x1b[m\x1b[?2004l${bottom}\x1b[?25h`);
    setRaw(false);
  }

  function finish(cause: LeaveCause): void {
    ended = true;
    leave();
    keyboard.close();
    stdin.off('data', onData);
    stdin.off('end', hangup);
    stdin.pause();
    stdout.off('resize', onResize);
    for (const [name, handler] of handlers) process.off(name, handler);
    // The error listeners stay: a write that fails after the end must not become a crash.
    resolveClosed(cause);
  }

  function endProcess(cause: LeaveCause, code: number, words: readonly string[]): void {
    if (ended) return;
    try {
      finish(cause);
      onHangup?.(cause);
      const saved = gone ? null : (farewell?.() ?? null);
      const lines = saved === null ? words : [...words, saved];
      if (!gone && lines.length > 0)
        stderr.write(`${safeText(lines.join('\n'), { lines: true })}\n`);
    } finally {
      exit(code);
    }
  }

  function hangup(): void {
    gone = true;
    endProcess('hangup', HANGUP_CODE, []);
  }

  function crash(error: unknown): void {
    if (error instanceof Unworkable) {
      const words = `Ohmward stopped: ${error.message}; ${error.fix}.`;
      endProcess('crash', UNWORKABLE_CODE, [words]);
      return;
    }
    const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
    endProcess('crash', CRASH_CODE, [`Ohmward stopped because of a bug: ${words}`]);
  }

  function suspend(): void {
    if (ended || process.platform === 'win32') return;
    leave();
    // SIGSTOP, because our own handler would catch a SIGTSTP again.
    process.kill(process.pid, 'SIGSTOP');
  }

  function resume(): void {
    if (ended) return;
    setRaw(false); // the shell changed the mode behind Node's back; only a real change is sent
    enter();
    screen.repaint();
  }

  const onData = (bytes: Buffer) => keyboard.feed(bytes);
  const onResize = () => screen.resized();
  const onStreamError = () => hangup();
  const handlers: [string, (error?: unknown) => void][] = [
    ['exit', leave],
    ['uncaughtException', crash],
    ['unhandledRejection', crash],
    ['SIGTSTP', suspend],
    ['SIGCONT', resume],
  ];
  for (const [name, number] of Object.entries(ENDING_SIGNALS)) {
    // SIGHUP by itself does not mean that the terminal is dead: it is restored like after the others.
    handlers.push([name, () => endProcess('signal', 128 + number, [])]);
  }

  keyboard.interceptWith((event) => {
    if (event.kind !== 'key' || !event.ctrl || event.alt) return false;
    if (event.text === 'z') {
      suspend();
      return true;
    }
    if (event.text === 'c' && !keyboard.heard) {
      // Nobody is there yet to decide, and a person must always be able to get out.
      endProcess('signal', 128 + ENDING_SIGNALS.SIGINT, []);
      return true;
    }
    return false;
  });
  for (const [name, handler] of handlers) process.on(name, handler);
  stdin.on('error', onStreamError);
  stdout.on('error', onStreamError);
  process.stderr.on('error', () => {}); // last words nobody can hear
  stdin.on('end', hangup);
  stdout.on('resize', onResize);
  enter();
  stdin.on('data', onData);
  stdin.resume();

  return {
    screen,
    keyboard,
    closed,
    suspend,
    crash,
    close() {
      if (!ended) finish('quit');
    },
  };
}

/**
 * Node 20 aborts in its own clean-up when it exits on a dead terminal (ResetStdio asserts that the line
 * settings can be put back). To die of the signal is the shell's 129 as well, and leaves no core file.
 */
function dieOfHangup(): void {
  process.removeAllListeners('SIGHUP');
  if (process.platform !== 'win32') process.kill(process.pid, 'SIGHUP');
  process.exit(HANGUP_CODE);
}
