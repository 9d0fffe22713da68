/** The whole program on the screen: which screen is shown, and how one leads to another. */

import { useState } from 'react';
import { codesAmong } from '../identify/search-words.ts';
import { emptyJob, type Job } from '../procedure/job.ts';
import { isProblem, type Problem } from '../source/problem.ts';
import type { AppServices, OpenedSession, SessionChoice } from './app-services.ts';
import { leaveSession } from './carry-on.ts';
import { DemoJobList, FaultList, ProcedureList, SessionList } from './library-lists.tsx';
import { JobScreen } from './screens/job-screen.tsx';
import { ReadingPage } from './screens/reading-page.tsx';
import { SessionScreen } from './screens/session-screen.tsx';
import { SettingsScreen } from './screens/settings-screen.tsx';
import { type Destination, StartScreen } from './screens/start-screen.tsx';
import { WaitPage } from './screens/wait-page.tsx';
import { keyLabel } from './term/key-decoder.ts';
import { useKeys } from './term/use-keys.ts';

/** Where the program begins: the start menu, with something chosen from it already, or in a session. */
export type AppBegin =
  | { readonly screen: 'start'; readonly choice?: Destination }
  /** With the job sheet of a procedure that was named. */
  | { readonly screen: 'job'; readonly procedureFile: string; readonly title: string }
  | {
      readonly screen: 'session';
      readonly session: OpenedSession;
      /** With the tests after the repair. */
      readonly retest?: boolean;
    };

export interface AppProps {
  readonly services: AppServices;
  readonly begin: AppBegin;
  /** 0 for quitting, 130 for Ctrl+C. Every answer is saved by then. */
  readonly onLeave: (code: number) => void;
}

type AppPlace =
  | { readonly name: 'start' | 'procedures' | 'demo-jobs' | 'sessions' | 'settings' }
  | { readonly name: 'opening'; readonly opening: () => Promise<OpenedSession | Problem> }
  | {
      readonly name: 'job';
      readonly procedureFile: string;
      readonly title: string;
      /** What the procedure was looked for by. */
      readonly search?: string;
    }
  | {
      readonly name: 'fault';
      readonly procedureFile: string;
      readonly job: Job;
      readonly own: string | null;
      readonly intermittent: boolean;
    }
  | { readonly name: 'session'; readonly session: OpenedSession }
  | { readonly name: 'problem'; readonly problem: Problem }
  | { readonly name: 'extra'; readonly place: number };

export function App({ services, begin, onLeave }: AppProps) {
  const [place, setPlace] = useState<AppPlace>(() => beginning(begin, services));
  const start = () => setPlace({ name: 'start' });

  useKeys((event) => {
    if (keyLabel(event) !== 'ctrl-c') return;
    if (place.name === 'session') leaveSession(place.session);
    onLeave(130);
  });

  const openWith = (opening: () => Promise<OpenedSession | Problem>) =>
    setPlace({ name: 'opening', opening });
  async function finishOpening(opening: () => Promise<OpenedSession | Problem>) {
    const opened = await opening();
    setPlace(
      isProblem(opened)
        ? { name: 'problem', problem: opened }
        : { name: 'session', session: opened },
    );
  }
  const openNew = (choice: SessionChoice) => openWith(() => services.open(choice));

  switch (place.name) {
    case 'start':
      return (
        <StartScreen
          {...services.newestSessions()}
          more={services.more}
          onChoose={(choice) =>
            choice.kind === 'quit' ? onLeave(0) : setPlace(placeOf(choice, services))
          }
        />
      );
    case 'procedures':
      return (
        <ProcedureList
          services={services}
          onPick={({ file, title }, search) =>
            setPlace({ name: 'job', procedureFile: file, title, search })
          }
          onClose={start}
        />
      );
    case 'job':
      return (
        <JobScreen
          job={{ ...emptyJob(''), codes: codesAmong(place.search ?? '') }}
          procedure={place.title}
          terminals={services.terminalsOf(place.procedureFile)}
          parts={services.replaceablesOf(place.procedureFile)}
          circuit={services.circuitOf(place.procedureFile)}
          onTake={(job) =>
            openNew({ procedureFile: place.procedureFile, job, vehicle: { kind: 'real' } })
          }
          clock={services.clock}
          onClose={() => (begin.screen === 'job' ? onLeave(0) : setPlace({ name: 'procedures' }))}
        />
      );
    case 'demo-jobs':
      return (
        <DemoJobList
          services={services}
          onPick={({ procedure, job, fault, intermittent }) =>
            setPlace({ name: 'fault', procedureFile: procedure, job, own: fault, intermittent })
          }
          onClose={start}
        />
      );
    case 'fault':
      return (
        <FaultList
          services={services}
          procedureFile={place.procedureFile}
          own={place.own === null ? null : { id: place.own, intermittent: place.intermittent }}
          onPick={({ id, intermittent }) =>
            openNew({
              procedureFile: place.procedureFile,
              job: place.job,
              vehicle: { kind: 'bench', fault: id, intermittent },
            })
          }
          onClose={() => setPlace({ name: 'demo-jobs' })}
        />
      );
    case 'sessions':
      return (
        <SessionList
          services={services}
          onPick={(path) => openWith(() => services.resume(path))}
          onClose={start}
        />
      );
    case 'settings':
      return <SettingsScreen settings={services.settings} onClose={start} />;
    case 'opening':
      return (
        <WaitPage
          title="Ohmward"
          words="One moment: computing the circuit."
          onShown={() => void finishOpening(place.opening)}
        />
      );
    case 'problem':
      return (
        <ReadingPage
          title="That did not work"
          paragraphs={[{ text: place.problem.problem, bold: true }, '', place.problem.fix]}
          onClose={start}
        />
      );
    case 'extra':
      return services.more[place.place]?.screen(start) ?? null;
    case 'session':
      return (
        <SessionScreen
          opened={place.session}
          clock={services.clock}
          retest={begin.screen === 'session' && begin.retest === true}
          onHome={() => {
            place.session.driver.close();
            if (begin.screen === 'start') start();
            else onLeave(0);
          }}
        />
      );
  }
}

function beginning(begin: AppBegin, services: AppServices): AppPlace {
  switch (begin.screen) {
    case 'session':
      return { name: 'session', session: begin.session };
    case 'job':
      return { name: 'job', procedureFile: begin.procedureFile, title: begin.title };
    case 'start':
      return begin.choice ? placeOf(begin.choice, services) : { name: 'start' };
  }
}

/** Where a line of the start menu leads. */
function placeOf(choice: Destination, { resume }: Pick<AppServices, 'resume'>): AppPlace {
  switch (choice.kind) {
    case 'new':
      return { name: 'procedures' };
    case 'simulated':
      return { name: 'demo-jobs' };
    case 'sessions':
    case 'settings':
      return { name: choice.kind };
    case 'resume':
      return { name: 'opening', opening: () => resume(choice.path) };
    case 'extra':
      return { name: 'extra', place: choice.place };
  }
}
