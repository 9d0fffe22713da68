/** The path so far: every standing answer, one of which may be gone back to. */
import { Box } from 'ink';
import { useState } from 'react';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { PICK_LIST, pickListAfter } from '../parts/pick-list-state.ts';
import { Words } from '../parts/safe-words.tsx';
import { isCut, WindowList } from '../parts/window-list.tsx';
import { windowTop } from '../parts/window-state.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { answerWords, stepTitle } from './answer-words.ts';
import { keysOfAction } from './session-keys.ts';

export interface WayScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly onClose: () => void;
  /** Takes the answer at this trail position back. */
  readonly onGoBack: (to: number) => void;
}

const CLOSE: KeyBinding = { keys: ['escape', ...keysOfAction('way')], show: 'Esc', help: 'close' };
const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'go back to this one' },
  CLOSE,
];

/** Rows for the marked answer in full, where the list cuts any. */
const FULL_ROWS = 3;

/** The screen; the last answer is marked first. */
export function WayScreen({ opened, session, onClose, onGoBack }: WayScreenProps) {
  const body = bodySize(useSize(), KEYS);
  const items = session.trail.map((visit, place) => ({
    text: lineOf(opened, session, visit, place),
  }));
  const answered = items.length - 1;
  const look = useLook();
  const cuts = items.some(({ text }) => isCut(text, body.columns, look));
  const rows = Math.max(2, body.rows - 3 - (cuts ? FULL_ROWS : 0));
  const [list, setList] = useState({ ...PICK_LIST, chosen: Math.max(0, answered - 1) });
  const full = items[list.chosen]?.text ?? '';

  useKeys((event) => {
    const label = keyLabel(event);
    if (CLOSE.keys.includes(label)) return onClose();
    if (label === 'return') return list.chosen < answered ? onGoBack(list.chosen) : onClose();
    setList(pickListAfter(list, event, { items, rows, typing: false }));
  });

  return (
    <Frame title="The path so far" aside={`${answered} answered`} keys={KEYS}>
      <WindowList
        lines={items.map(({ text }) => text)}
        rows={rows}
        top={windowTop({ count: items.length, rows, top: list.top, keep: list.chosen })}
        selected={list.chosen}
      />
      <Words> </Words>
      {cuts ? (
        <Box height={FULL_ROWS} flexDirection="column" overflowY="hidden" flexShrink={0}>
          <Words hang={4}>{isCut(full, body.columns, look) ? full : ' '}</Words>
        </Box>
      ) : null}
      <Words>
        {list.chosen < answered
          ? 'Going back takes this answer back. Later answers are kept and count again if the path comes past them.'
          : 'This is the step you are at now.'}
      </Words>
    </Frame>
  );
}

function lineOf(
  opened: OpenedSession,
  session: Session,
  visit: Session['trail'][number],
  place: number,
): string {
  const title = stepTitle(opened, session, visit.step);
  const kept = visit.answer === null ? undefined : session.answers[visit.answer];
  const found = kept ? opened.bind(answerWords(kept.event, session)) : 'asked now';
  return `${String(place + 1).padStart(2)}  ${title} - ${found}`;
}
