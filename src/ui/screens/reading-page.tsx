/** A page to read over the session: the wiring, the keys. */
import { useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { SESSION_KEYS } from './session-keys.ts';

export interface ReadingPageProps {
  readonly title: string;
  readonly paragraphs: readonly (Paragraph | string)[];
  readonly onClose: () => void;
}

const CLOSE: KeyBinding = {
  keys: ['return', 'escape', '?', 'f1', 'f8', 'f11'],
  show: 'Enter',
  help: 'close',
};
const SIDEWAYS: KeyBinding = { keys: ['left', 'right'], show: 'Left/Right', help: 'move it' };

/** The page; a drawing wider than the room moves with Left and Right. */
export function ReadingPage({ title, paragraphs, onClose }: ReadingPageProps) {
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
    if (CLOSE.keys.includes(label)) return onClose();
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

/** The keys of a session, from the one table. */
export function helpParagraphs(): Paragraph[] {
  return [
    ...SESSION_KEYS.map(({ show, other, help, words }) =>
      keyLine(`${show}, ${other}`, `${help.charAt(0).toUpperCase()}${help.slice(1)}. ${words}`),
    ),
    { text: '' },
    ...OTHER_KEYS.map(([key, words]) => keyLine(key, words)),
    { text: '' },
    {
      text: 'Readings may be typed as the meter shows them: 4.97, 4,97 V, 18 mV, 2k2, OL. The small m is a thousandth, the capital M a million.',
    },
  ];
}

const OTHER_KEYS: readonly (readonly [string, string])[] = [
  ['Enter', 'Takes the reading, chooses the marked line, or says that it is done.'],
  ['1 to 9', 'Choose a line of a list at once.'],
  ['Tab', 'Takes over what a simulated vehicle shows.'],
  ['PgUp, PgDn', 'Scroll a long text.'],
  ['Esc', 'Empties the field; closes a page.'],
  ['Ctrl+W', 'Takes away the last word of a field.'],
  ['Ctrl+C', 'Leaves at once. Everything answered is saved.'],
];

const KEY_COLUMNS = 12;

/** The spaces between are fixed ones, which wrapping keeps. */
function keyLine(key: string, words: string): Paragraph {
  return { text: `${key}${'\u00a0'.repeat(KEY_COLUMNS - key.length)}${words}`, hang: KEY_COLUMNS };
}
