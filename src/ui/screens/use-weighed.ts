/** The weight of a conclusion, which takes seconds the first time: the screen is drawn before it is computed. */
import { useEffect, useState } from 'react';
import type { Advisor } from '../../session/advisor.ts';
import type { Session } from '../../session/session.ts';
import type { Weighed } from './conclusion-words.ts';

/** Evidence for these faults (ids with blanks between); null without a circuit or when nothing is asked. */
export function useWeighed(
  advisor: Advisor | null,
  session: Session,
  faults: string | null,
): Weighed | 'pending' | null {
  const [done, setDone] = useState<{ of: Session; faults: string; weighed: Weighed } | null>(null);
  useEffect(() => {
    if (advisor === null || faults === null) return;
    const soon = setImmediate(() => {
      const ids = faults.split(' ').filter(Boolean);
      setDone({ of: session, faults, weighed: advisor.weigh(session, ids) });
    });
    return () => clearImmediate(soon);
  }, [advisor, session, faults]);
  if (advisor === null || faults === null) return null;
  return done?.of === session && done.faults === faults ? done.weighed : 'pending';
}
