/** The room inside the frame. */
import { createContext, useContext } from 'react';
import { type Size, useSize } from '../term/use-size.ts';

/** Set by `Frame`. */
export const BodyContext = createContext<Size | null>(null);

/** Columns and rows inside the frame, or of the whole screen where there is none. */
export function useBody(): Size {
  const size = useSize();
  return useContext(BodyContext) ?? size;
}
