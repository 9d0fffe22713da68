/** A test outside the procedure: where the leads go, and its reading. */
import { Box } from 'ink';
import { useState } from 'react';
import type { Look } from '../../circuit/test.ts';
import { leadWords } from '../../procedure/test-words.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/decide.ts';
import type { Proposal } from '../../session/thinker.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { choiceAfter } from './choice-prompt-state.ts';
import { ChoiceView, choiceRows, NumberView, numberRows, wrappedRows } from './prompt-view.tsx';
import { type ReadingContext, readingPrompt, readingPromptAfter } from './reading-prompt-state.ts';
import { CAPTURE_KEY } from './session-keys.ts';
import { lookWords, vehicleLine } from './step-words.ts';

export interface ExtraScreenProps {
  readonly opened: OpenedSession;
  readonly proposal: Proposal;
  readonly message: string | null;
  readonly onRecord: (command: Command) => void;
  /** A capture is to answer it. */
  readonly onCapture: () => void;
  readonly onClose: () => void;
}

/** The screen. */
export function ExtraScreen(props: ExtraScreenProps) {
  const { opened, proposal, message, onRecord, onClose } = props;
  const { test, words, looks } = proposal;
  const look = useLook();
  const [prompt, setPrompt] = useState(readingPrompt);
  const [marked, setMarked] = useState(0);
  const [top, setTop] = useState(0);
  const vehicle = opened.benchShows(test);
  const unit = test.probe.kind === 'ohms' ? 'ohm' : 'V';
  const context: ReadingContext = {
    expected: { unit },
    judge: () => null,
    isDeliberate: true,
    offered: vehicle?.answer.kind === 'reading' ? vehicle.answer.typed : null,
  };
  const shownLook =
    vehicle?.answer.kind === 'outcome' ? looks.indexOf(vehicle.answer.look ?? '') : -1;
  const keys: KeyBinding[] = [
    { keys: ['return'], show: 'Enter', help: 'take it' },
    ...(vehicle ? [{ keys: ['tab'], show: 'Tab', help: 'take over' }] : []),
    ...(testTakesCapture(test) ? [CAPTURE_KEY] : []),
    { keys: ['escape'], show: 'Esc', help: 'not now' },
  ];
  const body = bodySize(useSize(), keys);
  const drawn = opened.sketch(test, body.columns);
  const session = opened.driver.session();
  const leads = leadWords(test.probe, session.opened.job, session.opened.circuit);
  const lines = textBlock(
    [
      { text: opened.bind(words), bold: true },
      vehicleLine(test.setup, session),
      ...(leads === '' ? [] : [leads]),
      { text: `Why: ${opened.bind(proposal.why)}`, hang: 5 },
      ...(proposal.healthy === ''
        ? []
        : [{ text: `Good is: ${proposal.healthy}`, bold: true, hang: 9 }]),
      '',
      ...drawn.map((text) => ({ text, drawn: true })),
    ],
    body.columns,
    look,
  );
  const notes = [
    ...(message === null ? [] : [message]),
    ...(vehicle ? [`The simulated vehicle: ${vehicle.words}`] : []),
  ];
  const promptRows =
    proposal.kind === 'number'
      ? numberRows(prompt, context, body.columns, look)
      : choiceRows(looks.length);
  const rows = Math.max(1, body.rows - promptRows - wrappedRows(notes, body.columns, look));

  useKeys((event) => {
    const label = keyLabel(event);
    const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
    if (to !== null) return setTop(to);
    if (bindingOf(event, keys) === CAPTURE_KEY) return props.onCapture();
    if (proposal.kind === 'number') {
      if (label === 'escape' && prompt.mode === 'typing') return onClose();
      const next = readingPromptAfter(prompt, event, context);
      setPrompt(next.prompt);
      if (!next.taken) return;
      const { typed, value } = next.taken;
      const known = Number.isFinite(value) ? value : null;
      onRecord({
        type: 'record-extra',
        test,
        words,
        typed,
        shown: { kind: 'number', value: known, unit },
      });
      return;
    }
    if (label === 'escape') return onClose();
    const offered = shownLook >= 0 ? shownLook : null;
    const next = choiceAfter(marked, event, { count: looks.length, offered });
    setMarked(next.marked);
    const chosen = looks[next.marked] as Look | undefined;
    if (next.taken && chosen)
      onRecord({
        type: 'record-extra',
        test,
        words,
        typed: chosen,
        shown: { kind: 'look', look: chosen },
      });
  });

  return (
    <Frame title="A test outside the procedure" aside="then back to the step" keys={keys}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      {notes.map((note) => (
        <Words key={note} bold={note === message}>
          {note}
        </Words>
      ))}
      {proposal.kind === 'number' ? (
        <NumberView
          label={`Reading in ${unit === 'V' ? 'volts' : 'ohms'}: `}
          prompt={prompt}
          context={context}
        />
      ) : (
        <ChoiceView words={looks.map(lookWords)} marked={marked} />
      )}
    </Frame>
  );
}
