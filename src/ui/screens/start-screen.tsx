/** The first screen: a table of what can be done, the open sessions among it. */
import { Box } from 'ink';
import { useState } from 'react';
import { begunFirst } from '../../records/list-words.ts';
import type { MenuWords, SavedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { isCut, WindowList } from '../parts/window-list.tsx';
import { windowTop } from '../parts/window-state.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { choiceAfter } from './choice-prompt-state.ts';

/** Where the menu leads. */
export type Destination =
  | { readonly kind: 'new' | 'simulated' | 'sessions' | 'settings' }
  | { readonly kind: 'resume'; readonly path: string }
  | { readonly kind: 'extra'; readonly place: number };

/** What was chosen in the menu. */
export type StartChoice = Destination | { readonly kind: 'quit' };

interface MenuLine {
  readonly words: string;
  readonly about: string;
  readonly choice: StartChoice;
}

const OPEN_SHOWN = 3;
/** Where the month begins in "2031-05-06 14:20". */
const MONTH_AT = 5;

/** The menu, top to bottom. */
export function startMenu(
  sessions: readonly SavedSession[],
  count: number,
  more: readonly MenuWords[],
): MenuLine[] {
  const unfinished = sessions.filter(({ status }) => status === 'open' || status === 'paused');
  const open = begunFirst(unfinished);
  return [
    {
      words: 'New session',
      about: 'Choose a procedure, write the job sheet, and begin at the vehicle.',
      choice: { kind: 'new' },
    },
    {
      words: 'Try it on a simulated vehicle',
      about:
        'No vehicle needed: the program works out every reading from the circuit, with a fault you pick.',
      choice: { kind: 'simulated' },
    },
    ...open.slice(0, OPEN_SHOWN).map(({ path, words, when, status, simulated, begun }) => ({
      words: `Go on: ${when.slice(MONTH_AT)} ${simulated ? 'simulated, ' : ''}${words}`,
      about: `${when}, ${status === 'paused' ? 'paused' : 'not finished'}${begun ? '' : ', nothing done yet'}. ${path}`,
      choice: { kind: 'resume' as const, path },
    })),
    {
      words: `All sessions (${count})`,
      about: 'Look for an earlier session and open it.',
      choice: { kind: 'sessions' },
    },
    ...more.map(({ words, about }, place) => ({
      words,
      about,
      choice: { kind: 'extra' as const, place },
    })),
    {
      words: 'Settings',
      about: 'Your name, shop, instruments and meter accuracy.',
      choice: { kind: 'settings' },
    },
    { words: 'Quit', about: 'Everything is saved.', choice: { kind: 'quit' } },
  ];
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'select' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'choose' },
  { keys: ['q'], show: 'q', help: 'quit' },
];

const ABOUT_ROWS = 4;

export interface StartScreenProps {
  /** Newest first; of those not finished the first few have a line of their own. */
  readonly sessions: readonly SavedSession[];
  /** Sessions there are in all. */
  readonly count: number;
  /** Further lines that other rooms fill. */
  readonly more: readonly MenuWords[];
  readonly onChoose: (choice: StartChoice) => void;
}

export function StartScreen({ sessions, count, more, onChoose }: StartScreenProps) {
  const [menu] = useState(() => startMenu(sessions, count, more));
  const [marked, setMarked] = useState(0);
  const body = bodySize(useSize(), KEYS);
  const rows = Math.max(3, Math.min(menu.length, body.rows - ABOUT_ROWS - 3));
  const look = useLook();
  const line = menu[marked];
  const isShort = line === undefined || !isCut(`1  ${line.words}`, body.columns, look);

  useKeys((event) => {
    if (keyLabel(event) === 'q') return onChoose({ kind: 'quit' });
    const next = choiceAfter(marked, event, { count: menu.length, offered: null });
    setMarked(next.marked);
    const chosen = menu[next.marked];
    if (next.taken && chosen) onChoose(chosen.choice);
  });

  return (
    <Frame title="Ohmward" aside="guided diagnosis of position sensors" keys={KEYS}>
      <Words bold>What would you like to do?</Words>
      <Words> </Words>
      <WindowList
        lines={menu.map(({ words }, place) => `${place < 9 ? place + 1 : ' '}  ${words}`)}
        rows={rows}
        top={windowTop({ count: menu.length, rows, top: 0, keep: marked })}
        selected={marked}
      />
      <Words> </Words>
      <Box height={ABOUT_ROWS} flexDirection="column" overflowY="hidden">
        {isShort ? null : <Words>{line.words}</Words>}
        <Words>{line?.about ?? ' '}</Words>
      </Box>
    </Frame>
  );
}
