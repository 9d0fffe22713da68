/** What was found, to be read from top to bottom before Enter takes it: an Enter typed ahead does not count. */
import { Box } from 'ink';
import { useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { wrapWords } from '../parts/wrap-words.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { useKeyTiming } from './use-key-timing.ts';

export interface TakePageProps<B extends KeyBinding> {
  readonly title: string;
  readonly aside?: string;
  readonly paragraphs: readonly (Paragraph | string)[];
  /** Why the last command was refused, or what it did; null for neither. */
  readonly message: string | null;
  readonly clock: () => number;
  /** What Enter does, in a word or two; null where there is nothing to take. */
  readonly enter: string | null;
  /** Why Enter does not count yet, as a sentence; null when it does. */
  readonly notYet?: string | null;
  readonly onTake: () => void;
  /** Keys that work here besides Enter. */
  readonly keys: readonly B[];
  readonly onKey: (binding: B) => void;
  /** Those of them that take what is on the page, too, and so not by a key held down. */
  readonly needsPause?: readonly NoInfer<B>[];
}

/** The page; mount it anew (`key`) when there is something else to read. */
export function TakePage<B extends KeyBinding>(props: TakePageProps<B>) {
  const { enter, notYet = null, keys: others } = props;
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  const [top, setTop] = useState(0);
  const [remark, setRemark] = useState<string | null>(null);
  const take = enter === null ? [] : [{ keys: ['return'], show: 'Enter', help: enter }];
  const keys = [...take, ...others];
  const body = bodySize(useSize(), keys);
  const lines = textBlock(props.paragraphs, body.columns, look);
  const note = remark ?? props.message;
  const notes = note === null ? [] : wrapWords(shownText(note, look), body.columns);
  const rows = Math.max(1, body.rows - notes.length);

  useKeys((event) => {
    const { isDeliberate } = timing(event);
    const label = keyLabel(event);
    setRemark(null);
    const to = scrollBy(label, { count: lines.length, rows, top });
    if (to !== null) return setTop(to);
    if (label === 'return' && enter !== null) {
      if (notYet !== null) setRemark(notYet);
      else if (isDeliberate) props.onTake();
      else setRemark('That Enter came too fast: read this, then press Enter.');
      return;
    }
    const binding = bindingOf(event, others);
    if (!binding) return;
    if (props.needsPause?.includes(binding) && !isDeliberate)
      setRemark('That key came too fast: read this, then press it.');
    else props.onKey(binding);
  });

  return (
    <Frame title={props.title} aside={props.aside ?? ''} keys={keys}>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      {notes.length === 0 ? null : <Words bold>{notes.join('\n')}</Words>}
    </Frame>
  );
}
