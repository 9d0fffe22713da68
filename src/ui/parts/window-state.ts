/** Where a window stands over a list longer than the room: the rules, without React. */

/** Rows for lines: one less where the position needs a row of its own. */
export function windowRows(count: number, rows: number): number {
  return count <= rows ? rows : Math.max(1, rows - 1);
}

/** The first line to show so that `keep` is visible, moving as little as possible from `top`. */
export function windowTop(options: {
  count: number;
  rows: number;
  top: number;
  keep: number;
}): number {
  const shown = windowRows(options.count, options.rows);
  const near = Math.min(Math.max(options.top, options.keep - shown + 1), options.keep);
  return Math.max(0, Math.min(near, options.count - shown));
}

/** `top` moved by whole windows, one line of overlap, or by lines. */
export function scrolled(options: {
  count: number;
  rows: number;
  top: number;
  by: 'page-up' | 'page-down' | 'up' | 'down' | 'home' | 'end';
}): number {
  const shown = windowRows(options.count, options.rows);
  const last = Math.max(0, options.count - shown);
  const page = Math.max(1, shown - 1);
  const moves = {
    'page-up': options.top - page,
    'page-down': options.top + page,
    up: options.top - 1,
    down: options.top + 1,
    home: 0,
    end: last,
  };
  return Math.max(0, Math.min(moves[options.by], last));
}
