/** `deliberate-state.ts` for a screen: the clock starts when the screen is first drawn. */
import { useLayoutEffect, useRef } from 'react';
import { type Deliberate, deliberateAfter } from './deliberate-state.ts';

/** Call the returned function once for every key; true when the key counts. */
export function useDeliberate(clock: () => number): () => boolean {
  const state = useRef<Deliberate>({ lastMs: Number.POSITIVE_INFINITY });
  const start = useRef(clock);
  useLayoutEffect(() => {
    state.current = { lastMs: start.current() };
  }, []);
  return () => {
    const next = deliberateAfter(state.current, clock());
    state.current = next.state;
    return next.counts;
  };
}
