/** Keys for React: the latest handler gets every key, in order, one a render. */
import { createContext, useContext, useLayoutEffect, useRef } from 'react';
import type { KeyEvent } from './key-decoder.ts';
import type { Keyboard } from './keyboard.ts';

/** The keyboard of the mounted screen; null where there is none (a still picture). */
export const KeyboardContext = createContext<Keyboard | null>(null);

/**
 * Calls `handler` with each key while the component is mounted. The handler of the newest render is the one
 * called, and a key comes only after the one before it has been rendered, so reading state in it is safe.
 * With `active: false` keys pass by unheard (below a dialog). Every active handler gets every key. `takesText` while
 * what is typed goes into a field: it does so also where nothing can be seen.
 */
export function useKeys(
  handler: (event: KeyEvent) => void,
  options: { readonly active?: boolean; readonly takesText?: boolean } = {},
): void {
  const keyboard = useContext(KeyboardContext);
  const latest = useRef(handler);
  const active = useRef(true);
  const takesText = useRef(false);
  useLayoutEffect(() => {
    latest.current = handler;
    active.current = options.active ?? true;
    takesText.current = options.takesText ?? false;
  });
  useLayoutEffect(
    () =>
      keyboard?.subscribe(
        (event) => {
          if (active.current) latest.current(event);
        },
        () => active.current && takesText.current,
      ),
    [keyboard],
  );
}
