/** What a capture shows, and whether it is to be the answer. */
import type { CaptureAnswer } from '../../session/capture-step.ts';
import type { StepCapture } from '../../session/events.ts';
import { bodySize } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import type { Paragraph } from '../parts/text-block.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { capturePlot, type PlottedCapture } from './capture-plot.ts';
import { TakePage } from './take-page.tsx';

export interface CaptureScreenProps {
  readonly found: CaptureAnswer;
  /** What Enter does with it. */
  readonly enter: string;
  /** A second file may hold the other signal. */
  readonly wantsSecond: boolean;
  readonly message: string | null;
  readonly clock: () => number;
  readonly onTake: () => void;
  /** Judges another channel; from 0. */
  readonly onChannel: (channel: number) => void;
  /** To the choice of files: another capture, the other channel's, or what it is held against. */
  readonly onFile: (choosing: 'capture' | 'second' | 'against') => void;
  readonly onClose: () => void;
}

const CHANNEL: KeyBinding = { keys: ['c'], show: 'c', help: 'another channel' };
const FILE: KeyBinding = { keys: ['f'], show: 'f', help: 'choose a file' };
const SECOND: KeyBinding = { keys: ['b'], show: 'b', help: 'second file' };
const GOOD: KeyBinding = { keys: ['g'], show: 'g', help: 'known-good' };
const LEAVE: KeyBinding = { keys: ['escape'], show: 'Esc', help: 'leave it' };

/** The screen: words first, the answer in bold, then the picture. Mount it anew for each channel. */
export function CaptureScreen(props: CaptureScreenProps) {
  const { found } = props;
  const { channels } = found;
  const look = useLook();
  const { columns } = bodySize(useSize(), []);
  return (
    <TakePage
      title="The capture"
      aside="nothing is saved yet"
      paragraphs={[
        ...wordsOf(found),
        ...(found.ok ? plotOf(found.capture, columns, look.ascii) : []),
      ]}
      message={props.message}
      clock={props.clock}
      enter={found.ok ? props.enter : null}
      onTake={props.onTake}
      keys={[
        ...(channels ? [CHANNEL] : []),
        FILE,
        ...(props.wantsSecond ? [SECOND] : []),
        GOOD,
        LEAVE,
      ]}
      onKey={(binding) => {
        if (binding === FILE) props.onFile('capture');
        else if (binding === SECOND) props.onFile('second');
        else if (binding === GOOD) props.onFile('against');
        else if (binding === LEAVE) props.onClose();
        else if (channels) props.onChannel((channels.judged + 1) % channels.names.length);
      }}
    />
  );
}

function wordsOf(found: CaptureAnswer): Paragraph[] {
  if (found.ok)
    return found.lines.map((text, index) => ({
      text,
      hang: 2,
      bold: index === found.lines.length - 1,
    }));
  const { channels, lines = [] } = found;
  if (lines.length > 0)
    return [
      ...lines.map((text) => ({ text, hang: 2 })),
      { text: `! ${found.words}`, bold: true },
      { text: found.fix },
    ];
  return [
    ...(channels
      ? [
          {
            text: `Judged channel: ${channels.judged + 1} of ${channels.names.length}, ${channels.names[channels.judged] ?? ''}`,
          },
        ]
      : []),
    { text: `! ${found.words}`, bold: true },
    { text: found.fix },
  ];
}

function plotOf(capture: StepCapture, width: number, ascii: boolean): (Paragraph | string)[] {
  const drawn = (of: PlottedCapture) =>
    capturePlot(of, width, ascii).map((text) => ({ text, drawn: true }));
  const { against } = capture;
  return [
    '',
    ...drawn(capture),
    ...(against?.kind === 'good'
      ? ['', { text: `Known-good: ${against.name}`, bold: true }, ...drawn(against)]
      : []),
  ];
}
