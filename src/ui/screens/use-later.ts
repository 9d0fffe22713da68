/** What takes seconds the first time, such as the weight of a conclusion: the screen is drawn before it is computed. */
import { useEffect, useRef, useState } from 'react';
import type { Session } from '../../session/session.ts';
import type { Slices } from '../../suspects/slices.ts';
import { takeTurns } from './take-turns.ts';
import { useIsThinking } from './use-thinking.ts';

/**
 * What `compute` gives for this session and this question, once its readings are weighed; null where nothing is asked.
 * What takes long in it is done in slices by `prepare`.
 */
export function useLater<T>(
  session: Session,
  question: string | null,
  compute: () => T,
  prepare: () => Slices<void> | null = () => null,
): T | 'pending' | null {
  const [done, setDone] = useState<{ of: Session; question: string; value: T } | null>(null);
  const isThinking = useIsThinking();
  const latest = useRef({ compute, prepare });
  latest.current = { compute, prepare };
  useEffect(() => {
    if (question === null || isThinking) return;
    return takeTurns(latest.current.prepare() ?? nothing(), () =>
      setDone({ of: session, question, value: latest.current.compute() }),
    );
  }, [session, question, isThinking]);
  if (question === null) return null;
  return done?.of === session && done.question === question ? done.value : 'pending';
}

function* nothing(): Slices<void> {}
