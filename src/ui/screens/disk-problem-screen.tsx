/** Saving failed: what is safe, and the ways on. */
import { useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { WindowList } from '../parts/window-list.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { choiceAfter } from './choice-prompt-state.ts';
import { TextQuestion } from './text-question.tsx';
import { useKeyTiming } from './use-key-timing.ts';

export interface DiskProblemScreenProps {
  readonly words: string;
  readonly fix: string;
  readonly path: string;
  readonly clock: () => number;
  /** Another window went on with the session: here it can only be left. */
  readonly isElsewhere: boolean;
  readonly onRetry: () => void;
  readonly onFolder: (folder: string) => void;
  readonly onLeave: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'do the marked one' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'choose' },
];
const LEAVE = 'Leave without this answer';
const WAYS = ['Try again', 'Go on in another folder', LEAVE] as const;

/** The screen. Nothing has changed in the session yet. */
export function DiskProblemScreen(props: DiskProblemScreenProps) {
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  const body = bodySize(useSize(), KEYS);
  const [marked, setMarked] = useState(0);
  const [top, setTop] = useState(0);
  const [asksFolder, setAsksFolder] = useState(false);
  const ways = props.isElsewhere ? [LEAVE] : WAYS;
  const lines = textBlock(
    [
      { text: 'The last answer could not be saved, so it does not count yet.', bold: true },
      '',
      props.words,
      props.fix,
      '',
      { text: `The session file: ${props.path}`, hang: 2 },
    ],
    body.columns,
    look,
  );
  const rows = Math.max(1, body.rows - ways.length - 1);

  useKeys(
    (event) => {
      const { isSeen } = timing(event);
      const label = keyLabel(event);
      const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
      if (to !== null) return setTop(to);
      const next = choiceAfter(marked, event, { count: ways.length, offered: null });
      // A key typed ahead was meant for the step.
      if (next.taken && !isSeen) return;
      setMarked(next.marked);
      if (!next.taken) return;
      switch (ways[next.marked]) {
        case 'Try again':
          return props.onRetry();
        case 'Go on in another folder':
          return setAsksFolder(true);
        case LEAVE:
        case undefined:
          return props.onLeave();
      }
    },
    { active: !asksFolder },
  );

  if (asksFolder)
    return <FolderQuestion onFolder={props.onFolder} onDone={() => setAsksFolder(false)} />;
  return (
    <Frame title={props.isElsewhere ? 'Open in another window' : 'Not saved'} keys={KEYS}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Words> </Words>
      <WindowList
        lines={ways.map((way, place) => `${place + 1}  ${way}`)}
        rows={ways.length}
        top={0}
        selected={marked}
      />
    </Frame>
  );
}

interface FolderQuestionProps {
  readonly onFolder: (folder: string) => void;
  readonly onDone: () => void;
}

function FolderQuestion({ onFolder, onDone }: FolderQuestionProps) {
  return (
    <TextQuestion
      title="Another folder"
      question="Folder to continue the session in:"
      about="A new part of the session starts there; both parts are read as one. A USB stick will do."
      message={null}
      onAnswer={(folder) => {
        onDone();
        onFolder(folder);
      }}
      onClose={onDone}
    />
  );
}
