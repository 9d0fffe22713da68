/** A test outside the procedure: where the leads go, and its reading. */
import { Box } from 'ink';
import { useState } from 'react';
import { leadWords } from '../../procedure/test-words.ts';
import type { Proposal } from '../../session/advisor.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { answerAfter, askedOutside, type HalfAnswer } from './prompt-state.ts';
import { PromptView, promptRows } from './prompt-view.tsx';
import { readingPrompt } from './reading-prompt-state.ts';
import { CAPTURE_KEY } from './session-keys.ts';
import { cautionLine, lookWords, undoLine, vehicleLine } from './step-words.ts';
import { useKeyTiming } from './use-key-timing.ts';

export interface ExtraScreenProps {
  readonly opened: OpenedSession;
  readonly proposal: Proposal;
  readonly message: string | null;
  readonly clock: () => number;
  readonly onRecord: (command: Command) => void;
  /** A capture is to answer it. */
  readonly onCapture: () => void;
  readonly onClose: () => void;
}

/** The screen. */
export function ExtraScreen(props: ExtraScreenProps) {
  const { opened, proposal } = props;
  const { test } = proposal;
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  const [half, setHalf] = useState<HalfAnswer>(() => ({
    asking: proposal.id,
    prompt: readingPrompt(),
    marked: 0,
  }));
  const [note, setNote] = useState<string | null>(null);
  const [top, setTop] = useState(0);
  const unit = test.probe.kind === 'ohms' ? 'ohm' : 'V';
  const asked = askedOutside(
    proposal,
    unit,
    half,
    opened.benchShows(test),
    opened.driver.session().meter,
  );
  const message = note ?? props.message;
  const keys: KeyBinding[] = [
    { keys: ['return'], show: 'Enter', help: 'take it' },
    ...(asked.offered === null ? [] : [{ keys: ['tab'], show: 'Tab', help: 'take over' }]),
    ...(testTakesCapture(test) ? [CAPTURE_KEY] : []),
    { keys: ['escape'], show: 'Esc', help: 'not now' },
  ];
  const body = bodySize(useSize(), keys);
  const lines = textBlock(paragraphsOf(opened, proposal, body.columns), body.columns, look);
  const rows = Math.max(1, body.rows - promptRows(asked, message, body.columns, look, opened.bind));

  useKeys((event) => {
    const when = timing();
    const label = keyLabel(event);
    const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
    if (to !== null) return setTop(to);
    if (bindingOf(event, keys) === CAPTURE_KEY) return props.onCapture();
    const isTyping = asked.kind !== 'measure' || asked.prompt.mode === 'typing';
    if (label === 'escape' && isTyping) return props.onClose();
    const next = answerAfter(half, asked, event, when);
    setHalf(next.half);
    setNote(next.note);
    const command = next.command && extraCommand(proposal, unit, next.command);
    if (command) props.onRecord(command);
  });

  return (
    <Frame title="A test outside the procedure" aside="then back to the step" keys={keys}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      <PromptView asked={asked} message={message} bind={opened.bind} />
    </Frame>
  );
}

function paragraphsOf(opened: OpenedSession, proposal: Proposal, columns: number) {
  const { test, words, why, healthy } = proposal;
  const session = opened.driver.session();
  const leads = leadWords(test.probe, session.opened.job, session.opened.circuit);
  const undo = undoLine(test.setup, session);
  const cautions = opened.bind(cautionLine(opened.cautionsFor(test)));
  return [
    { text: opened.bind(words), bold: true },
    `${vehicleLine(test.setup, session)} ${cautions}`.trim(),
    ...(undo === '' ? [] : [{ text: undo, bold: true, hang: 7 }]),
    ...(leads === '' ? [] : [leads]),
    { text: `Why: ${opened.bind(why)}`, hang: 5 },
    ...(healthy === '' ? [] : [{ text: `Good is: ${healthy}`, bold: true, hang: 9 }]),
    '',
    ...opened.sketch(test, columns).map((text) => ({ text, drawn: true })),
  ];
}

/** An answer to the prompt as that of a test outside the tree; null when it answers no test. */
function extraCommand(
  { test, words, expected }: Proposal,
  unit: 'V' | 'ohm',
  answer: Command,
): Command | null {
  if (answer.type === 'record-reading') {
    const { typed } = answer;
    const value = Number.isFinite(answer.value) ? answer.value : null;
    const shown = { kind: 'number', value, unit } as const;
    return { type: 'record-extra', test, words, expected, typed, shown };
  }
  if (answer.type !== 'choose-outcome' || !answer.look) return null;
  const { look } = answer;
  const shown = { kind: 'look', look } as const;
  return { type: 'record-extra', test, words, expected, typed: lookWords(look), shown };
}
