/** What a capture shows, and whether it is to be the answer. */
import { Box } from 'ink';
import { useState } from 'react';
import type { CaptureAnswer } from '../../session/capture-step.ts';
import type { StepCapture } from '../../session/events.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { capturePlot } from './capture-plot.ts';

export interface CaptureScreenProps {
  readonly found: CaptureAnswer;
  readonly message: string | null;
  readonly onTake: () => void;
  /** Judges another channel; from 0. */
  readonly onChannel: (channel: number) => void;
  /** To the choice of files. */
  readonly onFile: () => void;
  readonly onClose: () => void;
}

const TAKE: KeyBinding = { keys: ['return'], show: 'Enter', help: 'take it as the answer' };
const CHANNEL: KeyBinding = { keys: ['c'], show: 'c', help: 'another channel' };
const FILE: KeyBinding = { keys: ['f'], show: 'f', help: 'choose a file' };
const LEAVE: KeyBinding = { keys: ['escape'], show: 'Esc', help: 'leave it' };

/** The screen: words first, the answer in bold, then the picture. */
export function CaptureScreen(props: CaptureScreenProps) {
  const { found, message } = props;
  const { channels } = found;
  const look = useLook();
  const keys = [...(found.ok ? [TAKE] : []), ...(channels ? [CHANNEL] : []), FILE, LEAVE];
  const body = bodySize(useSize(), keys);
  const [top, setTop] = useState(0);
  const lines = textBlock(
    [...wordsOf(found), ...(found.ok ? plotOf(found.capture, body.columns, look.ascii) : [])],
    body.columns,
    look,
  );
  const rows = Math.max(1, body.rows - (message === null ? 0 : 1));
  useKeys((event) => {
    const binding = bindingOf(event, keys);
    if (binding === TAKE) return props.onTake();
    if (binding === CHANNEL && channels) {
      setTop(0);
      return props.onChannel((channels.judged + 1) % channels.names.length);
    }
    if (binding === FILE) return props.onFile();
    if (binding === LEAVE) return props.onClose();
    const to = scrollBy(keyLabel(event), { count: lines.length, rows, top, pages: true });
    if (to !== null) setTop(to);
  });
  return (
    <Frame title="The capture" aside="nothing is saved yet" keys={keys}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      {message === null ? null : <Words bold>{message}</Words>}
    </Frame>
  );
}

function wordsOf(found: CaptureAnswer): Paragraph[] {
  if (found.ok)
    return found.lines.map((text, index) => ({
      text,
      hang: 2,
      bold: index === found.lines.length - 1,
    }));
  const { channels } = found;
  return [
    ...(channels
      ? [
          {
            text: `Judged is channel ${channels.judged + 1} of ${channels.names.length}: ${channels.names[channels.judged] ?? ''}`,
          },
        ]
      : []),
    { text: `! ${found.words}`, bold: true },
    { text: found.fix },
  ];
}

function plotOf(capture: StepCapture, width: number, ascii: boolean): (Paragraph | string)[] {
  return ['', ...capturePlot(capture, width, ascii).map((text) => ({ text, drawn: true }))];
}
