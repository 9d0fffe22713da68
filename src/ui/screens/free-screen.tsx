/** Free order: the complaint, readings so far, and the tests that would tell most; from here any test is made. */

import { Box } from 'ink';
import { useState } from 'react';
import { countWords } from '../../quantity/count-words.ts';
import type { Proposal } from '../../session/advisor.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText } from '../parts/scroll-text.tsx';
import { type TextLine, textBlock } from '../parts/text-block.ts';
import { WindowList } from '../parts/window-list.tsx';
import type { DrawingStyle } from '../term/colour.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { choiceAfter } from './choice-prompt-state.ts';
import { foundLines, minutesWords } from './conclusion-words.ts';
import { adviceOf, usefulKeys } from './pages-state.ts';
import { keysOfAction, type SessionAction, type SessionKey } from './session-keys.ts';
import { useKeyTiming } from './use-key-timing.ts';
import { useLater } from './use-later.ts';

export interface FreeScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly message: string | null;
  /** What the last reading changed, or null. */
  readonly changed: string | null;
  readonly clock: () => number;
  readonly onProposal: (proposal: Proposal) => void;
  readonly onAction: (action: SessionAction) => void;
  /** To a conclusion, which in free order is always the person's own. */
  readonly onConclude: () => void;
}

const DO: KeyBinding = { keys: ['return'], show: 'Enter', help: 'do the marked test' };
const ANY: KeyBinding = {
  keys: ['t', ...keysOfAction('any-test')],
  show: 't',
  help: 'any test',
};
/** Readings that are shown at most; all of them are behind the key of the path so far. */
const SHOWN_MOST = 6;
const SHOWN_LEAST = 2;
/** Rows of the proposals with their heading. */
const PROPOSED = 3;

export function FreeScreen(props: FreeScreenProps) {
  const { opened, session, message } = props;
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  const [marked, setMarked] = useState(0);
  const advisor = adviceOf(opened);
  const proposed = useLater(
    session,
    advisor ? 'next' : null,
    () => advisor?.nextTests(session) ?? [],
  );
  const proposals = proposed === 'pending' || proposed === null ? [] : proposed;
  const keys = keysAt(opened, proposals.length > 0);
  const body = bodySize(useSize(), keys);
  const notes =
    message === null ? [] : textBlock([{ text: message, bold: true }], body.columns, look);
  const rows = Math.max(1, body.rows - PROPOSED - 2 - notes.length);
  const lines = linesOf(props, body.columns, rows, look);

  useKeys((event) => {
    const { isSeen } = timing(event);
    const binding = bindingOf(event, keys);
    if (binding && 'action' in binding) return props.onAction(binding.action);
    if (binding === ANY) return props.onAction('any-test');
    if (binding?.show === CONCLUDE) return props.onConclude();
    const next = choiceAfter(marked, event, { count: proposals.length, offered: null });
    setMarked(Math.max(0, next.marked));
    const proposal = proposals[next.marked];
    // A key typed ahead was meant for something else.
    if (next.taken && isSeen && proposal) props.onProposal(proposal);
  });

  return (
    <Frame title="Free order" aside={countWords(session.tests.length, 'test')} keys={keys}>
      <ScrollText lines={lines} rows={Math.min(rows, lines.length)} top={0} />
      <Box flexGrow={1} />
      <Proposed
        heading={headingOf(opened, proposed)}
        proposals={proposals}
        marked={marked}
        bind={opened.bind}
      />
      <ScrollText lines={notes} rows={notes.length} top={0} />
    </Frame>
  );
}

const CONCLUDE = 'c';

function keysAt(opened: OpenedSession, canDo: boolean): (KeyBinding | SessionKey)[] {
  const help = opened.drill ? 'diagnosis' : 'conclude';
  const advised = adviceOf(opened) !== null;
  return [
    ...(canDo ? [DO] : []),
    ...(opened.model ? [ANY] : []),
    { keys: ['c'], show: CONCLUDE, help },
    ...usefulKeys(opened, advised ? ['suspects', 'pause', 'help'] : ['pause', 'help']).filter(
      ({ action }) => action !== 'any-test',
    ),
  ];
}

/** The complaint, and as many of the last readings as there is room for. */
function linesOf(
  { opened, session, changed }: FreeScreenProps,
  columns: number,
  rows: number,
  look: DrawingStyle,
): TextLine[] {
  const { complaint } = session.opened.job;
  const head = complaint === '' ? [] : [{ text: `Complaint: ${complaint}`, hang: 11 }, ''];
  const above = textBlock(head, columns, look);
  const found = foundLines(opened, session);
  if (found.length === 0)
    return [
      ...above,
      ...textBlock([{ text: 'Nothing has been read yet.', bold: true }], columns, look),
    ];
  const told =
    changed === null ? [] : ['', { text: `Last reading: ${changed}${next(changed)}`, hang: 2 }];
  for (let count = SHOWN_MOST; ; count -= 1) {
    const block = [...above, ...textBlock([...lastOf(found, count), ...told], columns, look)];
    if (block.length <= rows || count <= SHOWN_LEAST) return block;
  }
}

/** Nobody has to go on testing to conclude. */
function next(changed: string): string {
  return changed.endsWith(SURE)
    ? `; ${CONCLUDE} concludes, and says what is missing to prove it`
    : '';
}
const SURE = 'leads with over 99 %';

function lastOf(found: readonly string[], count: number) {
  const first = Math.max(0, found.length - count);
  const heading =
    first === 0 ? 'What was read' : `What was read, the last ${count} of ${found.length}`;
  return [
    { text: heading, bold: true },
    ...found
      .slice(first)
      .map((text, index) => ({ text: `${first + index + 1}  ${text}`, hang: 3 })),
  ];
}

function headingOf(
  opened: OpenedSession,
  proposed: readonly Proposal[] | 'pending' | null,
): string {
  if (proposed === null)
    return opened.drill ? 'You choose the tests.' : 'This session has no circuit model.';
  if (proposed === 'pending') return 'One moment: weighing every test you can do here.';
  return proposed.length === 0
    ? 'No test with the instruments at hand would tell you anything new.'
    : 'What would tell you most now';
}

function Proposed(props: {
  readonly heading: string;
  readonly proposals: readonly Proposal[];
  readonly marked: number;
  readonly bind: (text: string) => string;
}) {
  const { heading, proposals, marked, bind } = props;
  return (
    <Box height={PROPOSED + 1} flexDirection="column" flexShrink={0} overflowY="hidden">
      <Words bold>{heading}</Words>
      {proposals.length === 0 ? null : (
        <WindowList
          lines={proposals.map(
            ({ words, minutes }, place) => `${place + 1}  ${minutesWords(minutes)}: ${bind(words)}`,
          )}
          rows={Math.min(PROPOSED, proposals.length)}
          top={0}
          selected={marked}
        />
      )}
    </Box>
  );
}
