/** How much room there is, for React. */
import { useStdout } from 'ink';
import { createContext, useContext } from 'react';

/** The terminal's size in cells. */
export interface Size {
  readonly columns: number;
  readonly rows: number;
}

/** The smallest window a screen is drawn in. */
export const SIZE_MIN: Size = { columns: 60, rows: 16 };

/** Set by `mountScreen`. */
export const SizeContext = createContext<Size | null>(null);

/** Columns and rows to draw in: the terminal's, less the last row; follows a resize, never below 60 x 15. */
export function useSize(): Size {
  const size = useContext(SizeContext);
  const { stdout } = useStdout();
  return size ?? { columns: stdout.columns || 80, rows: (stdout.rows || 24) - 1 };
}
