/** Drills on the screen: choose what to drill on and how hard, then the pages of a session. */
import { useState } from 'react';
import { LEVELS } from '../../drill/levels.ts';
import type { Problem } from '../../source/problem.ts';
import type { OpenedSession } from '../app-services.ts';
import { PickScreen } from '../screens/pick-screen.tsx';
import { ReadingPage } from '../screens/reading-page.tsx';
import { SessionScreen } from '../screens/session-screen.tsx';
import type { DrillServices, DrillSubject } from './drill-services.ts';

export interface DrillAppProps {
  readonly services: DrillServices;
  /** A drill that was begun by the command; else the person chooses. */
  readonly begun: OpenedSession | null;
  readonly onLeave: () => void;
}

type DrillPage =
  | { readonly name: 'subject' }
  | { readonly name: 'level'; readonly subject: DrillSubject }
  | { readonly name: 'drill'; readonly opened: OpenedSession }
  | { readonly name: 'problem'; readonly problem: Problem };

/** The screens of a drill, from the choice to the debrief. */
export function DrillApp({ services, begun, onLeave }: DrillAppProps) {
  const [place, setPlace] = useState<DrillPage>(
    begun ? { name: 'drill', opened: begun } : { name: 'subject' },
  );
  switch (place.name) {
    case 'subject':
      return (
        <PickScreen
          title="Which drill?"
          items={services.subjects().map((subject) => ({
            text: subject.title,
            also: subject.name,
            about: subject.about,
            subject,
          }))}
          empty="There is no circuit to practise on."
          onPick={({ subject }) => setPlace({ name: 'level', subject })}
          onClose={onLeave}
        />
      );
    case 'level':
      return (
        <PickScreen
          title="How hard?"
          items={LEVELS.map((level) => ({
            text: `${level.number}  ${level.title}`,
            also: level.name,
            about: level.about,
            level,
          }))}
          empty=""
          onPick={({ level }) => {
            const opened = services.begin(place.subject.name, level.name);
            setPlace(
              'problem' in opened
                ? { name: 'problem', problem: opened }
                : { name: 'drill', opened },
            );
          }}
          onClose={() => setPlace({ name: 'subject' })}
        />
      );
    case 'drill':
      return (
        <SessionScreen
          opened={place.opened}
          clock={services.clock}
          onHome={() => {
            const { driver } = place.opened;
            driver.close();
            const lost = driver.unsaved();
            if (!lost) return onLeave();
            const { words, fix } = lost;
            setPlace({
              name: 'problem',
              problem: { problem: `Not everything is saved. ${words}`, fix },
            });
          }}
        />
      );
    case 'problem':
      return (
        <ReadingPage
          title="That did not work"
          paragraphs={[{ text: place.problem.problem, bold: true }, '', place.problem.fix]}
          onClose={onLeave}
        />
      );
  }
}
