/** What a number at the prompt can be at all is worked out once the screen is drawn, before it is typed. */
import { useEffect, useRef } from 'react';
import type { Asked } from './prompt-state.ts';
import { useIsThinking } from './use-thinking.ts';

/** For the prompt of a screen that is mounted anew for each asking. */
export function useWarmPrompt(asked: Asked): void {
  const first = useRef(asked);
  const isThinking = useIsThinking();
  useEffect(() => {
    if (isThinking) return;
    const soon = setImmediate(() => {
      if (first.current.kind === 'measure') first.current.context.possible();
    });
    return () => clearImmediate(soon);
  }, [isThinking]);
}
