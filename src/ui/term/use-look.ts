/** How things are drawn, for React, and the one way text becomes what is shown. */
import { createContext, useContext } from 'react';
import { safeText } from '../../source/safe-text.ts';
import { asciiText } from './ascii-text.ts';
import type { DrawingStyle } from './colour.ts';

/** Set by `mountScreen`. */
export const LookContext = createContext<DrawingStyle>({ colour: false, ascii: false });

/** Colour and line drawing, as decided for this terminal. */
export function useLook(): DrawingStyle {
  return useContext(LookContext);
}

/** `text` as it is drawn: safe, and in ASCII where only that is sure. Measure and wrap this, not the original. */
export function shownText(
  text: string,
  look: DrawingStyle,
  options: { lines?: boolean } = {},
): string {
  const safe = safeText(text, options);
  return look.ascii ? asciiText(safe) : safe;
}
