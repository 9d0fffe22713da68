/** A session, the tests after its repair, or a drill on the screen: the page that the state names is drawn, keys go to the reducer. */
import { useRef, useState } from 'react';
import type { OpenedSession } from '../app-services.ts';
import { adviceOf } from './pages-state.ts';
import { beginPages, type PageEvent, runPages } from './session-pages.ts';
import { viewOf } from './session-view.ts';
import { drawView } from './session-views.tsx';
import { ThinkingProvider, useThinking } from './use-thinking.ts';

export interface SessionScreenProps {
  readonly opened: OpenedSession;
  readonly clock: () => number;
  /** Begin with the tests after the repair. */
  readonly retest?: boolean;
  /** The session is at rest, or could not be saved: leave it. */
  readonly onHome: () => void;
}

export function SessionScreen({ opened, clock, retest = false, onHome }: SessionScreenProps) {
  const [state, setState] = useState(() => beginPages(opened, retest));
  // What is asked for later, such as a capture that was measured, meets the state of that moment.
  const latest = useRef(state);
  const send = (event: PageEvent) => {
    latest.current = runPages({ opened, state: latest.current }, event, onHome);
    setState(latest.current);
  };
  const here = { opened, state };
  const isThinking = useThinking(adviceOf(opened), state.session);
  return (
    <ThinkingProvider value={isThinking}>
      {drawView(viewOf(here), { here, isThinking, clock, send })}
    </ThinkingProvider>
  );
}
