/** `deliberate-state.ts` for a screen: the clock starts when the screen is first drawn. */
import { useContext, useLayoutEffect, useRef } from 'react';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { KeyboardContext } from '../term/use-keys.ts';
import { type Deliberate, deliberateAfter, type KeyTiming } from './deliberate-state.ts';

/** Call the returned function once for every key. */
export function useKeyTiming(clock: () => number): (event: KeyEvent) => KeyTiming {
  const keyboard = useContext(KeyboardContext);
  const never = Number.POSITIVE_INFINITY;
  const state = useRef<Deliberate>({ shownMs: never, lastMs: never, last: null, isFirst: true });
  const start = useRef(clock);
  useLayoutEffect(() => {
    const now = start.current();
    const before = keyboard?.last ?? null;
    const last = before === null ? null : keyLabel(before);
    state.current = { shownMs: now, lastMs: now, last, isFirst: true };
  }, [keyboard]);
  return (event) => {
    const next = deliberateAfter(state.current, clock(), keyLabel(event));
    state.current = next.state;
    return next.timing;
  };
}
