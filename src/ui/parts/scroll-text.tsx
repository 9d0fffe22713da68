/** Lines to read; where they are more than the room, the last row says so and how to go on. */
import { Box } from 'ink';
import { useBody } from './body-size.ts';
import { Words } from './safe-words.tsx';
import type { TextLine } from './text-block.ts';
import { scrolled, windowRows } from './window-state.ts';

export interface ScrollTextProps {
  readonly lines: readonly TextLine[];
  readonly rows: number;
  readonly top: number;
}

/** A window onto the lines. */
export function ScrollText({ lines, rows, top }: ScrollTextProps) {
  const { columns } = useBody();
  const room = windowRows(lines.length, rows);
  const first = Math.max(0, Math.min(top, lines.length - room));
  const inView = lines
    .slice(first, first + room)
    .map((line, offset) => ({ ...line, place: first + offset }));
  return (
    <Box
      flexDirection="column"
      height={Math.min(rows, Math.max(1, lines.length))}
      flexShrink={0}
      overflowY="hidden"
    >
      {inView.map(({ place, text, bold, colour }) => (
        <Words key={place} bold={bold} colour={colour} width={columns} wrap="cut">
          {text === '' ? ' ' : text}
        </Words>
      ))}
      {lines.length > room ? (
        <Words bold width={columns} wrap="cut">
          {moreWords(first, room, lines.length)}
        </Words>
      ) : null}
    </Box>
  );
}

function moreWords(first: number, room: number, count: number): string {
  const last = first + room;
  if (first === 0) return `-- more below: PgDn (${last} of ${count} lines) --`;
  if (last >= count) return `-- end of ${count} lines; PgUp for the beginning --`;
  return `-- more: PgUp or PgDn (lines ${first + 1} to ${last} of ${count}) --`;
}

const SCROLL_KEYS = ['page-up', 'page-down', 'up', 'down', 'home', 'end'] as const;
const PAGE_KEYS = ['page-up', 'page-down'] as const;

/** Where a key moves the window; null for a key that does not scroll. `pages` leaves the arrows to others. */
export function scrollBy(
  label: string,
  options: { count: number; rows: number; top: number; pages?: boolean },
): number | null {
  const by = (options.pages ? PAGE_KEYS : SCROLL_KEYS).find((key) => key === label);
  if (!by) return null;
  const top = Math.max(
    0,
    Math.min(options.top, options.count - windowRows(options.count, options.rows)),
  );
  return scrolled({ ...options, top, by });
}
