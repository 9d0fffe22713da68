/** Puts a React tree on the terminal and keeps it there: size, keys, look, and the end. */
import { EventEmitter } from 'node:events';
import { Box, render } from 'ink';
import { Component, type ReactNode, useLayoutEffect, useReducer, useRef, useState } from 'react';
import { Words } from '../parts/safe-words.tsx';
import { allowAttributes, type DrawingStyle } from './colour.ts';
import type { Keyboard } from './keyboard.ts';
import type { ScreenPainter } from './screen-painter.ts';
import { KeyboardContext } from './use-keys.ts';
import { LookContext } from './use-look.ts';
import { SIZE_MIN, SizeContext } from './use-size.ts';

/** What a screen needs of a terminal; `openTerminal` gives it, tests make their own. */
export interface ScreenHost {
  readonly screen: ScreenPainter;
  readonly keyboard: Keyboard;
  readonly closed: Promise<unknown>;
  crash(error: unknown): void;
}

/** A tree that stands on the terminal. */
export interface MountedScreen {
  /** Shows another tree in place of the last; state is kept where the trees agree. */
  show(node: ReactNode): void;
  unmount(): void;
}

/** Draws `node` on the terminal until it is unmounted or the terminal is left. */
export function mountScreen(node: ReactNode, host: ScreenHost, look: DrawingStyle): MountedScreen {
  allowAttributes();
  const tree = (content: ReactNode) => (
    <CrashGuard onCrash={host.crash}>
      <Root host={host} look={look}>
        {content}
      </Root>
    </CrashGuard>
  );
  const ink = render(tree(node), {
    stdin: silentStdin(),
    stdout: host.screen as unknown as NodeJS.WriteStream,
    debug: true, // whole frames, for the painter
    exitOnCtrlC: false,
    patchConsole: false,
  });
  void host.closed.then(() => ink.unmount());
  return { show: (content) => ink.rerender(tree(content)), unmount: () => ink.unmount() };
}

/**
 * What Ink is given as its keyboard: a stream that says it is a terminal and never has anything to read. Ink 6.8 loses keys
 * that come together and dies on Ctrl+F1 (ink#782, ink#901), so our own keyboard reads the terminal.
 */
function silentStdin(): NodeJS.ReadStream {
  const shim = Object.assign(new EventEmitter(), {
    isTTY: true,
    setRawMode: () => shim,
    setEncoding: () => shim,
    ref: () => shim,
    unref: () => shim,
    resume: () => shim,
    pause: () => shim,
    read: () => null,
  });
  return shim as unknown as NodeJS.ReadStream;
}

function Root(props: { host: ScreenHost; look: DrawingStyle; children: ReactNode }) {
  const { screen, keyboard } = props.host;
  const size = useTerminalSize(screen);
  useSettledKeys(keyboard);
  const small = size.columns < SIZE_MIN.columns || size.rows < SIZE_MIN.rows;
  useTextOnly(keyboard, small);
  const untaken = useUntaken(keyboard);
  // What is hidden keeps its state, and a size it can live with.
  const room = {
    columns: Math.max(size.columns, SIZE_MIN.columns),
    rows: Math.max(size.rows, SIZE_MIN.rows) - 1,
  };
  return (
    <LookContext value={props.look}>
      <KeyboardContext value={keyboard}>
        <SizeContext value={room}>
          <Box
            width={size.columns}
            height={Math.max(1, size.rows - 1)}
            overflow="hidden"
            flexDirection="column"
          >
            {small ? <TooSmall columns={size.columns} rows={size.rows} untaken={untaken} /> : null}
            {!small && untaken > 0 ? (
              <Words bold>{`! ${keysWords(untaken)} not taken. Any key continues.`}</Words>
            ) : null}
            <Box display={small ? 'none' : 'flex'} flexDirection="column" flexShrink={0}>
              {props.children}
            </Box>
          </Box>
        </SizeContext>
      </KeyboardContext>
    </LookContext>
  );
}

function TooSmall(props: { columns: number; rows: number; untaken: number }) {
  const { columns, rows, untaken } = props;
  const lost = untaken === 0 ? '' : ` So far ${keysWords(untaken)} not taken.`;
  return (
    <Words width={Math.max(1, columns)}>
      {`Please enlarge this window: ${SIZE_MIN.columns} x ${SIZE_MIN.rows} is the minimum, ` +
        `it is ${columns} x ${rows}. Your work is kept, and text still goes into its field; ` +
        `other keys are ignored.${lost}`}
    </Words>
  );
}

function keysWords(count: number): string {
  return count === 1 ? '1 key was' : `${count} keys were`;
}

/** Keys that were not taken, until one is again. */
function useUntaken(keyboard: Keyboard): number {
  const [untaken, setUntaken] = useState(0);
  useLayoutEffect(() => {
    keyboard.countUntakenWith(setUntaken);
    return () => keyboard.countUntakenWith(null);
  }, [keyboard]);
  return untaken;
}

/** The terminal's size now; a new object on each resize, so that each resize brings a frame. */
function useTerminalSize(screen: ScreenPainter): { columns: number; rows: number } {
  const [size, setSize] = useState({ columns: screen.columns, rows: screen.rows });
  useLayoutEffect(() => {
    const follow = () => setSize({ columns: screen.columns, rows: screen.rows });
    screen.on('size', follow);
    return () => {
      screen.off('size', follow);
    };
  }, [screen]);
  return size;
}

/**
 * The next key waits for this component's next commit: whatever the last key changed is in the same one.
 * It is then delivered from a fresh call, since React counts updates made while committing as a loop.
 */
function useSettledKeys(keyboard: Keyboard): void {
  const [, bump] = useReducer((count: number) => count + 1, 0);
  const done = useRef<(() => void) | null>(null);
  useLayoutEffect(() => {
    const resume = done.current;
    done.current = null;
    if (resume) setImmediate(resume);
  });
  useLayoutEffect(() => {
    keyboard.settleWith((resume) => {
      done.current = resume;
      bump();
    });
    return () => keyboard.settleWith(null);
  }, [keyboard]);
}

/** While nothing can be seen, nothing is done blindly; only Ctrl+C goes through, and text into the field it was begun in. */
function useTextOnly(keyboard: Keyboard, small: boolean): void {
  useLayoutEffect(() => {
    keyboard.mute(small);
    return () => keyboard.mute(false);
  }, [keyboard, small]);
}

/** A mistake while drawing ends like any other crash, not with a page drawn by Ink. */
class CrashGuard extends Component<
  { onCrash: (error: unknown) => void; children: ReactNode },
  { failed: boolean }
> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override componentDidCatch(error: unknown) {
    this.props.onCrash(error);
  }

  override render() {
    return this.state.failed ? null : this.props.children;
  }
}
