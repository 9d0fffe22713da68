/** `deliberate-state.ts` for a screen: the clock starts when the screen is first drawn. */
import { useLayoutEffect, useRef } from 'react';
import { type Deliberate, deliberateAfter, type KeyTiming } from './deliberate-state.ts';

/** Call the returned function once for every key. */
export function useKeyTiming(clock: () => number): () => KeyTiming {
  const never = Number.POSITIVE_INFINITY;
  const state = useRef<Deliberate>({ shownMs: never, lastMs: never });
  const start = useRef(clock);
  useLayoutEffect(() => {
    const now = start.current();
    state.current = { shownMs: now, lastMs: now };
  }, []);
  return () => {
    const next = deliberateAfter(state.current, clock());
    state.current = next.state;
    return next.timing;
  };
}
