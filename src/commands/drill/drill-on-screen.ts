/** A drill on the screen: opens the terminal, shows the screens, prints the score on the way out. */
import { createElement } from 'react';
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { DrillApp } from '../../ui/drill/drill-app.tsx';
import { LeaveOnControlC } from '../../ui/drill/leave-on-control-c.tsx';
import {
  allowAttributes,
  type ColourWish,
  decideAscii,
  decideColour,
} from '../../ui/term/colour.ts';
import { mountScreen } from '../../ui/term/mount.tsx';
import { openTerminal } from '../../ui/term/terminal-session.ts';
import { type Arguments, EXIT, type Io, textOf } from '../command.ts';
import type { Desk } from '../session/open-desk.ts';
import { drillServices } from './drill-services.ts';
import { finishDrill } from './finish-drill.ts';

/** Runs the screens until the person leaves; `begun` starts right at the bench. */
export async function drillOnScreen(
  desk: Desk,
  begun: DrillInHand | null,
  args: Arguments,
  io: Io,
): Promise<number> {
  let current = begun;
  let code: number = EXIT.done;
  const services = drillServices(desk, (hand) => {
    current = hand;
  });
  const settings = desk.settings();
  const asked = args.values['ascii'] === true || settings.ascii;
  const wish =
    settings.theme === 'no-colour' ? 'never' : ((textOf(args, 'color') ?? 'auto') as ColourWish);
  const look = {
    colour: decideColour(io.env, process.stdout.isTTY === true, wish),
    ascii: decideAscii(io.env, asked ? { ascii: true } : {}),
  };
  allowAttributes();
  const terminal = openTerminal({
    stdin: process.stdin,
    stdout: process.stdout,
    stderr: process.stderr,
    altScreen: args.values['no-alt-screen'] !== true,
    farewell: () => (current ? `The drill is saved: ${current.path()}\n` : ''),
  });
  const leave = (left: number) => {
    code = left;
    terminal.close();
  };
  const screens = createElement(DrillApp, { services, begun, onLeave: () => leave(EXIT.done) });
  const app = createElement(LeaveOnControlC, { onLeave: () => leave(EXIT.interrupted) }, screens);
  mountScreen(app, terminal, look);
  await terminal.closed;
  if (current) {
    current.close();
    finishDrill(current, args, io, 'score');
  }
  return code;
}
