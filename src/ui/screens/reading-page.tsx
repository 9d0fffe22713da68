/** A page to read: the wiring, the keys, why something did not work. */
import { useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';

export interface ReadingPageProps {
  readonly title: string;
  readonly paragraphs: readonly (Paragraph | string)[];
  /** The keys that opened it close it too. */
  readonly openedBy?: readonly string[];
  readonly onClose: () => void;
}

const CLOSE: KeyBinding = { keys: ['return', 'escape'], show: 'Enter', help: 'close' };
const SIDEWAYS: KeyBinding = { keys: ['left', 'right'], show: 'Left/Right', help: 'move it' };

/** The page; a drawing wider than the room moves with Left and Right. */
export function ReadingPage({ title, paragraphs, openedBy = [], onClose }: ReadingPageProps) {
  const look = useLook();
  const body = bodySize(useSize(), [CLOSE]);
  const [top, setTop] = useState(0);
  const [left, setLeft] = useState(0);
  const block = textBlock(paragraphs, body.columns, look);
  const widest = Math.max(...block.map(({ text }) => text.length), 0);
  const keys = widest > body.columns ? [CLOSE, SIDEWAYS] : [CLOSE];
  const lines = block.map((line) => ({ ...line, text: line.text.slice(left) }));

  useKeys((event) => {
    const label = keyLabel(event);
    if (CLOSE.keys.includes(label) || openedBy.includes(label)) return onClose();
    const by = label === 'right' ? 4 : label === 'left' ? -4 : 0;
    if (by !== 0)
      return setLeft(Math.max(0, Math.min(left + by, Math.max(0, widest - body.columns))));
    const to = scrollBy(label, { count: lines.length, rows: body.rows, top });
    if (to !== null) setTop(to);
  });

  return (
    <Frame title={title} keys={keys}>
      <ScrollText lines={lines} rows={body.rows} top={top} />
    </Frame>
  );
}
