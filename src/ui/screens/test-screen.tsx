/** A test that no step asks for: where the leads go, what is good, and the prompt for what it shows. */
import { Box } from 'ink';
import { useState } from 'react';
import { leadWords } from '../../procedure/test-words.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import { testCautions, testCautionsInShort } from '../../session/pending-cautions.ts';
import type { Session } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { goodHereWords } from './car-words.ts';
import type { KeyTiming } from './deliberate-state.ts';
import { type Asked, notDoubted, takesDigits } from './prompt-state.ts';
import { PromptView, promptRows } from './prompt-view.tsx';
import { CAPTURE_KEY } from './session-keys.ts';
import {
  arrangeLine,
  cautionLine,
  scopeLines,
  stillLine,
  vehicleLine,
  wiggleLines,
} from './step-words.ts';
import { useKeyTiming } from './use-key-timing.ts';
import { useIsThinking } from './use-thinking.ts';
import { useWarmPrompt } from './use-warm-prompt.ts';

export interface TestScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly toDo: TestToDo;
  readonly asked: Asked;
  /** What kind of test it is, for the title, and what comes after it. */
  readonly title: string;
  readonly aside: string;
  readonly message: string | null;
  readonly clock: () => number;
  readonly onPromptKey: (event: KeyEvent, timing: KeyTiming) => void;
  /** A capture is to answer it. */
  readonly onCapture: () => void;
  readonly onClose: () => void;
}

const CLOSE: KeyBinding = { keys: ['escape'], show: 'Esc', help: 'not now' };

export function TestScreen(props: TestScreenProps) {
  const { opened, message } = props;
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  useWarmPrompt(props.asked);
  const isThinking = useIsThinking();
  const asked = isThinking ? notDoubted(props.asked) : props.asked;
  const [top, setTop] = useState(0);
  const keys = keysAt(props);
  const body = bodySize(useSize(), keys);
  const told = paragraphsOf(props, body.columns, isThinking);
  const lines = textBlock(told, body.columns, look);
  const rows = Math.max(1, body.rows - promptRows(asked, message, body.columns, look, opened.bind));

  useKeys(
    (event) => {
      const when = timing(event);
      const to = scrollBy(keyLabel(event), { count: lines.length, rows, top, pages: true });
      if (to !== null) return setTop(to);
      const binding = bindingOf(event, keys);
      if (binding === CAPTURE_KEY) props.onCapture();
      else if (binding === CLOSE && !isAsking(asked)) props.onClose();
      else props.onPromptKey(event, when);
    },
    { takesText: takesDigits(asked) },
  );

  return (
    <Frame title={props.title} aside={props.aside} keys={keys}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      <PromptView asked={asked} message={message} bind={opened.bind} />
    </Frame>
  );
}

/** The prompt asks back, and Esc answers that. */
function isAsking(asked: Asked): boolean {
  return asked.kind === 'measure' && asked.prompt.mode !== 'typing';
}

function keysAt({ asked, toDo: { test }, opened }: TestScreenProps): KeyBinding[] {
  const enter = asked.kind === 'act' ? asked.enter : 'confirm';
  return [
    { keys: ['return'], show: 'Enter', help: enter },
    ...(asked.offered === null ? [] : [{ keys: ['tab'], show: 'Tab', help: 'take over' }]),
    ...(testTakesCapture(test) && !opened.drill ? [CAPTURE_KEY] : []),
    CLOSE,
  ];
}

function paragraphsOf(
  { opened, session, toDo }: TestScreenProps,
  columns: number,
  isThinking: boolean,
): (Paragraph | string)[] {
  const { test, words, why, healthy, expected } = toDo;
  const isToldHere = !opened.drill && !isThinking;
  const here = isToldHere ? goodHereWords(opened, session, test, expected) : '';
  const leads = leadWords(test.probe, session.opened.job, session.opened.circuit);
  const first = arrangeLine(test, session);
  const still = stillLine(test.setup, session);
  const short = testCautionsInShort(session, test);
  const cautions = cautionLine(opened, session, testCautions(session, test), short);
  return [
    { text: opened.bind(words), bold: true },
    `${vehicleLine(test.setup, session)} ${cautions}`.trim(),
    ...(first === '' ? [] : [{ text: first, bold: true, hang: 7 }]),
    ...(still === '' ? [] : [{ text: still, hang: 2 }]),
    ...(leads === '' ? [] : [leads]),
    ...scopeLines(opened, test).map((text) => ({ text, bold: true, hang: 7 })),
    ...wiggleLines(test),
    ...(why === '' ? [] : [{ text: `Why: ${opened.bind(why)}`, hang: 5 }]),
    ...(healthy === '' ? [] : [{ text: `Good is: ${healthy}${here}`, bold: true, hang: 9 }]),
    '',
    ...opened.sketch(test, columns).map((text) => ({ text, drawn: true })),
  ];
}
