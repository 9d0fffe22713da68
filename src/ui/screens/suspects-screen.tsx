/** What may be wrong, as bars with words and numbers. */
import { Box } from 'ink';
import { useState } from 'react';
import type { SuspectRow, SuspectView } from '../../session/advisor.ts';
import { bar, percentWords } from '../parts/bar.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { PICK_LIST, pickListAfter } from '../parts/pick-list-state.ts';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText } from '../parts/scroll-text.tsx';
import { type Paragraph, type TextLine, textBlock } from '../parts/text-block.ts';
import { WindowList } from '../parts/window-list.tsx';
import { windowTop } from '../parts/window-state.ts';
import { columnsOf, cutMiddle, cutWords } from '../parts/wrap-words.ts';
import type { DrawingStyle } from '../term/colour.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { type CarTold, MISFIT_WORDS } from './car-words.ts';
import { FLEETING_WORDS } from './conclusion-words.ts';
import { unstopped } from './evidence-words.ts';
import { keysOfAction } from './session-keys.ts';

export interface SuspectsScreenProps {
  readonly view: SuspectView;
  readonly car: CarTold;
  /** The job sheet tells what moved chances before any reading. */
  readonly isTold: boolean;
  readonly onClose: () => void;
  /** Names this one as one's own conclusion. */
  readonly onConclude: (row: SuspectRow) => void;
  /** Values of this car are to be set; absent on a drill. */
  readonly onValues?: () => void;
  /** Location of a short is to be measured; absent on a drill. */
  readonly onShorts?: () => void;
  /** What is wrong is not in the list. */
  readonly onOwnWords: () => void;
}

const CLOSE: KeyBinding = {
  keys: ['return', 'escape', ...keysOfAction('suspects')],
  show: 'Enter',
  help: 'close',
};
const KEYS: readonly KeyBinding[] = [
  CLOSE,
  { keys: ['up', 'down'], show: 'Up/Down', help: 'look closer' },
  { keys: ['c'], show: 'c', help: 'conclude with this one' },
  { keys: ['w'], show: 'w', help: 'in my own words' },
];
const SET: KeyBinding = { keys: ['v'], show: 'v', help: 'set a value of this car' };
const PLACE: KeyBinding = { keys: ['p'], show: 'p', help: 'locate a short' };

const DETAIL_ROWS = 5;
/** On a small screen no less than this is left to the list and to what is behind the marked suspect. */
const LEAST_ROWS = 2;
/** The list keeps so many rows before the readings that told of the car are named. */
const LIST_ROWS = 5;
const BAR_LONG = 20;
const BAR_SHORT = 10;
/** The sign of the chosen line. */
const MARK_COLUMNS = 2;

export function SuspectsScreen(props: SuspectsScreenProps) {
  const { view, car, onClose, onConclude, onOwnWords, onValues, onShorts } = props;
  const look = useLook();
  const keys = [...KEYS, ...(onValues ? [SET] : []), ...(onShorts ? [PLACE] : [])];
  const body = bodySize(useSize(), keys);
  const [list, setList] = useState(PICK_LIST);
  const whole = textBlock(headOf(view, car, car.withSources, props.isTold), body.columns, look);
  const isRoomy = body.rows - whole.length - DETAIL_ROWS - 1 >= LIST_ROWS;
  const short = () => headOf(view, car, car.short, props.isTold);
  const room = Math.max(1, body.rows - 2 * LEAST_ROWS - 1);
  const above = isRoomy ? whole : squeezed(short(), room, body.columns, look);
  const below = body.rows - above.length - 1;
  const detailRows = Math.min(DETAIL_ROWS, Math.max(LEAST_ROWS, below - LEAST_ROWS));
  const rows = Math.max(LEAST_ROWS, below - detailRows);
  const listed = listedRows(view, car);
  const widest = Math.max(...listed.map(({ words }) => columnsOf(words)), 0);
  const barColumns = widest + BAR_LONG + 9 <= body.columns ? BAR_LONG : BAR_SHORT;
  const mark = look.ascii ? '...' : '…';
  const items = listed.map(({ chance, words }) => {
    const head = `${percentWords(chance).padStart(5)} ${bar(chance, barColumns, look.ascii)} `;
    const room = body.columns - MARK_COLUMNS - columnsOf(head);
    return { text: `${head}${cutMiddle(unstopped(words), room, mark)}` };
  });
  const marked = listed[list.chosen];
  const row = marked?.row;

  useKeys((event) => {
    const label = keyLabel(event);
    if (CLOSE.keys.includes(label)) return onClose();
    if (label === 'c' && row) return onConclude(row);
    if (label === 'w') return onOwnWords();
    if (label === 'v' && onValues) return onValues();
    if (label === 'p' && onShorts) return onShorts();
    setList(pickListAfter(list, event, { items, rows, typing: false }));
  });

  return (
    <Frame title="Suspects" aside="after all readings so far" keys={keys}>
      <ScrollText lines={above} rows={above.length} top={0} />
      <WindowList
        lines={items.map(({ text }) => text)}
        rows={rows}
        top={windowTop({ count: items.length, rows, top: list.top, keep: list.chosen })}
        selected={list.chosen}
      />
      <Words> </Words>
      <Box height={detailRows} flexDirection="column" overflowY="hidden" flexShrink={0}>
        <Words hang={2}>{marked?.row === null ? (car.misfit?.words ?? '') : detailOf(row)}</Words>
      </Box>
    </Frame>
  );
}

/** The paragraphs in so many rows: where they are too many, each gives up its end. The last one is an empty line. */
function squeezed(
  paragraphs: readonly Paragraph[],
  rows: number,
  columns: number,
  look: DrawingStyle,
): TextLine[] {
  const blocks = paragraphs.map((paragraph) => textBlock([paragraph], columns, look));
  const all = blocks.flat();
  if (all.length <= rows) return all;
  const each = Math.max(1, Math.floor((rows - 1) / (blocks.length - 1)));
  const cut = blocks.flatMap((block) => {
    const [last, next] = block.slice(each - 1);
    if (!last || !next) return block;
    const text = cutWords(`${last.text} ${next.text.trim()}`, columns, look.ascii ? '...' : '…');
    return [...block.slice(0, each - 1), { ...last, text }];
  });
  return cut.slice(0, rows);
}

interface ListedSuspect extends Pick<SuspectRow, 'chance' | 'words'> {
  readonly row: SuspectRow | null;
}

/** The suspects with the misfit in its place by chance, which has no row to conclude with. */
function listedRows({ rows }: SuspectView, { misfit }: CarTold): ListedSuspect[] {
  const suspects: ListedSuspect[] = rows.map((row) => ({
    chance: row.chance,
    words: row.words,
    row,
  }));
  if (!misfit) return suspects;
  const at = rows.filter(({ chance }) => chance >= misfit.chance).length;
  return suspects.toSpliced(at, 0, { chance: misfit.chance, words: MISFIT_WORDS, row: null });
}

function headOf(
  { changed, unexplained, group, intermittent }: SuspectView,
  { misfit }: CarTold,
  known: string | null,
  isTold: boolean,
): Paragraph[] {
  return [
    ...(unexplained === null
      ? []
      : [
          {
            text: `! Nothing in the list explains the readings. ${unexplained}`,
            bold: true,
            hang: 2,
          },
        ]),
    {
      text:
        changed === null
          ? `No readings yet: these are the usual odds${isTold ? ', adjusted by the job sheet' : ''}.`
          : `Last reading: ${changed}`,
      hang: 2,
    },
    ...(misfit?.isLoud ? [{ text: `! ${misfit.words}`, bold: true, hang: 2 }] : []),
    ...(known === null ? [] : [{ text: known, hang: 2 }]),
    ...(group ? [{ text: group, hang: 2 }] : []),
    ...(intermittent ? [{ text: FLEETING_WORDS, hang: 2 }] : []),
    { text: '' },
  ];
}

/** What is behind the marked suspect. */
function detailOf(row: SuspectRow | null | undefined): string {
  if (!row) return 'There are no suspects.';
  const faults = row.faults
    .slice(0, 4)
    .map(({ words, chance }) => `${words} (${percentWords(chance)})`);
  const rest = row.faults.length - faults.length;
  return `${unstopped(row.words)} - because: ${faults.join('; ')}${rest > 0 ? `; and ${rest} more` : ''}.`;
}
