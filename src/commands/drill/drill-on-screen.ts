/** A drill on the screen: opens the terminal, shows the screens, prints the score on the way out. */
import { createElement } from 'react';
import type { OpenedSession } from '../../ui/app-services.ts';
import { DrillApp } from '../../ui/drill/drill-app.tsx';
import { LeaveOnControlC } from '../../ui/drill/leave-on-control-c.tsx';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { unsavedWords } from '../session/finish.ts';
import { onScreen } from '../session/on-screen.ts';
import type { Desk } from '../session/open-desk.ts';
import { drillServices } from './drill-services.ts';
import { finishDrill } from './finish-drill.ts';

/** Runs the screens until the person leaves; `begun` starts right at the bench. */
export async function drillOnScreen(
  desk: Desk,
  begun: OpenedSession | null,
  args: Arguments,
  io: Io,
): Promise<number> {
  let current = begun;
  const services = drillServices(desk, (opened) => {
    current = opened;
  });
  const code = await onScreen(
    {
      tree: (leave) =>
        createElement(
          LeaveOnControlC,
          { onLeave: () => leave(EXIT.interrupted) },
          createElement(DrillApp, { services, begun, onLeave: () => leave(EXIT.done) }),
        ),
      look: desk.settings(),
      stop: () => current?.driver.close(),
      farewell: () => (current ? farewellTo(current) : ''),
    },
    args,
    io,
  );
  if (!current) return code;
  current.driver.close();
  return finishDrill(current, args, io, 'score', code);
}

function farewellTo({ driver }: OpenedSession): string {
  const problem = driver.unsaved();
  return problem
    ? `Attention: ${unsavedWords(problem)}\n`
    : `The drill is saved: ${driver.path()}\n`;
}
