/** Keys as a terminal sends them. */
export const ENTER = '\r';
export const TAB = '\t';
export const ESC = '\x1b';
export const UP = '\x1b[A';
export const DOWN = '\x1b[B';
export const PAGE_DOWN = '\x1b[6~';
export const CLEAR = '\x15';
export const CTRL_C = '\x03';
export const CTRL_S = '\x13';
export const F = {
  help: '\x1bOP',
  back: '\x1bOQ',
  cannot: '\x1bOR',
  note: '\x1bOS',
  suspects: '\x1b[15~',
  nextTests: '\x1b[17~',
  anyTest: '\x1b[2~',
  way: '\x1b[18~',
  sketch: '\x1b[19~',
  instruments: '\x1b[20~',
  pause: '\x1b[21~',
  sums: '\x1b[23~',
  capture: '\x1b[24~',
} as const;
