/** A window onto a list longer than the room, with the position written out: Ink has no scrolling. */
import { Box } from 'ink';
import type { DrawingStyle } from '../term/colour.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useBody } from './body-size.ts';
import { Words } from './safe-words.tsx';
import { windowRows } from './window-state.ts';
import { columnsOf, padWords } from './wrap-words.ts';

export interface WindowListProps {
  /** One row each; longer ones are cut. Asked only for those in view. */
  readonly lines: Pick<readonly string[], 'length' | 'slice'>;
  /** Rows for list and position line together. */
  readonly rows: number;
  /** The first line shown; use `windowTop` or `scrolled` to find it. */
  readonly top: number;
  /** The chosen line, marked by `>` and inverse; none for a text to read. */
  readonly selected?: number;
  readonly columns?: number;
}

/** The sign before each line to choose from. */
const MARK_COLUMNS = 2;

/** Whether the list cuts this line at `width`: then the chosen one has to stand in full somewhere else. */
export function isCut(
  line: string,
  width: number,
  look: Pick<DrawingStyle, 'ascii' | 'colour'>,
): boolean {
  return columnsOf(shownText(line, look)) > width - MARK_COLUMNS;
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
    <Box flexDirection="column" width={width} height={rows} flexShrink={0} overflowY="hidden">
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
