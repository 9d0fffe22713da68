/** One step: what to do with the leads of this vehicle, what is good, and the prompt. */
import { Box } from 'ink';
import { useState } from 'react';
import type { Step } from '../../procedure/procedure.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type TextLine, textBlock } from '../parts/text-block.ts';
import { columnsOf } from '../parts/wrap-words.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import type { Asked } from './prompt-state.ts';
import { PromptView, promptRows } from './prompt-view.tsx';
import { type SessionAction, type SessionKey, withFooter } from './session-keys.ts';
import { stateWords, stepParagraphs, testOf } from './step-words.ts';

export interface StepScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly step: Exclude<Step, { kind: 'conclude' }>;
  readonly asked: Asked;
  /** What the last reading changed, or null. */
  readonly changed: string | null;
  /** Why the last command was refused, or null. */
  readonly message: string | null;
  readonly onAction: (action: SessionAction) => void;
  /** Any other key, for the prompt. */
  readonly onPromptKey: Parameters<typeof useKeys>[0];
}

const FOOTER: readonly SessionAction[] = ['back', 'cannot', 'suspects', 'next-tests', 'help'];

/** The screen of a step. */
export function StepScreen(props: StepScreenProps) {
  const { opened, session, step, asked, onAction, onPromptKey } = props;
  const look = useLook();
  const screen = useSize();
  const [top, setTop] = useState(0);
  const layout = layOut(props, screen, look);
  const { keys, lines, rows, sketch } = layout;

  useKeys((event) => {
    const label = keyLabel(event);
    const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
    if (to !== null) return setTop(to);
    const binding = bindingOf(event, withFooter(FOOTER));
    if (binding) onAction(binding.action);
    else onPromptKey(event);
  });

  return (
    <Frame
      title={opened.bind(session.opened.procedure.title)}
      aside={`step ${session.trail.length} · ${stateWords(step.setup.state)}`}
      keys={keys}
    >
      <ScrollText lines={lines} rows={rows} top={top} />
      {sketch.length > 0 ? (
        <Box flexDirection="column" flexShrink={0}>
          <Words> </Words>
          <Words wrap="cut">{sketch.join('\n')}</Words>
        </Box>
      ) : null}
      <Box flexGrow={1} />
      <PromptView asked={asked} message={props.message} bind={opened.bind} />
    </Frame>
  );
}

/** What fits: text first, the sketch in what is left, else a key for it. */
function layOut(
  props: StepScreenProps,
  screen: { columns: number; rows: number },
  look: ReturnType<typeof useLook>,
) {
  const { opened, session, step, changed } = props;
  const withSketchKey = keysFor(props, true);
  const body = bodySize(screen, withSketchKey);
  const lines: TextLine[] = textBlock(
    [
      ...stepParagraphs(opened, session, step),
      ...(changed === null ? [] : ['', { text: `Last reading: ${changed}`, hang: 14 }]),
    ],
    body.columns,
    look,
  );
  const prompt = promptRows(props.asked, props.message, body.columns, look);
  const drawn = opened.sketch(testOf(step), body.columns);
  const narrow = drawn.every((line) => columnsOf(line) <= body.columns);
  const left = body.rows - lines.length - prompt - 1;
  const sketch = narrow && drawn.length > 0 && drawn.length <= left ? drawn : [];
  const keys = sketch.length > 0 || drawn.length === 0 ? keysFor(props, false) : withSketchKey;
  const room = bodySize(screen, keys).rows - prompt - (sketch.length > 0 ? sketch.length + 1 : 0);
  return { keys, lines, sketch, rows: Math.max(1, Math.min(lines.length, room)) };
}

function keysFor({ asked, opened }: StepScreenProps, sketch: boolean): KeyBinding[] {
  const own: KeyBinding[] = [{ keys: ['return'], show: 'Enter', help: ENTER_WORDS[asked.kind] }];
  if (asked.offered !== null && asked.kind !== 'act')
    own.push({ keys: ['tab'], show: 'Tab', help: 'as simulated' });
  const actions: SessionAction[] = FOOTER.filter(
    (action) => opened.thinker !== null || (action !== 'suspects' && action !== 'next-tests'),
  );
  const table: SessionKey[] = withFooter(sketch ? [...actions, 'sketch'] : actions);
  return [...own, ...table];
}

const ENTER_WORDS: Readonly<Record<Asked['kind'], string>> = {
  measure: 'take it',
  choice: 'choose',
  act: 'done',
};
