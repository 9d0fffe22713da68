/** The whole program on the screen over a desk: the app, what runs after each session, and what is left to say at the end. */
import { createElement, type ReactNode } from 'react';
import { App, type AppBegin } from '../../ui/app.tsx';
import type { OpenedSession } from '../../ui/app-services.ts';
import { leaveSession } from '../../ui/carry-on.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import { elsewhereWords, finish, tellUnsaved, unsavedWords } from './finish.ts';
import { onScreen } from './on-screen.ts';
import type { Desk } from './open-desk.ts';
import { servicesOf } from './screen-services.ts';

/** The app and its end. */
export interface DeskOnScreen {
  readonly tree: (begin: AppBegin, leave: (code: number) => void) => ReactNode;
  readonly stop: () => void;
  readonly farewell: () => string;
  /**
   * After the terminal is given back: ends the last session, waits for what runs after the others, says what went wrong.
   * The exit code is `code` when all is well.
   */
  readonly end: (args: Arguments, io: Io, code: number) => Promise<number>;
}

/** Shows a session that is already open, or its tests after the repair, until the person leaves; the exit code. */
export async function runOnScreen(
  desk: Desk,
  begun: OpenedSession,
  args: Arguments,
  io: Io,
  { retest = false }: { readonly retest?: boolean } = {},
): Promise<number> {
  const screens = deskOnScreen(desk, begun, io);
  const code = await onScreen(
    {
      tree: (leave) => screens.tree({ screen: 'session', session: begun, retest }, leave),
      look: desk.settings(),
      ...{ stop: screens.stop, farewell: screens.farewell },
    },
    args,
    io,
  );
  return screens.end(args, io, code);
}

/** Shows the job sheet of a procedure, then the session it begins, until the person leaves; the exit code. */
export async function runFromSheet(
  desk: Desk,
  { file, title }: { readonly file: string; readonly title: string },
  args: Arguments,
  io: Io,
): Promise<number> {
  const screens = deskOnScreen(desk, null, io);
  const begin = { screen: 'job', procedureFile: file, title } as const;
  const { tree, stop, farewell } = screens;
  const shown = {
    tree: (leave: (code: number) => void) => tree(begin, leave),
    look: desk.settings(),
    stop,
    farewell,
  };
  const code = await onScreen(shown, args, io);
  return screens.end(args, io, code);
}

/** The app over a desk; `begun` is the session it begins with. */
export function deskOnScreen(desk: Desk, begun: OpenedSession | null, io: Io): DeskOnScreen {
  let current = begun;
  /** What programs after earlier sessions complained of: while the screen is up there is no place for it. */
  const complaints: string[] = [];
  const quietly = { ...io, err: (text: string) => void complaints.push(text) };
  const running: Promise<void>[] = [];
  let lost = false;
  const onOpened = (opened: OpenedSession) => {
    const left = current;
    current = opened;
    if (!left) return;
    left.driver.close();
    if (tellUnsaved(left, quietly)) lost = true;
    running.push(afterTheSession(left, desk, quietly));
  };
  /** Its own screens close it and tell the rest; only what ends the program on the way there comes here. */
  let drill: OpenedSession | null = null;
  const services = servicesOf(desk, onOpened, (opened) => {
    drill = opened;
  });
  return {
    tree: (begin, onLeave) => createElement(App, { services, begin, onLeave }),
    stop: () => {
      current?.driver.close();
      drill?.driver.close();
    },
    farewell: () => (current ? farewellTo(current) : ''),
    end: async (args, toPerson, code) => {
      let ended = lost ? EXIT.wrongInput : code;
      if (current) {
        leaveSession(current);
        ended = await finish(current, desk, args, toPerson, ended);
      }
      await Promise.all(running);
      for (const complaint of complaints) toPerson.err(complaint);
      return ended;
    },
  };
}

function farewellTo({ preview, driver, name }: OpenedSession): string {
  if (preview) return 'Preview: nothing was saved.\n';
  if (driver.isElsewhere()) return `${elsewhereWords(name())}\n`;
  const problem = driver.unsaved();
  if (problem) return `Attention: ${unsavedWords(problem)}\n`;
  const next = { open: 'resume', paused: 'resume', concluded: 'retest', closed: 'records show' };
  const words = driver.session().status === 'closed' ? 'Read it with' : 'Go on with';
  const go = `ohmward ${next[driver.session().status]} ${name()}`;
  return `The session is saved: ${driver.path()}\n${words}: ${go}\n`;
}
