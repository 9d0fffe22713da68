/** Choosing one of many: typing narrows the list down, the marked one is described below. */
import { Box } from 'ink';
import { useMemo, useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import {
  closestFirst,
  matching,
  PICK_LIST,
  type PickItem,
  pickListAfter,
} from '../parts/pick-list-state.ts';
import { Words } from '../parts/safe-words.tsx';
import { TextField } from '../parts/text-field.tsx';
import { isCut, WindowList } from '../parts/window-list.tsx';
import { cutWords, toldApart, wrapWords } from '../parts/wrap-words.ts';
import type { DrawingStyle } from '../term/colour.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';

/** A line to choose, with more about it. */
export interface PickScreenItem extends PickItem {
  /** A sentence or two for the marked one. */
  readonly about: string;
}

export interface PickScreenProps<I extends PickScreenItem> {
  readonly title: string;
  readonly items: readonly I[];
  /** Shown when there is nothing to choose from at all. */
  readonly empty: string;
  /** The items have an order of their own, such as the newest first, and a search leaves them in it. */
  readonly keepsOrder?: boolean;
  /** With what was typed to find it. */
  readonly onPick: (item: I, search: string) => void;
  /** What else can be done with an item, or with none, each with its key. */
  readonly others?: readonly {
    readonly key: KeyBinding;
    readonly onPick: (item: I | null) => void;
  }[];
  /** What the typed words themselves stand for; it comes first. */
  readonly typed?: (search: string) => I | null;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'select' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'choose' },
  { keys: [], show: 'letters', help: 'search' },
  { keys: ['escape'], show: 'Esc', help: 'back' },
];
/** Least rows for it. */
const ABOUT_ROWS = 4;
/** So many are looked at. */
const MEASURED = 100;
/** A list this long may be narrowed no further by what stands below it. */
const LIST_ROWS = 9;
const SEARCH = 'Search: ';
/** Columns of the sign before the marked line. */
const MARKER = 2;

export function PickScreen<I extends PickScreenItem>(props: PickScreenProps<I>) {
  const { title, onPick, onClose, others = [] } = props;
  const [list, setList] = useState(PICK_LIST);
  const look = useLook();
  const keys = [KEYS[0]!, ...others.map(({ key }) => key), ...KEYS.slice(1)];
  const body = bodySize(useSize(), keys);
  const made = props.typed?.(list.filter.text) ?? null;
  const items = withMade(props.items, made, list.filter.text);
  const longest = useMemo(
    () => longestAbout(props.items, body.columns, look),
    [props.items, body.columns, look],
  );
  const room = body.rows - 3 - Math.min(items.length, LIST_ROWS);
  const aboutRows = Math.max(ABOUT_ROWS, Math.min(longest, room));
  const rows = Math.max(3, body.rows - aboutRows - 3);
  const shown = (props.keepsOrder ? matching : closestFirst)(items, list.filter.text);
  const chosen = shown[list.chosen];
  const about = chosen ? aboutOf(chosen, body.columns, look) : [' '];
  const mark = look.ascii ? '...' : '…';
  // Of a folder with ten thousand sessions only those in view are read.
  const slice = (from?: number, to?: number): string[] => {
    const texts = shown.slice(from, to).map(({ text }) => shownText(text, look));
    return toldApart(texts, body.columns - MARKER, mark);
  };

  useKeys(
    (event) => {
      const label = keyLabel(event);
      const other = others.find(({ key }) => key.keys.includes(label));
      if (label === 'return') {
        if (chosen) onPick(chosen, list.filter.text);
      } else if (other) {
        other.onPick(chosen ?? null);
      } else if (label === 'escape') {
        if (list.filter.text === '') onClose();
        else setList(PICK_LIST);
      } else setList(pickListAfter(list, event, { items, rows }));
    },
    { takesText: true },
  );

  return (
    <Frame title={title} aside={`${shown.length} of ${items.length}`} keys={keys}>
      <Box height={1} flexShrink={0}>
        <Words bold>{SEARCH}</Words>
        <TextField field={list.filter} width={body.columns - SEARCH.length} />
      </Box>
      <Words> </Words>
      {shown.length === 0 ? (
        <Box height={rows} flexShrink={0}>
          <Words>
            {items.length === 0 ? props.empty : 'Nothing matches: Esc clears the search.'}
          </Words>
        </Box>
      ) : (
        <WindowList
          lines={{ length: shown.length, slice }}
          rows={rows}
          top={list.top}
          selected={list.chosen}
        />
      )}
      <Words> </Words>
      <Box height={aboutRows} flexDirection="column" overflowY="hidden" flexShrink={0}>
        <Words>{fitted(about, aboutRows, body.columns, look.ascii)}</Words>
      </Box>
    </Frame>
  );
}

/** What stands below the list for the marked one, as it is shown; its own line too where the list cuts it. */
function aboutOf({ text, about }: PickScreenItem, columns: number, look: DrawingStyle): string[] {
  const shown = isCut(text, columns, look) ? [text, about] : [about || ' '];
  return shown.flatMap((part) => wrapWords(shownText(part, look), columns));
}

/** Rows of the longest, so that the list is of one height for all. */
function longestAbout(
  items: readonly PickScreenItem[],
  columns: number,
  look: DrawingStyle,
): number {
  return Math.max(
    0,
    ...items.slice(0, MEASURED).map((item) => aboutOf(item, columns, look).length),
  );
}

/** What fits of it, with a sign where the rest is missing. */
function fitted(lines: readonly string[], rows: number, columns: number, ascii: boolean): string {
  if (lines.length <= rows) return lines.join('\n');
  const last = lines.slice(rows - 1).join(' ');
  const cut = cutWords(last, columns, ascii ? '...' : '…');
  return [...lines.slice(0, rows - 1), cut].join('\n');
}

/** What the typed words stand for comes first; where the list has the same thing, of which is said the same, it stands there once. */
function withMade<I extends PickScreenItem>(items: readonly I[], made: I | null, typed: string) {
  if (!made) return items;
  return [{ ...made, also: typed }, ...items.filter(({ about }) => !about.startsWith(made.about))];
}
