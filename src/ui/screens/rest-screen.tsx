/** A session at rest: paused, concluded or closed. Where it is kept, and how to go on. */
import { useState } from 'react';
import { piecesAmong } from '../../session/events.ts';
import { retestLines } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { acceptedWords, countWords } from './conclusion-words.ts';
import { keysOf } from './session-keys.ts';

export interface RestScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly message: string | null;
  readonly onHome: () => void;
  readonly onBack: () => void;
  /** To the tests after the repair. */
  readonly onRetest: () => void;
}

const HOME: KeyBinding = { keys: ['return', 'escape'], show: 'Enter', help: 'leave the session' };
const RETEST: KeyBinding = { keys: ['r'], show: 'r', help: 'test after the repair' };
const BACK: KeyBinding = {
  keys: keysOf('back'),
  show: 'F2',
  help: 'back into it, change an answer',
};

/** The screen. */
export function RestScreen(props: RestScreenProps) {
  const { opened, session, message } = props;
  const look = useLook();
  const toTest = session.status === 'concluded' ? retestLines(session).length : 0;
  const keys =
    session.status === 'concluded' ? [HOME, ...(toTest > 0 ? [RETEST] : []), BACK] : [HOME];
  const body = bodySize(useSize(), keys);
  const [top, setTop] = useState(0);
  const paragraphs = [
    ...(message === null ? [] : [{ text: message, bold: true }]),
    ...restParagraphs(opened, session),
  ];
  const lines = textBlock(paragraphs, body.columns, look);

  useKeys((event) => {
    const to = scrollBy(keyLabel(event), { count: lines.length, rows: body.rows, top });
    if (to !== null) return setTop(to);
    const binding = bindingOf(event, keys);
    if (binding === HOME) props.onHome();
    else if (binding === BACK) props.onBack();
    else if (binding === RETEST) props.onRetest();
  });

  return (
    <Frame title={TITLES[session.status]} keys={keys}>
      <ScrollText lines={lines} rows={body.rows} top={top} />
    </Frame>
  );
}

const TITLES: Readonly<Record<Session['status'], string>> = {
  open: 'Session',
  paused: 'Paused',
  concluded: 'Saved',
  closed: 'Closed',
};

function restParagraphs(opened: OpenedSession, session: Session): Paragraph[] {
  const path = opened.driver.path();
  const place: Paragraph[] = opened.preview
    ? [{ text: '' }, { text: 'A preview: nothing was saved.' }]
    : [{ text: '' }, { text: 'The session file' }, { text: `  ${path}`, hang: 2 }];
  const { concluded, closed, opened: first, trail, retests } = session;
  if (session.status === 'paused' && opened.preview)
    return [{ text: `Left at step ${trail.length}.`, bold: true }, ...place];
  if (session.status === 'paused')
    return [
      { text: `Paused at step ${trail.length}. Every answer is saved.`, bold: true },
      ...place,
      { text: '' },
      { text: 'Go on later from the start screen, or with:' },
      { text: `  ohmward resume ${opened.name()}`, hang: 2 },
    ];
  const toTest = session.status === 'concluded' ? retestLines(session).length : 0;
  return [
    { text: opened.bind(concluded?.title ?? ''), bold: true },
    ...(first.vehicle.kind === 'real' ? [] : [{ text: 'On a simulated vehicle.' }]),
    { text: acceptedWords(concluded?.proven ?? null, piecesAmong(concluded?.evidence ?? [])) },
    ...(closed ? [{ text: `Closed as ${CLOSED_WORDS[closed.verdict]}: ${closed.words}.` }] : []),
    ...place,
    ...(toTest > 0
      ? [
          { text: '' },
          {
            text: `After the repair ${countWords(toTest, 'test')} must pass. Press r when it is done${opened.preview ? '.' : ', today or later: open this session again, or type'}`,
          },
          ...(opened.preview ? [] : [{ text: `  ohmward retest ${opened.name()}`, hang: 2 }]),
          ...(retests.length > 0 ? [{ text: `Tested so far: ${retests.length}.` }] : []),
        ]
      : []),
    ...(opened.preview
      ? []
      : [
          { text: '' },
          { text: 'A report for the customer, or without --for the whole record:' },
          {
            text: `  ohmward records export ${opened.name()} --as pdf --for customer -o report.pdf`,
            hang: 2,
          },
        ]),
  ];
}

const CLOSED_WORDS = {
  cured: 'cured',
  'not-cured': 'not cured',
  changed: 'changed',
  'not-shown': 'cure not shown',
  'no-retest': 'not tested',
} as const;
