/** A screen without a process: the real mount, painter and keyboard on a terminal emulator in memory. */
import { EventEmitter } from 'node:events';
import xterm from '@xterm/headless';
import type { ReactNode } from 'react';
import { expect } from 'vitest';
import type { DrawingStyle } from '../../src/ui/term/colour.ts';
import { createKeyboard } from '../../src/ui/term/keyboard.ts';
import { mountScreen } from '../../src/ui/term/mount.tsx';
import { ScreenPainter } from '../../src/ui/term/screen-painter.ts';

/** One cell's look, for tests of what is not text. */
interface Cell {
  readonly text: string;
  readonly bold: boolean;
  readonly inverse: boolean;
  readonly underline: boolean;
  /** Whether it has a colour of its own. */
  readonly coloured: boolean;
}

export interface TestScreen {
  /** The screen's lines, spaces at their ends cut. */
  lines(): Promise<string[]>;
  /** The same as one text. */
  text(): Promise<string>;
  cell(row: number, column: number): Promise<Cell>;
  /** The signs in the first and the last column of each row, by the terminal's own cells. */
  edges(): Promise<string[]>;
  /** Bytes as a terminal sends them, in one piece; resolves when every key has taken effect. */
  send(bytes: string): Promise<void>;
  resize(columns: number, rows: number): Promise<void>;
  show(node: ReactNode): Promise<void>;
  unmount(): Promise<void>;
  /** Everything written so far. */
  raw(): string;
  /** How often something was written. */
  frames(): number;
  /** Errors that would have ended the program. */
  readonly crashes: unknown[];
}

/** The last row stays empty; every other is as wide as the screen and closed on both sides. */
export function expectWhole(lines: readonly string[], columns: number, rows: number): void {
  expect(lines).toHaveLength(rows);
  expect(lines.at(-1)).toBe('');
  for (const line of lines.slice(0, -1)) {
    expect([...line]).toHaveLength(columns);
    expect(line).toMatch(/^[┌│├└+|].*[┐│┤┘+|]$/);
  }
}

/** Mounts `node` on a screen of this size. */
export async function openTestScreen(
  node: ReactNode,
  options: { columns?: number; rows?: number; look?: Partial<DrawingStyle> } = {},
): Promise<TestScreen> {
  const { columns = 80, rows = 24 } = options;
  const terminal = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  let written = '';
  let frames = 0;
  const stdout = Object.assign(new EventEmitter(), {
    isTTY: true,
    columns,
    rows,
    write(text: string) {
      written += text;
      frames += 1;
      terminal.write(text);
      return true;
    },
  });
  const screen = new ScreenPainter(stdout as unknown as NodeJS.WriteStream);
  const keyboard = createKeyboard();
  const crashes: unknown[] = [];
  const host = {
    screen,
    keyboard,
    closed: new Promise<never>(() => {}),
    crash: (error: unknown) => crashes.push(error),
  };
  const mounted = mountScreen(node, host, { colour: false, ascii: false, ...options.look });

  /** Until React has nothing left to do and the emulator has read what was written. */
  async function settle(): Promise<void> {
    await keyboard.idle();
    for (let turn = 0; turn < 3; turn++) await new Promise((resolve) => setImmediate(resolve));
    await new Promise<void>((resolve) => terminal.write('', resolve));
  }

  async function lines(): Promise<string[]> {
    await settle();
    return Array.from({ length: terminal.rows }, (_, row) =>
      (
        buffer()
          .getLine(buffer().baseY + row)
          ?.translateToString(true) ?? ''
      ).trimEnd(),
    );
  }

  const buffer = () => terminal.buffer.active;
  await settle();
  return {
    crashes,
    raw: () => written,
    frames: () => frames,
    lines,
    text: async () => (await lines()).join('\n'),
    async edges() {
      await settle();
      return Array.from({ length: terminal.rows }, (_, row) => {
        const line = buffer().getLine(buffer().baseY + row);
        return [0, terminal.cols - 1].map((at) => line?.getCell(at)?.getChars() ?? '').join('');
      });
    },
    async cell(row, column) {
      await settle();
      const cell = buffer()
        .getLine(buffer().baseY + row)
        ?.getCell(column);
      return {
        text: cell?.getChars() ?? '',
        bold: Boolean(cell?.isBold()),
        inverse: Boolean(cell?.isInverse()),
        underline: Boolean(cell?.isUnderline()),
        coloured: cell !== undefined && (!cell.isFgDefault() || !cell.isBgDefault()),
      };
    },
    async send(bytes) {
      keyboard.feed(new TextEncoder().encode(bytes));
      // A lone escape is only one after its waiting time.
      if (bytes.endsWith('\x1b')) await new Promise((resolve) => setTimeout(resolve, 70));
      await settle();
    },
    async resize(nextColumns, nextRows) {
      stdout.columns = nextColumns;
      stdout.rows = nextRows;
      terminal.resize(nextColumns, nextRows);
      screen.resized();
      await settle();
    },
    async show(next) {
      mounted.show(next);
      await settle();
    },
    async unmount() {
      mounted.unmount();
      await settle();
    },
  };
}
