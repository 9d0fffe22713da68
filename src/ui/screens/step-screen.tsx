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
import { type Paragraph, type TextLine, textBlock } from '../parts/text-block.ts';
import { columnsOf } from '../parts/wrap-words.ts';
import type { DrawingStyle } from '../term/colour.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { type Size, useSize } from '../term/use-size.ts';
import { stepHereWords } from './car-words.ts';
import type { KeyTiming } from './deliberate-state.ts';
import { adviceOf, usefulKeys } from './pages-state.ts';
import { type Asked, notDoubted, takesDigits } from './prompt-state.ts';
import { type PromptRoom, PromptView, promptRows, WHOLE_PROMPT } from './prompt-view.tsx';
import { SESSION_KEYS, type SessionAction } from './session-keys.ts';
import { type StepRoom, type StepText, sessionTitle, soFarWords, stepText } from './step-words.ts';
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
    { takesText: takesDigits(asked) },
  );

  return (
    <Frame
      title={titleOf(props, layout)}
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
      <PromptView
        asked={asked}
        message={props.message}
        bind={opened.bind}
        room={layout.prompt}
        untyped={layout.atPrompt}
      />
    </Frame>
  );
}

/** The procedure's title; where there is no room beside the step's own, the minutes. */
function titleOf({ opened, session, again }: StepScreenProps, { minutes }: StepLayout): string {
  if (again) return 'After the repair';
  const bare = /^ \((.*)\)$/.exec(minutes)?.[1];
  return bare ?? sessionTitle(opened, session);
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

/** Ever less of the prompt, down to where three answers and one line of what a number means are seen. */
const PROMPT_ROOMS: readonly PromptRoom[] = [
  WHOLE_PROMPT,
  ...[6, 5, 4, 3].map((choices) => ({ choices, remark: 1, isSteady: false })),
];

/** What stands on the screen. */
interface StepLayout {
  readonly keys: readonly KeyBinding[];
  readonly lines: readonly TextLine[];
  readonly rows: number;
  readonly sketch: readonly string[];
  readonly prompt: PromptRoom;
  /** Minutes that found no room beside the title of the step, and the limit that stands at the prompt; empty where they did. */
  readonly minutes: string;
  readonly atPrompt: string;
}

interface LaidOut {
  readonly minutes: string;
  readonly isThinking: boolean;
}

/**
 * What fits: leads and limit first, then the sketch, then the rest of the text, which can lie below the fold, then a footer as
 * full as it can be.
 */
function layOut(
  props: StepScreenProps,
  screen: Size,
  look: DrawingStyle,
  asTold: LaidOut,
): StepLayout {
  const { opened, step } = props;
  const { columns } = bodySize(screen, []);
  const block = (paragraphs: readonly (Paragraph | string)[]) =>
    textBlock(paragraphs, columns, look);
  const drawn = opened.sketch(testOf(step), columns);
  const canDraw = drawn.length > 0 && drawn.every((line) => columnsOf(line) <= columns);
  const usual = step.cannot === null ? [...FOOTERS.slice(0, -1), BARE_WITHOUT_CANNOT] : FOOTERS;
  const wanted = props.again ? FOOTERS_AGAIN : usual;
  const footers = wanted.map((actions) => keysFor(props, actions));
  const bare = footers.at(-1) ?? [];
  const leaves = (keys: readonly KeyBinding[], prompt: PromptRoom = WHOLE_PROMPT) =>
    bodySize(screen, keys).rows -
    promptRows(props.asked, props.message, columns, look, opened.bind, prompt);

  const isLong = block(toldIn(props, asTold, 'whole').head.slice(0, 1)).length > 1;
  const told = isLong ? { ...asTold, minutes: '' } : asTold;
  const whole = toldIn(props, told, 'whole');
  const car = props.car === null ? [] : [{ text: props.car, hang: 2 }];
  const all = [
    [...whole.head, ...whole.rest, ...car],
    [...whole.head, ...whole.rest],
  ].map(block);
  const fitting = all.find(({ length }) => length <= leaves(bare));
  const minutes = isLong ? asTold.minutes : '';
  const base = { sketch: [], prompt: WHOLE_PROMPT, minutes, atPrompt: '' };
  if (fitting) {
    const withSketch = canDraw
      ? footers.find((keys) => leaves(keys) >= fitting.length + drawn.length + 1)
      : undefined;
    if (withSketch)
      return { ...base, keys: withSketch, lines: fitting, rows: fitting.length, sketch: drawn };
  }
  // Where something is read the sketch says where; beside a question it takes the room of the text.
  if (canDraw && (step.kind === 'measure' || step.kind === 'look')) {
    const tight = toldIn(props, told, 'tight');
    const rows = leaves(bare) - drawn.length - 1;
    if (block(tight.head).length <= rows - MORE_ROWS)
      return { ...base, keys: bare, lines: block(allOf(tight)), rows, sketch: drawn };
  }
  const withKey = wanted.map((actions) =>
    keysFor(props, drawn.length > 0 ? [...actions, 'sketch'] : actions),
  );
  const full = fitting ?? block(allOf(toldIn(props, told, 'tight')));
  const keys = withKey.find((table) => leaves(table) >= full.length) ?? bare;
  if (full.length <= leaves(keys)) return { ...base, keys, lines: full, rows: full.length };

  const seen = (prompt: PromptRoom) => leaves(bare, prompt) - MORE_ROWS;
  const tight = toldIn(props, told, 'tight');
  if (block(tight.head).length <= seen(WHOLE_PROMPT))
    return { ...base, keys: bare, lines: full, rows: Math.max(1, leaves(bare)) };
  const scarce = toldIn(props, { ...told, minutes: '' }, 'scarce');
  const head = block(scarce.head).length;
  const prompt = PROMPT_ROOMS.find((room) => head <= seen(room)) ?? PROMPT_ROOMS.at(-1)!;
  const lines = block(allOf(scarce));
  const rows = Math.max(1, Math.min(lines.length, leaves(bare, prompt)));
  const { atPrompt } = scarce;
  return { ...base, keys: bare, lines, rows, prompt, minutes: asTold.minutes, atPrompt };
}

/** The line that says how to go on where not all is seen. */
const MORE_ROWS = 1;

function toldIn(
  { opened, session, step, again, changed }: StepScreenProps,
  { minutes, isThinking }: LaidOut,
  room: StepRoom,
): StepText {
  const here = again || isThinking ? '' : stepHereWords(opened, session, step);
  const shown = { here, room, minutes, isThinking };
  const { head, rest, atPrompt } = stepText(opened, session, step, again, shown);
  const last =
    changed === null ? [] : [{ text: '' }, { text: `Last reading: ${changed}`, hang: 2 }];
  return { head, rest: [...rest, ...last], atPrompt };
}

function allOf({ head, rest }: StepText): Paragraph[] {
  return [...head, ...rest];
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
