/** One step: what to do with the leads of this vehicle, what is good, and the prompt. */
import { Box } from 'ink';
import { useState } from 'react';
import type { Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { shortStateWords } from '../../procedure/test-words.ts';
import { takesCapture } from '../../session/capture-step.ts';
import { minutesLeft } from '../../session/minutes-left.ts';
import type { Session } from '../../session/session.ts';
import { wakesHere } from '../../session/watched-asked.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type TextLine, textBlock } from '../parts/text-block.ts';
import { columnsOf } from '../parts/wrap-words.ts';
import type { DrawingStyle } from '../term/colour.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { type Size, useSize } from '../term/use-size.ts';
import { stepHereWords } from './car-words.ts';
import type { KeyTiming } from './deliberate-state.ts';
import { adviceOf, usefulKeys } from './pages-state.ts';
import { type Asked, notDoubted, takesText } from './prompt-state.ts';
import { PromptView, promptRows } from './prompt-view.tsx';
import { SESSION_KEYS, type SessionAction } from './session-keys.ts';
import { sessionTitle, soFarWords, stepParagraphs } from './step-words.ts';
import { useKeyTiming } from './use-key-timing.ts';
import { useLater } from './use-later.ts';
import { useIsThinking } from './use-thinking.ts';
import { useWarmPrompt } from './use-warm-prompt.ts';

export interface StepScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly step: Exclude<Step, { kind: 'conclude' }>;
  readonly asked: Asked;
  /** The test is repeated after a repair: how far that is, and what it showed before. */
  readonly again: { readonly progress: string; readonly before: string } | null;
  /** What the last reading changed, or null. */
  readonly changed: string | null;
  /** What is known about this car, told where there is room; null while nothing is. */
  readonly car: string | null;
  /** Why the last command was refused, or null. */
  readonly message: string | null;
  readonly onAction: (action: SessionAction) => void;
  /** Any other key, for the prompt. */
  readonly onPromptKey: (event: KeyEvent, timing: KeyTiming) => void;
  readonly clock: () => number;
}

export function StepScreen(props: StepScreenProps) {
  const { opened, session, step, onAction, onPromptKey } = props;
  const look = useLook();
  const screen = useSize();
  const timing = useKeyTiming(props.clock);
  useWarmPrompt(props.asked);
  const [top, setTop] = useState(0);
  const minutes = useMinutes(props);
  const isThinking = useIsThinking();
  const asked = isThinking ? notDoubted(props.asked) : props.asked;
  const layout = layOut({ ...props, asked }, screen, look, { minutes, isThinking });
  const { keys, lines, rows, sketch } = layout;

  useKeys(
    (event) => {
      const when = timing(event);
      const label = keyLabel(event);
      const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
      if (to !== null) return setTop(to);
      const binding = bindingOf(event, SESSION_KEYS);
      if (binding) onAction(binding.action);
      else onPromptKey(event, when);
    },
    { takesText: takesText(asked) },
  );

  return (
    <Frame
      title={props.again ? 'After the repair' : sessionTitle(opened, session)}
      aside={`${props.again ? props.again.progress : `step ${session.trail.length}`} · ${shortStateWords(step.setup.state)}`}
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

/** What it took and what is left of it, the rest of the procedure once that is worked out; nothing of a retest. */
function useMinutes({ opened, session, again }: StepScreenProps): string {
  const { model } = opened;
  const left = useLater(session, again || !model ? null : 'minutes left', () => {
    const advisor = adviceOf(opened);
    return advisor && model ? minutesLeft(session, model, advisor.suspects(session).rows) : null;
  });
  return again ? '' : soFarWords(session, typeof left === 'number' ? left : null);
}

/** Footers from full to bare; every key works with each of them. */
const FOOTERS: readonly (readonly SessionAction[])[] = [
  ['back', 'cannot', 'suspects', 'next-tests', 'help'],
  ['back', 'cannot', 'help'],
  ['cannot', 'help'],
];
/** Where there is no way round a step, the way back takes its place. */
const BARE_WITHOUT_CANNOT: readonly SessionAction[] = ['back', 'help'];

const FOOTERS_AGAIN: readonly (readonly SessionAction[])[] = [
  ['back', 'cannot', 'pause', 'help'],
  ['back', 'pause', 'help'],
  ['pause', 'help'],
];

/** What fits: the text first, then the sketch, then a footer as full as it can be. */
function layOut(
  props: StepScreenProps,
  screen: Size,
  look: DrawingStyle,
  { minutes, isThinking }: { readonly minutes: string; readonly isThinking: boolean },
) {
  const { opened, session, step, changed } = props;
  const { columns } = bodySize(screen, []);
  const here = props.again || isThinking ? '' : stepHereWords(opened, session, step);
  const toldAs = (tight: boolean) => {
    const [title, ...rest] = stepParagraphs(opened, session, step, props.again, {
      ...{ here, tight, isThinking },
    });
    return [
      ...(title ? [{ ...title, text: `${title.text}${minutes}` }] : []),
      ...rest,
      ...(changed === null ? [] : ['', { text: `Last reading: ${changed}`, hang: 2 }]),
    ];
  };
  const told = toldAs(false);
  const prompt = promptRows(props.asked, props.message, columns, look, opened.bind);
  const drawn = opened.sketch(testOf(step), columns);
  const canDraw = drawn.length > 0 && drawn.every((line) => columnsOf(line) <= columns);
  const usual = step.cannot === null ? [...FOOTERS.slice(0, -1), BARE_WITHOUT_CANNOT] : FOOTERS;
  const wanted = props.again ? FOOTERS_AGAIN : usual;
  const footers = wanted.map((actions) => keysFor(props, actions));
  const footersWithKey = wanted.map((actions) =>
    keysFor(props, drawn.length > 0 ? [...actions, 'sketch'] : actions),
  );
  const leaves = (keys: readonly KeyBinding[]) => bodySize(screen, keys).rows - prompt;
  const bare = footers.at(-1) ?? [];
  const withCar: TextLine[] = textBlock(
    [...told, ...(props.car === null ? [] : [{ text: props.car, hang: 2 }])],
    columns,
    look,
  );
  const withoutCar = withCar.length <= leaves(bare) ? withCar : textBlock(told, columns, look);
  const lines =
    withoutCar.length <= leaves(bare) ? withoutCar : textBlock(toldAs(true), columns, look);
  const withSketch = canDraw
    ? footers.find((keys) => leaves(keys) >= lines.length + drawn.length + 1)
    : undefined;
  if (withSketch) return { keys: withSketch, lines, sketch: drawn, rows: lines.length };
  const keys = footersWithKey.find((table) => leaves(table) >= lines.length) ?? bare;
  return { keys, lines, sketch: [], rows: Math.max(1, Math.min(lines.length, leaves(keys))) };
}

function keysFor(props: StepScreenProps, wanted: readonly SessionAction[]): KeyBinding[] {
  const { asked, opened, step } = props;
  const own: KeyBinding[] = [{ keys: ['return'], show: 'Enter', help: enterWords(asked) }];
  if (asked.offered !== null && asked.kind !== 'act')
    own.push({ keys: ['tab'], show: 'Tab', help: 'take over' });
  // A test after the repair needs no way round: the record says that it was not made.
  const canSkip = step.cannot !== null || props.again !== null;
  const shown = wanted.filter((action) => action !== 'cannot' || canSkip);
  // A drill's bench reads volts by itself, and saves pictures.
  const captures =
    takesCapture(step) &&
    (!opened.drill || (step.kind === 'look' && step.probe.kind === 'pattern'));
  const watches = wakesHere(props.session, step);
  return [
    ...own,
    ...usefulKeys(opened, [
      ...shown,
      ...(watches ? (['watch'] as const) : []),
      ...(watches && props.again === null ? (['plan'] as const) : []),
      ...(captures ? (['capture'] as const) : []),
    ]),
  ];
}

function enterWords(asked: Asked): string {
  if (asked.kind === 'act') return asked.enter;
  return asked.kind === 'measure' ? 'confirm' : 'choose';
}
