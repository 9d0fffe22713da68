/** What takes seconds the first time, such as the weight of a conclusion: the screen is drawn before it is computed. */
import { useEffect, useRef, useState } from 'react';
import type { Session } from '../../session/session.ts';

/** What `compute` gives for this session and this question; null where nothing is asked. */
export function useLater<T>(
  session: Session,
  question: string | null,
  compute: () => T,
): T | 'pending' | null {
  const [done, setDone] = useState<{ of: Session; question: string; value: T } | null>(null);
  const latest = useRef(compute);
  latest.current = compute;
  useEffect(() => {
    if (question === null) return;
    const soon = setImmediate(() => setDone({ of: session, question, value: latest.current() }));
    return () => clearImmediate(soon);
  }, [session, question]);
  if (question === null) return null;
  return done?.of === session && done.question === question ? done.value : 'pending';
}
