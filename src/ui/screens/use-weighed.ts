/** The weight of a conclusion, which takes seconds the first time: the screen is drawn before it is computed. */
import { useEffect, useState } from 'react';
import type { Session } from '../../session/session.ts';
import type { Thinker } from '../../session/thinker.ts';
import type { Weighed } from './conclusion-words.ts';

/** Evidence for these faults (ids with blanks between); null without a circuit or when nothing is asked. */
export function useWeighed(
  thinker: Thinker | null,
  session: Session,
  faults: string | null,
): Weighed | 'pending' | null {
  const [done, setDone] = useState<{ of: Session; faults: string; weighed: Weighed } | null>(null);
  useEffect(() => {
    if (thinker === null || faults === null) return;
    const soon = setImmediate(() => {
      const ids = faults.split(' ').filter(Boolean);
      setDone({ of: session, faults, weighed: thinker.weigh(session, ids) });
    });
    return () => clearImmediate(soon);
  }, [thinker, session, faults]);
  if (thinker === null || faults === null) return null;
  return done?.of === session && done.faults === faults ? done.weighed : 'pending';
}
