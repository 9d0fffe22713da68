/** A session at rest: paused, concluded or closed. Where it is kept, and how to go on. */

import { useState } from 'react';
import { countWords } from '../../quantity/count-words.ts';
import { conclusionWords } from '../../session/conclusion-words.ts';
import { DRIVEN_WORDS } from '../../session/read-drive.ts';
import { retestLines, VERDICT_WORDS } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { keptWords } from '../parts/kept-words.ts';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { sentenceStart } from '../parts/sentence.ts';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { acceptedWords } from './conclusion-words.ts';
import { keysOfAction } from './session-keys.ts';
import { leftLine } from './step-words.ts';

export interface RestScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly message: string | null;
  readonly onHome: () => void;
  readonly onBack: () => void;
  /** To the tests after the repair. */
  readonly onRetest: () => void;
  /** To what the trouble codes did once it was driven. */
  readonly onDrive: () => void;
  /** To what the customer is told, and says of the work. */
  readonly onCustomer: () => void;
  /** To a test that nobody asks for. */
  readonly onAnyTest: () => void;
}

const HOME: KeyBinding = { keys: ['return', 'escape'], show: 'Enter', help: 'leave the session' };
const RETEST: KeyBinding = { keys: ['r'], show: 'r', help: 'test after the repair' };
const ANY_TEST: KeyBinding = {
  keys: ['t', ...keysOfAction('any-test')],
  show: 't',
  help: 'another test',
};
const DRIVE: KeyBinding = { keys: ['d'], show: 'd', help: 'report test drive' };
const CUSTOMER: KeyBinding = { keys: ['c'], show: 'c', help: 'call the customer' };
const KEEP: KeyBinding = { keys: ['k'], show: 'k', help: 'keep the captures' };
const BACK: KeyBinding = {
  keys: keysOfAction('back'),
  show: 'F2',
  help: 'reopen it, change an answer',
};

export function RestScreen(props: RestScreenProps) {
  const { opened, session, message } = props;
  const look = useLook();
  const toTest = session.status === 'concluded' ? retestLines(session).length : 0;
  const keys = keysAt(props, toTest);
  const body = bodySize(useSize(), keys);
  const [top, setTop] = useState(0);
  const [kept, setKept] = useState<readonly string[]>([]);
  const paragraphs = [
    ...kept.map((text) => ({ text, bold: true, hang: 2 })),
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
    else if (binding === DRIVE) props.onDrive();
    else if (binding === CUSTOMER) props.onCustomer();
    else if (binding === KEEP)
      void opened.goodCaptures.keep().then((done) => setKept(keptWords(done)));
    else if (binding === ANY_TEST) props.onAnyTest();
  });

  return (
    <Frame title={TITLES[session.status]} keys={keys}>
      <ScrollText lines={lines} rows={body.rows} top={top} />
    </Frame>
  );
}

/** What is closed stays closed but for the last word, and a test of one's own takes a circuit. */
function keysAt({ opened, session }: RestScreenProps, toTest: number): KeyBinding[] {
  const drive = session.concluded && !opened.drill ? [DRIVE] : [];
  if (session.status === 'closed')
    return [HOME, ...drive, ...(opened.goodCaptures.canKeep() ? [KEEP] : [])];
  if (session.status !== 'concluded') return [HOME];
  const hasWay = session.trail.length > 0;
  return [
    HOME,
    ...(opened.drill ? [] : [CUSTOMER]),
    ...(toTest > 0 ? [RETEST] : []),
    ...drive,
    ...(opened.model ? [ANY_TEST] : []),
    ...(hasWay ? [BACK] : []),
  ];
}

const TITLES: Readonly<Record<Session['status'], string>> = {
  open: 'Session',
  paused: 'Paused',
  concluded: 'Saved',
  closed: 'Closed',
};

function restParagraphs(opened: OpenedSession, session: Session): Paragraph[] {
  const place: Paragraph[] = opened.preview
    ? [{ text: '' }, { text: 'Preview: nothing was saved.' }]
    : [{ text: '' }, { text: 'The session file' }, { text: `  ${opened.driver.path()}`, hang: 2 }];
  return session.status === 'paused'
    ? pausedParagraphs(opened, session, place)
    : [
        ...concludedParagraphs(opened, session),
        ...workParagraphs(session),
        ...leftParagraph(session),
        ...place,
        ...toTestParagraphs(opened, session),
        ...driveParagraphs(opened, session),
        ...keepParagraphs(opened),
        ...(opened.preview ? [] : reportParagraphs(opened)),
      ];
}

/** What has to come off before the vehicle is moved; once it is tested again, the repair lies between. */
function leftParagraph(session: Session): Paragraph[] {
  const left = session.retests.length > 0 ? '' : leftLine(session);
  return left === '' ? [] : [{ text: '' }, { text: left, bold: true }];
}

function pausedParagraphs(
  opened: OpenedSession,
  session: Session,
  place: readonly Paragraph[],
): Paragraph[] {
  const { trail, tests } = session;
  const where =
    trail.length > 0 ? `at step ${trail.length}` : `after ${countWords(tests.length, 'test')}`;
  if (opened.preview) return [{ text: `Left ${where}.`, bold: true }, ...place];
  const lost = opened.driver.unsaved();
  // Leaving tries once more, and says where it is then.
  if (lost)
    return [
      { text: `Paused ${where}, and not saved where it was.`, bold: true },
      ...leftParagraph(session),
      { text: '' },
      { text: lost.words },
      { text: 'As you leave, it is saved again where that is possible.' },
    ];
  return [
    { text: `Paused ${where}. Every answer is saved.`, bold: true },
    ...leftParagraph(session),
    ...place,
    { text: '' },
    ...(opened.drill
      ? [
          { text: 'Continue later with:' },
          { text: `  ohmward drill --resume ${opened.driver.path()}`, hang: 2 },
        ]
      : [
          { text: 'Continue later from the start screen, or with:' },
          { text: `  ohmward resume ${opened.name()}`, hang: 2 },
        ]),
  ];
}

function concludedParagraphs(place: OpenedSession, session: Session): Paragraph[] {
  const { concluded, closed, opened: first } = session;
  const accepted = concluded ? acceptedWords(concluded, place) : '';
  return [
    { text: conclusionWords(session)?.title ?? '', bold: true },
    ...(first.vehicle.kind === 'real' ? [] : [{ text: 'On a simulated vehicle.' }]),
    { text: accepted },
    ...(closed
      ? [
          {
            text: `Closed as ${CLOSED_WORDS[closed.verdict]}: ${VERDICT_WORDS[closed.verdict]}.`,
          },
        ]
      : []),
  ];
}

/** What the customer said last of the work. */
function workParagraphs({ work }: Session): Paragraph[] {
  const last = work.at(-1);
  if (!last) return [];
  const said = [`The work was ${last.answer} by ${last.by}`, last.words].filter(Boolean);
  return [{ text: `${said.join('; ')}.` }];
}

/** What was reported of driving it, or where it will go. */
function driveParagraphs(opened: OpenedSession, { drives, closed }: Session): Paragraph[] {
  if (opened.drill || opened.preview || (drives.length === 0 && !closed)) return [];
  const told = drives.map(({ code, words }) => ({
    text: sentenceStart(
      [`${DRIVEN_WORDS[code]} on the test drive`, words].filter(Boolean).join(': '),
    ),
  }));
  return [
    { text: '' },
    ...(told.length > 0 ? told : [{ text: 'After the test drive, press d, or later type' }]),
    ...(told.length > 0
      ? []
      : [{ text: `  ohmward retest ${opened.name()} --drive "away, 80 km"`, hang: 2 }]),
  ];
}

/** Captures of a cured vehicle may serve the next one like it. */
function keepParagraphs(opened: OpenedSession): Paragraph[] {
  if (!opened.goodCaptures.canKeep()) return [];
  return [
    { text: '' },
    { text: 'To keep the after-repair captures as known-good, press k, or later type' },
    { text: `  ohmward records keep ${opened.name()}`, hang: 2 },
  ];
}

function toTestParagraphs(opened: OpenedSession, session: Session): Paragraph[] {
  const toTest = session.status === 'concluded' ? retestLines(session).length : 0;
  if (toTest === 0) return [];
  const later = opened.preview ? '.' : ', today or later: open this session again, or type';
  const { length: tested } = session.retests;
  return [
    { text: '' },
    {
      text: `After the repair ${countWords(toTest, 'test')} must pass. Press r when it is done${later}`,
    },
    ...(opened.preview ? [] : [{ text: `  ohmward retest ${opened.name()}`, hang: 2 }]),
    ...(tested > 0 ? [{ text: `Tested so far: ${tested}.` }] : []),
  ];
}

function reportParagraphs(opened: OpenedSession): Paragraph[] {
  return [
    { text: '' },
    { text: 'A report for the customer, or without --for the whole record:' },
    {
      text: `  ohmward records export ${opened.name()} --as pdf --for customer -o report.pdf`,
      hang: 2,
    },
  ];
}

const CLOSED_WORDS = {
  cured: 'cured',
  'not-cured': 'not cured',
  changed: 'changed',
  'not-shown': 'repair not proven',
  'no-retest': 'not tested',
} as const;
