/** A reading is weighed between the keys: what is typed meanwhile is on the screen at once. */
import { createContext, useContext, useEffect, useState } from 'react';
import type { Advisor } from '../../session/advisor.ts';
import type { Session } from '../../session/session.ts';
import { takeTurns } from './take-turns.ts';

/** Whether the present state is still being weighed. */
const Thinking = createContext(false);
export const ThinkingProvider = Thinking.Provider;

/** Whether what is known in the state on the screen is still being weighed. */
export function useIsThinking(): boolean {
  return useContext(Thinking);
}

/**
 * Weighs what is known in a state, and says whether that still goes on. Where it came to nothing it is over too: whoever
 * asks for what was to be weighed then meets the reason.
 */
export function useThinking(advisor: Advisor | null, session: Session): boolean {
  const [done, setDone] = useState<Session | null>(null);
  const isOpen = advisor !== null && session.status === 'open';
  const isThinking = isOpen && done !== session && !advisor.isReady(session);
  useEffect(() => {
    if (!advisor || !isThinking) return;
    return takeTurns(advisor.prepare(session), () => setDone(session));
  }, [advisor, session, isThinking]);
  return isThinking;
}
