/**
 * `ohmward` without a procedure: the start menu at once, and while the person reads it the desk behind it: library,
 * settings, circuits. Nothing heavy may be imported here, or the first frame waits for it.
 */
import { createElement } from 'react';
import { libraryFolder, sessionsFolder } from '../../files/folders.ts';
import { newestSessions } from '../../files/list-sessions.ts';
import { peekSettings } from '../../files/settings.ts';
import { listWords } from '../../records/list-words.ts';
import { isProblem } from '../../source/problem.ts';
import { Entrance } from '../../ui/entrance.tsx';
import { type Arguments, EXIT, type Io, optionText, tellProblem } from '../command.ts';
import { PRACTICE } from '../drill/practice-words.ts';
import { programName } from '../version.ts';
import { NO_LIBRARY } from './no-library.ts';
import { onScreen } from './on-screen.ts';
import type { DeskOnScreen } from './run-on-screen.ts';

/** The exit code. */
export async function runFromStart(args: Arguments, io: Io): Promise<number> {
  if (libraryFolder(io.cwd) === null) return tellProblem(io, NO_LIBRARY, EXIT.wrongInput);
  const preview = args.values['preview'] === true;
  const { sessions: settings, ...look } = peekSettings(io.env);
  const folder =
    optionText(args, 'sessions') ?? sessionsFolder({ env: io.env, cwd: io.cwd, settings });
  const listed = preview ? { sessions: [], count: 0 } : newestSessions(folder);
  /** What is said before the screen is up would be gone with it. */
  const remarks: string[] = [];
  const behind: { screens: DeskOnScreen | null } = { screens: null };

  async function load() {
    const [{ openDesk }, { deskOnScreen }] = await Promise.all([
      import('./open-desk.ts'),
      import('./run-on-screen.ts'),
    ]);
    const quietly = { ...io, err: (text: string) => void remarks.push(text) };
    const desk = await openDesk(quietly, programName(), {
      sessions: optionText(args, 'sessions'),
      preview,
    });
    if (isProblem(desk)) return desk;
    behind.screens = deskOnScreen(desk, null, io);
    return behind.screens.tree;
  }

  const code = await onScreen(
    {
      tree: (onLeave) =>
        createElement(Entrance, {
          sessions: listed.sessions.map(listWords),
          count: listed.count,
          more: [PRACTICE],
          load,
          onLeave,
        }),
      look,
      stop: () => behind.screens?.stop(),
      farewell: () => behind.screens?.farewell() ?? '',
    },
    args,
    io,
  );
  const ended = (await behind.screens?.end(args, io, code)) ?? code;
  for (const remark of remarks) io.err(remark);
  return ended;
}
