/** The tests that would tell most now; choosing one leads to its reading. */
import { useState } from 'react';
import type { Test } from '../../circuit/test.ts';
import type { Proposal } from '../../session/advisor.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { isCut, WindowList } from '../parts/window-list.tsx';
import { windowTop } from '../parts/window-state.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { choiceAfter } from './choice-prompt-state.ts';
import { minutesWords } from './conclusion-words.ts';
import { reachOfTest } from './reach-pages.ts';
import { keysOfAction } from './session-keys.ts';
import { vehicleLine } from './step-words.ts';

export interface NextTestsScreenProps {
  readonly opened: OpenedSession;
  readonly proposals: readonly Proposal[];
  /** `What would tell you most now`, `What would prove it`. */
  readonly title: string;
  readonly onClose: () => void;
  readonly onChoose: (proposal: Proposal) => void;
  /** To a test that is not among them. */
  readonly onAnyTest: () => void;
  /** Tests, connectors and vehicle states that were set aside, in words; none on a drill, where all can be made. */
  readonly aside?: readonly string[];
  /** This one cannot be made here; the last one set aside can after all. */
  readonly onAside?: (test: Test) => void;
  readonly onBack?: () => void;
  /** Nothing can be done at a connector, or in a vehicle state, that this one needs. */
  readonly onReach?: (test: Test) => void;
}

const CLOSE: KeyBinding = {
  keys: ['escape', ...keysOfAction('next-tests')],
  show: 'Esc',
  help: 'close',
};
const ANY: KeyBinding = {
  keys: ['t', ...keysOfAction('any-test')],
  show: 't',
  help: 'any other test',
};
const DO: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'do this one now' },
  { keys: ['up', 'down'], show: 'Up/Down', help: 'others' },
];
const ASIDE: KeyBinding = { keys: ['x'], show: 'x', help: "can't do this one" };
const REACH: KeyBinding = { keys: ['p'], show: 'p', help: 'nor any like it' };
const BACK: KeyBinding = { keys: ['u'], show: 'u', help: 'can after all' };
/** Rows for what is told of the marked one. */
const DETAIL_ROWS = 6;

function keysAt(
  { opened, aside = [], onAside, onReach }: NextTestsScreenProps,
  marked: Proposal | undefined,
): readonly KeyBinding[] {
  const some = marked !== undefined;
  const { circuit } = opened.driver.session().opened;
  const isLike = marked !== undefined && reachOfTest(circuit, marked.test).length > 0;
  return [
    ...(some ? DO : []),
    ...(some && onAside ? [ASIDE] : []),
    ...(isLike && onReach ? [REACH] : []),
    ...(aside.length > 0 ? [BACK] : []),
    ANY,
    CLOSE,
  ];
}

export function NextTestsScreen(props: NextTestsScreenProps) {
  const { opened, proposals, onClose, onChoose } = props;
  const look = useLook();
  const [marked, setMarked] = useState(0);
  const [top, setTop] = useState(0);
  const proposal = proposals[marked];
  const keys = keysAt(props, proposal);
  const body = bodySize(useSize(), keys);
  const names = proposals.map(
    ({ words, minutes }, place) => `${place + 1}  ${minutesWords(minutes)}: ${opened.bind(words)}`,
  );
  const name = names[marked] ?? '';
  const full = isCut(name, body.columns, look) ? [{ text: name, hang: 3, bold: true }] : [];
  const { aside = [] } = props;
  const set = aside.length === 0 ? [] : [{ text: `Set aside: ${aside.join('; ')}.`, hang: 2 }];
  const detail = proposal ? [...full, ...set, ...detailOf(proposal, opened)] : set;
  const lines = textBlock(detail, body.columns, look);
  const listed = Math.max(1, Math.min(proposals.length, body.rows - 1 - DETAIL_ROWS));
  const rows = Math.max(1, body.rows - listed - 1);

  useKeys((event) => {
    const label = keyLabel(event);
    if (CLOSE.keys.includes(label)) return onClose();
    if (ANY.keys.includes(label)) return props.onAnyTest();
    if (BACK.keys.includes(label) && aside.length > 0) return props.onBack?.();
    if (!proposal) {
      if (label === 'return') onClose();
      return;
    }
    const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
    if (to !== null) return setTop(to);
    if (ASIDE.keys.includes(label)) return props.onAside?.(proposal.test);
    if (keys.includes(REACH) && REACH.keys.includes(label)) return props.onReach?.(proposal.test);
    const next = choiceAfter(marked, event, { count: proposals.length, offered: null });
    if (label === 'return') onChoose(proposal);
    else if (next.marked !== marked) {
      setMarked(next.marked);
      setTop(0);
    }
  });

  return (
    <Frame title={props.title} keys={keys}>
      {proposal ? (
        <>
          <WindowList
            lines={names}
            rows={listed}
            top={windowTop({ count: names.length, rows: listed, top: 0, keep: marked })}
            selected={marked}
          />
          <Words> </Words>
          <ScrollText lines={lines} rows={rows} top={top} />
        </>
      ) : (
        <>
          <Words>
            No test with the instruments at hand would tell you anything new. F9 in the step changes
            the instruments.
          </Words>
          <ScrollText lines={lines} rows={rows} top={top} />
        </>
      )}
    </Frame>
  );
}

function detailOf(proposal: Proposal, opened: OpenedSession): Paragraph[] {
  const { setup } = proposal.test;
  return [
    { text: `Why: ${opened.bind(proposal.why)}`, hang: 5 },
    { text: vehicleLine(setup, opened.driver.session()) },
    ...(proposal.needs.length === 0
      ? []
      : [{ text: `Needs: ${proposal.needs.join(', ')}`, hang: 7 }]),
    ...(proposal.healthy === '' ? [] : [{ text: `Good is: ${proposal.healthy}`, hang: 9 }]),
    { text: '' },
    ...(proposal.shows.length === 0
      ? []
      : [{ text: 'What it would show, should the repair be', bold: true }]),
    ...proposal.shows.map(({ suspect, shown }) => ({
      text: `- ${suspect}: ${shown}`,
      hang: 2,
    })),
  ];
}
