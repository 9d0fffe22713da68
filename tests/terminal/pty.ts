/** The real program in a real pseudo-terminal, its screen read by a terminal emulator. */
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { QUICK } from '../quick-node.ts';

/** Bytes of the keys tests press. */
const KEY_BYTES = {
  return: '\r',
  escape: '\x1b',
  up: '\x1b[A',
  down: '\x1b[B',
  right: '\x1b[C',
  left: '\x1b[D',
  home: '\x1b[H',
  end: '\x1b[F',
  'page-up': '\x1b[5~',
  'page-down': '\x1b[6~',
  backspace: '\x7f',
  delete: '\x1b[3~',
  tab: '\t',
  'shift-tab': '\x1b[Z',
  f1: '\x1bOP',
  'ctrl-f1': '\x1b[1;5P',
  'ctrl-c': '\x03',
  'ctrl-z': '\x1a',
} as const;

interface Exit {
  readonly code: number;
  readonly signal: number;
}

export interface Program {
  readonly pid: number;
  /** The visible lines, spaces at their ends cut. */
  screen(): Promise<string[]>;
  /** Whether the alternate screen is shown. */
  onAltScreen(): Promise<boolean>;
  /** Resolves with the screen as text once it shows this; rejects with the screen it had when time is up. */
  waitFor(what: string | RegExp, ms?: number): Promise<string>;
  /** The same for everything written, escapes included. */
  waitForRaw(what: string | RegExp, ms?: number): Promise<void>;
  /** Sends the text in one piece. */
  type(text: string): void;
  press(key: keyof typeof KEY_BYTES): void;
  resize(columns: number, rows: number): void;
  kill(signal: NodeJS.Signals): void;
  /** Closes the terminal under the program, as closing a window does. */
  hangUp(): void;
  readonly exit: Promise<Exit>;
  /** Everything the program wrote. */
  raw(): string;
}

export interface ProgramOptions {
  /** For the program; or for `command` when that is given. */
  readonly args?: readonly string[];
  /** The file node runs. */
  readonly file?: string;
  /** Another executable than node, `file` is then not used. */
  readonly command?: string;
  readonly columns?: number;
  readonly rows?: number;
  readonly cwd?: string;
  /** Added to the environment; undefined takes a variable out. */
  readonly env?: Readonly<Record<string, string | undefined>>;
}

/** Variables of the test run that would make the program behave as under test. */
const NOT_INHERITED = [
  'CI',
  'CONTINUOUS_INTEGRATION',
  'NO_COLOR',
  'FORCE_COLOR',
  'VITEST',
  'NODE_ENV',
];

/** How long a wait lasts at most; generous, since a busy machine is not a failure. */
const WAIT_MS = 15_000;

/** Starts the program; `dist/ohmward.mjs` when nothing else is named. End it, or `kill` it, before the test ends. */
export function startProgram(options: ProgramOptions = {}): Program {
  const { columns = 80, rows = 24, file = 'dist/ohmward.mjs' } = options;
  const terminal = new xterm.Terminal({
    cols: columns,
    rows,
    allowProposedApi: true,
    scrollback: 500,
  });
  const env: Record<string, string> = {};
  const wanted = { ...process.env, LANG: 'C.UTF-8', LC_ALL: 'C.UTF-8', TERM: 'xterm-256color' };
  for (const [name, value] of Object.entries({ ...wanted, ...pick(NOT_INHERITED), ...options.env }))
    if (value !== undefined) env[name] = value;
  const args = [...(options.args ?? [])];
  const child = spawn(
    options.command ?? process.execPath,
    options.command === undefined ? [...QUICK, file, ...args] : args,
    { cols: columns, rows, cwd: options.cwd ?? process.cwd(), env, name: 'xterm-256color' },
  );
  let written = '';
  const waiting = new Set<() => void>();
  const look = () => {
    for (const check of [...waiting]) check();
  };
  child.onData((text) => {
    written += text;
    terminal.write(text, look);
  });
  const exit = new Promise<Exit>((resolve) => {
    child.onExit(({ exitCode, signal }) => {
      // The emulator first reads the rest.
      terminal.write('', () => {
        look();
        resolve({ code: exitCode, signal: signal ?? 0 });
      });
    });
  });
  const buffer = () => terminal.buffer.active;
  const linesNow = () =>
    Array.from({ length: terminal.rows }, (_, row) =>
      (
        buffer()
          .getLine(buffer().baseY + row)
          ?.translateToString(true) ?? ''
      ).trimEnd(),
    );
  const quiet = () => new Promise<void>((resolve) => terminal.write('', resolve));

  function wait<T>(
    what: string | RegExp,
    ms: number,
    read: () => string,
    give: (text: string) => T,
  ) {
    return new Promise<T>((resolve, reject) => {
      const check = () => {
        const text = read();
        if (!(typeof what === 'string' ? text.includes(what) : what.test(text))) return;
        waiting.delete(check);
        clearTimeout(timer);
        resolve(give(text));
      };
      const timer = setTimeout(() => {
        waiting.delete(check);
        reject(new Error(`no ${what} within ${ms} ms in:\n${read()}`));
      }, ms);
      waiting.add(check);
      check();
    });
  }

  return {
    pid: child.pid,
    exit,
    raw: () => written,
    async screen() {
      await quiet();
      return linesNow();
    },
    async onAltScreen() {
      await quiet();
      return buffer().type === 'alternate';
    },
    waitFor: (what, ms = WAIT_MS) =>
      wait(
        what,
        ms,
        () => linesNow().join('\n'),
        (text) => text,
      ),
    waitForRaw: (what, ms = WAIT_MS) =>
      wait(
        what,
        ms,
        () => written,
        () => undefined,
      ),
    type: (text) => child.write(text),
    press: (key) => child.write(KEY_BYTES[key]),
    resize(nextColumns, nextRows) {
      terminal.resize(nextColumns, nextRows);
      child.resize(nextColumns, nextRows);
    },
    kill: (signal) => process.kill(child.pid, signal),
    hangUp: () => (child as unknown as { destroy(): void }).destroy(),
  };
}

const pick = (names: readonly string[]) =>
  Object.fromEntries(names.map((name) => [name, undefined]));
