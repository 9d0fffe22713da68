/** What a capture shows, and whether it is to answer the step. */
import { Box } from 'ink';
import { useState } from 'react';
import type { CaptureAnswer } from '../../session/capture-step.ts';
import { captureOfEnvelopes } from '../../waveform/envelope.ts';
import { plotText } from '../../waveform/plot-text.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';

export interface CaptureScreenProps {
  readonly found: Extract<CaptureAnswer, { ok: true }>;
  readonly message: string | null;
  readonly onTake: () => void;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'take it as the answer' },
  { keys: ['escape'], show: 'Esc', help: 'leave it' },
];
const PLOT_ROWS = 6;

/** The screen: words first, the answer in bold, then the picture. */
export function CaptureScreen({ found, message, onTake, onClose }: CaptureScreenProps) {
  const look = useLook();
  const body = bodySize(useSize(), KEYS);
  const [top, setTop] = useState(0);
  const lines = textBlock(
    [
      ...found.lines.map((text, index) => ({
        text,
        hang: 2,
        bold: index === found.lines.length - 1,
      })),
      '',
      ...plotOf(found, body.columns, look.ascii).map((text) => ({ text, drawn: true })),
    ],
    body.columns,
    look,
  );
  const rows = Math.max(1, body.rows - (message === null ? 0 : 1));
  useKeys((event) => {
    const key = bindingOf(event, KEYS)?.keys[0];
    if (key === 'return') return onTake();
    if (key === 'escape') return onClose();
    const to = scrollBy(keyLabel(event), { count: lines.length, rows, top, pages: true });
    if (to !== null) setTop(to);
  });
  return (
    <Frame title="The capture" aside="nothing is saved yet" keys={KEYS}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      {message === null ? null : <Words bold>{message}</Words>}
    </Frame>
  );
}

function plotOf({ capture }: CaptureScreenProps['found'], width: number, ascii: boolean): string[] {
  const { rateHz, startSeconds, channels } = captureOfEnvelopes(capture.channels.slice(0, 1));
  return channels.flatMap((channel) =>
    plotText(channel, { width, rows: PLOT_ROWS, ascii, rateHz, startSeconds }),
  );
}
