/** Which capture file? Captures and folders to choose from; typing narrows them down, and a whole path may be typed. */
import { Box } from 'ink';
import { useState } from 'react';
import type { CaptureFolder } from '../../files/list-captures.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { matching, PICK_LIST, pickListAfter } from '../parts/pick-list-state.ts';
import { Words } from '../parts/safe-words.tsx';
import { TextField } from '../parts/text-field.tsx';
import { WindowList } from '../parts/window-list.tsx';
import { wrapWords } from '../parts/wrap-words.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { captureItems, captureRow, endOfPath, nameTaken } from './capture-picker-state.ts';

export interface CapturePickerProps {
  readonly title: string;
  readonly folder: CaptureFolder;
  readonly message: string | null;
  /** What Enter makes of a text that is no name here, where it is more than a path; null where it is not. */
  readonly typed?: (text: string) => string | null;
  /** A name of this folder, or what was typed. */
  readonly onName: (name: string) => void;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'select, open it' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'choose' },
  { keys: [], show: 'letters', help: 'search, or type a path' },
  { keys: ['escape'], show: 'Esc', help: 'back' },
];
const AS_PATH = 'No such name here. Enter uses it as a path, Esc clears the search.';
const FOLDER = 'Folder: ';
const SEARCH = 'Search: ';
/** Folder, search, and the lines around the list. */
const OTHER_ROWS = 4;
const MESSAGE_ROWS_MOST = 4;
/** The mark before a chosen row. */
const MARK_COLUMNS = 2;

export function CapturePicker(props: CapturePickerProps) {
  const { title, folder, message, onName, onClose } = props;
  const look = useLook();
  const [list, setList] = useState(PICK_LIST);
  const body = bodySize(useSize(), KEYS);
  const items = captureItems(folder);
  const shown = matching(items, list.filter.text);
  const files = items.filter(({ entry }) => entry.kind === 'file').length;
  const told = message ?? tellingOf(folder);
  const lines = told === null ? [] : wrapWords(shownText(told, look), body.columns);
  const notes = lines.slice(0, MESSAGE_ROWS_MOST);
  const rows = Math.max(2, body.rows - OTHER_ROWS - notes.length);
  const mark = look.ascii ? '...' : '…';

  useKeys(
    (event) => {
      const label = keyLabel(event);
      if (label === 'escape') {
        if (list.filter.text === '') onClose();
        else setList(PICK_LIST);
      } else if (label === 'return') {
        const name = nameTaken(items, list);
        if (name !== null) onName(name);
      } else setList(pickListAfter(list, event, { items, rows }));
    },
    { takesText: true },
  );

  return (
    <Frame title={title} aside={countOf(files)} keys={KEYS}>
      <Words>{`${FOLDER}${endOfPath(folder.path, body.columns - FOLDER.length, mark)}`}</Words>
      <Box height={1} flexShrink={0}>
        <Words bold>{SEARCH}</Words>
        <TextField field={list.filter} width={body.columns - SEARCH.length} />
      </Box>
      <Words> </Words>
      {shown.length === 0 ? (
        <Box height={rows} flexShrink={0}>
          <Words>{props.typed?.(list.filter.text) ?? AS_PATH}</Words>
        </Box>
      ) : (
        <WindowList
          lines={shown.map((item) => captureRow(item, body.columns - MARK_COLUMNS, mark))}
          rows={rows}
          top={list.top}
          selected={list.chosen}
        />
      )}
      <Box flexGrow={1} />
      {notes.length === 0 ? null : <Words bold>{notes.join('\n')}</Words>}
    </Frame>
  );
}

function countOf(files: number): string {
  return files === 1 ? '1 capture' : `${files} captures`;
}

/** What has to be said of the folder itself. */
function tellingOf({ problem, entries, leftOut }: CaptureFolder): string | null {
  if (problem) return `! ${problem.problem}; ${problem.fix}`;
  if (leftOut > 0)
    return `There are too many files here: ${leftOut} are not listed. Type the path.`;
  return entries.some(({ kind }) => kind === 'file')
    ? null
    : 'There are no captures here. Captures end in .csv, .tsv, .txt or .wav; type the name of any other file.';
}
