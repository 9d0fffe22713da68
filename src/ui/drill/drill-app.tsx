/** Drills on the screen: choose, measure, name the fault, read the debrief. */

import { useState } from 'react';
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { debriefLines } from '../../drill/drill-words.ts';
import { LEVELS } from '../../drill/levels.ts';
import type { Problem } from '../../source/problem.ts';
import { PickScreen } from '../screens/pick-screen.tsx';
import { ReadingPage } from '../screens/reading-page.tsx';
import { DrillBench } from './drill-bench.tsx';
import type { DrillServices, DrillSubject } from './drill-services.ts';

export interface DrillAppProps {
  readonly services: DrillServices;
  /** A drill that was begun by the command; else the person chooses. */
  readonly begun: DrillInHand | null;
  readonly onLeave: () => void;
}

type Place =
  | { readonly name: 'subject' }
  | { readonly name: 'level'; readonly subject: DrillSubject }
  | { readonly name: 'bench'; readonly hand: DrillInHand }
  | { readonly name: 'debrief'; readonly hand: DrillInHand }
  | { readonly name: 'problem'; readonly problem: Problem };

/** The screens of a drill, from the choice to the debrief. */
export function DrillApp({ services, begun, onLeave }: DrillAppProps) {
  const [place, setPlace] = useState<Place>(() => beginning(begun));
  const leave = (hand: DrillInHand) => {
    hand.close();
    onLeave();
  };
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
          empty="There is no circuit to drill on."
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
            const hand = services.begin(place.subject.name, level.name);
            setPlace(
              'problem' in hand ? { name: 'problem', problem: hand } : { name: 'bench', hand },
            );
          }}
          onClose={() => setPlace({ name: 'subject' })}
        />
      );
    case 'bench':
      return (
        <DrillBench
          hand={place.hand}
          clock={services.clock}
          onEnded={() => setPlace({ name: 'debrief', hand: place.hand })}
          onLeave={() => leave(place.hand)}
        />
      );
    case 'debrief':
      return (
        <ReadingPage
          title="After the drill"
          paragraphs={debriefParagraphs(place.hand)}
          onClose={() => leave(place.hand)}
        />
      );
    case 'problem':
      return (
        <ReadingPage
          title="This did not work"
          paragraphs={[{ text: place.problem.problem, bold: true }, '', place.problem.fix]}
          onClose={onLeave}
        />
      );
  }
}

/** A drill that was cut off before its reveal begins with its end. */
function beginning(begun: DrillInHand | null): Place {
  if (!begun) return { name: 'subject' };
  const ended = begun.drill().status === 'revealed';
  return ended ? { name: 'debrief', hand: begun } : { name: 'bench', hand: begun };
}

function debriefParagraphs(hand: DrillInHand) {
  const debrief = hand.debrief();
  if (!debrief) return ['There is nothing to say yet.'];
  return [
    ...debriefLines(debrief).map((text, index) => ({ text, bold: index === 0, hang: 4 })),
    '',
    `Saved: ${hand.path()}`,
  ];
}
