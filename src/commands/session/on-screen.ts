/** Opens the terminal for a tree of screens and gives it back. Light: the first frame waits for all that is imported here. */
import type { ReactNode } from 'react';
import type { Settings } from '../../files/settings.ts';
import {
  allowAttributes,
  type ColourWish,
  decideAscii,
  decideColour,
} from '../../ui/term/colour.ts';
import { mountScreen } from '../../ui/term/mount.tsx';
import { openTerminal } from '../../ui/term/terminal-session.ts';
import { type Arguments, EXIT, type Io, optionText } from '../command.ts';
import { keepHeapSmall } from './small-heap.ts';

/** What is shown, and how it is left. */
export interface ScreenShown {
  /** The screens; `leave` gives the terminal back, with an exit code. */
  readonly tree: (leave: (code: number) => void) => ReactNode;
  readonly look: Pick<Settings, 'theme' | 'ascii'>;
  /** The last duties when a signal, a crash or a terminal that is gone ends the program, before the last words. */
  readonly stop: () => void;
  /** Last words on the terminal once it is given back, after a signal and a crash too. */
  readonly farewell: () => string;
}

/** Shows it until the person leaves; the exit code. */
export async function onScreen(
  { tree, look, stop, farewell }: ScreenShown,
  args: Arguments,
  io: Io,
): Promise<number> {
  keepHeapSmall();
  let code: number = EXIT.done;
  const asked = args.values['ascii'] === true || look.ascii;
  const wish =
    look.theme === 'no-colour' ? 'never' : ((optionText(args, 'color') ?? 'auto') as ColourWish);
  allowAttributes();
  const terminal = openTerminal({
    stdin: process.stdin,
    stdout: process.stdout,
    stderr: process.stderr,
    altScreen: args.values['no-alt-screen'] !== true,
    onHangup: stop,
    farewell,
  });
  const leave = (left: number) => {
    code = left;
    terminal.close();
  };
  mountScreen(tree(leave), terminal, {
    colour: decideColour(io.env, process.stdout.isTTY === true, wish),
    ascii: decideAscii(io.env, asked ? { ascii: true } : {}),
  });
  await terminal.closed;
  return code;
}
