/** What the drill's screens are given, from the desk. */

import { createElement } from 'react';
import { levelNamed } from '../../drill/levels.ts';
import { isProblem } from '../../source/problem.ts';
import type { MenuExtra, OpenedSession } from '../../ui/app-services.ts';
import { DrillApp } from '../../ui/drill/drill-app.tsx';
import type { DrillServices } from '../../ui/drill/drill-services.ts';
import { type Desk, startable } from '../session/open-desk.ts';
import { anySeed, beginDrill } from './open-drill.ts';
import { PRACTICE } from './practice-words.ts';

/** `onOpened` is told of each drill that is opened from the screens. */
export function drillServices(
  desk: Desk,
  onOpened: (opened: OpenedSession) => void,
): DrillServices {
  const { circuits } = desk.library;
  return {
    subjects: () => [
      ...startable(desk).flatMap(({ draft }) =>
        circuits.has(draft.circuit ?? '')
          ? [{ name: draft.procedure, title: draft.title, about: draft.about ?? '' }]
          : [],
      ),
      ...[...circuits.values()].map(({ name, title, notes }) => ({
        name,
        title: `Circuit alone: ${title}`,
        about: notes,
      })),
    ],
    begin: (subject, level) => {
      const hand = beginDrill(desk, {
        subject,
        level: levelNamed(level),
        seed: anySeed(),
        student: desk.settings().person,
        assignment: null,
      });
      if (!isProblem(hand)) onOpened(hand);
      return hand;
    },
    clock: () => performance.now(),
  };
}

/** The line of the start menu. `onOpened` is told of each drill. */
export function drillMenuExtra(desk: Desk, onOpened: (opened: OpenedSession) => void): MenuExtra {
  const services = drillServices(desk, onOpened);
  return {
    ...PRACTICE,
    screen: (leave) => createElement(DrillApp, { services, begun: null, onLeave: leave }),
  };
}
