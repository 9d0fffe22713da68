/**
 * Starts the person's own program after a session: for a backup, a printer, the shop's own books.
 *
 * Only from the person's settings, never from a procedure. No shell: program and arguments go as they are, the path
 * of the session file is the last argument, the record comes as JSON on the standard input. The environment holds
 * only what programs need to find themselves. Whatever happens, the session is already saved; this only returns words.
 */
import { errorCodeOf } from '../files/error-code.ts';
import { safeText } from '../source/safe-text.ts';

/** The program to start, and the session that it is told of. */
export interface AfterSession {
  /** Program and arguments. */
  readonly command: readonly string[];
  /** Path of the session file. */
  readonly path: string;
  /** The record, from `recordJson`. */
  readonly json: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  /** Milliseconds before it is stopped. */
  readonly limitMs?: number;
}

/** Whether it ran to its end, and what there is to say of it. */
export interface AfterSessionResult {
  readonly done: boolean;
  /** What happened, in one or more lines, fit for the terminal. */
  readonly words: string;
}

const LIMIT_MS = 30_000;
const OUTPUT_BYTES = 1_000_000;
/** Of what the program printed, so much is shown. */
const SHOWN_BYTES = 2_000;

/** Names of the environment that are handed on: what programs need, and where `ohmward records share` sends. Anything else may hold what is nobody's business. */
const HANDED_ON =
  /^(PATH|HOME|USER|LOGNAME|LANG|LC_[A-Z]+|TZ|TMPDIR|TEMP|TMP|XDG_[A-Z_]+|SystemRoot|SystemDrive|ComSpec|PATHEXT|APPDATA|LOCALAPPDATA|USERPROFILE|USERNAME|OHMWARD_DATABASE|OHMWARD_SESSIONS|PG[A-Z]+)$/i;

/** Runs the command and says how it went; never throws. */
export async function runAfterSession(after: AfterSession): Promise<AfterSessionResult> {
  const [program, ...words] = after.command;
  if (program === undefined || program === '') return { done: true, words: '' };
  const limitMs = after.limitMs ?? LIMIT_MS;
  const env = Object.fromEntries(
    Object.entries(after.env).filter(
      ([name, value]) => HANDED_ON.test(name) && value !== undefined,
    ),
  ) as Record<string, string>;
  try {
    const { execa } = await import('execa');
    const overflow = new AbortController();
    const child = execa(program, [...words, after.path], {
      shell: false,
      extendEnv: false,
      env,
      cwd: after.cwd,
      input: after.json,
      timeout: limitMs,
      forceKillAfterDelay: 1_000,
      cancelSignal: overflow.signal,
      buffer: false,
      all: true,
      reject: false,
    });
    // Counted here: a program that prints without end would else only be stopped by the clock.
    const chunks: Uint8Array[] = [];
    let bytes = 0;
    child.all.on('data', (chunk: Uint8Array) => {
      if (bytes <= SHOWN_BYTES) chunks.push(chunk);
      bytes += chunk.length;
      if (bytes > OUTPUT_BYTES) overflow.abort();
    });
    const result = await child;
    const printed = shown(Buffer.concat(chunks));
    if (!result.failed) return { done: true, words: printed };
    const what = `${safeText(program)} ${failure(result, limitMs)}`;
    return { done: false, words: [what, SAFE, printed].join('\n').trim() };
  } catch (error) {
    const what = `${safeText(program)} could not be started (${errorCodeOf(error)})`;
    return { done: false, words: `${what}\n${SAFE}` };
  }
}

const SAFE = 'The session is saved anyway.';

interface Ended {
  readonly timedOut: boolean;
  readonly isCanceled: boolean;
  readonly exitCode?: number | undefined;
  readonly signal?: string | undefined;
  readonly code?: string | undefined;
}

function failure(ended: Ended, limitMs: number): string {
  if (ended.timedOut) return `was stopped after ${limitMs / 1000} s`;
  if (ended.isCanceled) return `was stopped: it printed more than ${OUTPUT_BYTES / 1e6} MB`;
  if (ended.exitCode !== undefined) return `ended with exit code ${ended.exitCode}`;
  if (ended.signal !== undefined) return `was ended by ${ended.signal}`;
  return `could not be started (${ended.code ?? 'unknown reason'})`;
}

function shown(output: Uint8Array): string {
  // Not fatal: bytes that are no UTF-8 become U+FFFD.
  const text = new TextDecoder().decode(output.subarray(0, SHOWN_BYTES));
  const cut = output.length > SHOWN_BYTES ? `${text}…` : text;
  return safeText(cut.trimEnd(), { lines: true });
}
