/** The screens: opens the terminal, hands the services to the app, and prints what is left to know on the way out. */
import { createElement } from 'react';
import { App } from '../../ui/app.tsx';
import type { OpenedSession } from '../../ui/app-services.ts';
import {
  allowAttributes,
  type ColourWish,
  decideAscii,
  decideColour,
} from '../../ui/term/colour.ts';
import { mountScreen } from '../../ui/term/mount.tsx';
import { openTerminal } from '../../ui/term/terminal-session.ts';
import { type Arguments, EXIT, type Io, textOf } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import { finish } from './finish.ts';
import type { Desk } from './open-desk.ts';
import { servicesOf } from './screen-services.ts';

/** Runs the app until the person leaves; `begun` starts right in a session. */
export async function runOnScreen(
  desk: Desk,
  begun: OpenedSession | null,
  args: Arguments,
  io: Io,
): Promise<number> {
  let current = begun;
  let code: number = EXIT.done;
  /** What programs after earlier sessions complained of: while the screen is up there is no place for it. */
  const complaints: string[] = [];
  const quietly = { ...io, err: (text: string) => void complaints.push(text) };
  const running: Promise<void>[] = [];
  const services = servicesOf(desk, (opened) => {
    const left = current;
    current = opened;
    if (!left) return;
    left.driver.close();
    running.push(afterTheSession(left, desk, quietly));
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
    farewell: () =>
      current?.preview
        ? 'A preview: nothing was saved.\n'
        : current
          ? `The session is saved: ${current.driver.path()}\nGo on with: ohmward resume ${current.driver.path()}\n`
          : '',
  });
  const app = createElement(App, {
    services,
    begin: begun ? { screen: 'session', session: begun } : { screen: 'start' },
    onLeave: (left: number) => {
      code = left;
      terminal.close();
    },
  });
  mountScreen(app, terminal, look);
  await terminal.closed;
  if (current) {
    const { driver } = current;
    if (driver.session().status === 'open') driver.perform({ type: 'pause' });
    driver.close();
    await finish(current, desk, args, io);
  }
  await Promise.all(running);
  for (const complaint of complaints) io.err(complaint);
  return code;
}
