/** The start menu before the program behind it is there, which is loaded while the person reads. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { isProblem, type Problem } from '../source/problem.ts';
import type { AppBegin } from './app.tsx';
import type { MenuWords, SavedSession } from './app-services.ts';
import { ReadingPage } from './screens/reading-page.tsx';
import { type Destination, StartScreen } from './screens/start-screen.tsx';
import { WaitPage } from './screens/wait-page.tsx';
import { keyLabel } from './term/key-decoder.ts';
import { useKeys } from './term/use-keys.ts';

/** Draws the program from where the person is. */
export type Program = (begin: AppBegin, leave: (code: number) => void) => ReactNode;

export interface EntranceProps {
  readonly sessions: readonly SavedSession[];
  /** Sessions in the folder, of which `sessions` are the newest. */
  readonly count: number;
  readonly more: readonly MenuWords[];
  /** Called once, when the first frame is on the screen. */
  readonly load: () => Promise<Program | Problem>;
  readonly onLeave: (code: number) => void;
}

/** The menu; then a wait if need be; then the program, where the choice leads. */
export function Entrance({ sessions, count, more, load, onLeave }: EntranceProps) {
  const [choice, setChoice] = useState<Destination | null>(null);
  const [program, setProgram] = useState<{ readonly is: Program | Problem } | null>(null);
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
  const start = useRef(load);
  useEffect(() => {
    const soon = setImmediate(() => {
      start.current().then(
        (is) => setProgram({ is }),
        (error: unknown) => setFailure({ error }),
      );
    });
    return () => clearImmediate(soon);
  }, []);
  const inProgram = choice !== null && program !== null;
  useKeys((event) => {
    if (keyLabel(event) === 'ctrl-c' && !inProgram) onLeave(130);
  });

  // The one way from a promise to the guard that restores the terminal.
  if (failure) throw failure.error;
  if (choice === null)
    return (
      <StartScreen
        sessions={sessions}
        count={count}
        more={more}
        onChoose={(chosen) => (chosen.kind === 'quit' ? onLeave(0) : setChoice(chosen))}
      />
    );
  if (program === null)
    return <WaitPage title="Ohmward" words="One moment: reading the procedures." />;
  if (isProblem(program.is))
    return (
      <ReadingPage
        title="That did not work"
        paragraphs={[{ text: program.is.problem, bold: true }, '', program.is.fix]}
        onClose={() => onLeave(1)}
      />
    );
  return program.is({ screen: 'start', choice }, onLeave);
}
