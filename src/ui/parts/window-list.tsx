/** A window onto a list longer than the room, with the position written out: Ink has no scrolling. */
import { Box } from 'ink';
import { shownText, useLook } from '../term/use-look.ts';
import { useBody } from './body-size.ts';
import { Words } from './safe-words.tsx';
import { padWords } from './wrap-words.ts';

export interface WindowListProps {
  /** One row each; longer ones are cut. */
  readonly lines: readonly string[];
  /** Rows for list and position line together. */
  readonly rows: number;
  /** The first line shown; use `windowTop` or `scrolled` to find it. */
  readonly top: number;
  /** The chosen line, marked by `>` and inverse; none for a text to read. */
  readonly selected?: number;
  readonly columns?: number;
}

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

/** The lines in view and, when there are more, `12/40`: the chosen one, or the last one in view. */
export function WindowList({ lines, rows, top, selected, columns }: WindowListProps) {
  const look = useLook();
  const body = useBody();
  const width = columns ?? body.columns;
  const shown = windowRows(lines.length, rows);
  const mark = look.ascii ? '...' : '…';
  const chooses = selected !== undefined;
  const inView = lines
    .slice(top, top + shown)
    .map((line, offset) => ({ place: top + offset, line }));
  const position = `${chooses ? selected + 1 : Math.min(lines.length, top + shown)}/${lines.length}`;
  return (
    <Box flexDirection="column" width={width} height={rows} flexShrink={0} overflow="hidden">
      {inView.map(({ place, line }) => {
        const chosen = place === selected;
        const text = `${chooses ? (chosen ? '> ' : '  ') : ''}${shownText(line, look)}`;
        return (
          <Words key={place} inverse={chosen} width={width}>
            {padWords(text, width, mark)}
          </Words>
        );
      })}
      {lines.length > shown ? (
        <Box width={width} justifyContent="flex-end" flexShrink={0}>
          <Words>{position}</Words>
        </Box>
      ) : null}
    </Box>
  );
}
