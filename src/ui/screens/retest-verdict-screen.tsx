/** What the tests after the repair say, before the record is closed with it. */
import { useState } from 'react';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { useKeyTiming } from './use-key-timing.ts';

export interface RetestVerdictScreenProps {
  readonly paragraphs: readonly Paragraph[];
  readonly message: string | null;
  readonly clock: () => number;
  readonly onTake: () => void;
  /** The last test once more. */
  readonly onBack: () => void;
  readonly onClose: () => void;
}

const TAKE: KeyBinding = { keys: ['return'], show: 'Enter', help: 'close the record with it' };
const BACK: KeyBinding = { keys: ['f2', 'ctrl-b'], show: 'F2', help: 'the last test again' };
const LATER: KeyBinding = { keys: ['escape', 'f10', 'ctrl-g'], show: 'Esc', help: 'not yet' };
const KEYS = [TAKE, BACK, LATER];

/** The screen. A closed record stays closed, so an Enter typed ahead does not count. */
export function RetestVerdictScreen(props: RetestVerdictScreenProps) {
  const look = useLook();
  const body = bodySize(useSize(), KEYS);
  const timing = useKeyTiming(props.clock);
  const [top, setTop] = useState(0);
  const [remark, setRemark] = useState<string | null>(null);
  const note = remark ?? props.message;
  const lines = textBlock(props.paragraphs, body.columns, look);
  const rows = Math.max(1, body.rows - (note === null ? 0 : 1));

  useKeys((event) => {
    const { isDeliberate } = timing();
    const to = scrollBy(keyLabel(event), { count: lines.length, rows, top });
    if (to !== null) return setTop(to);
    switch (bindingOf(event, KEYS)) {
      case TAKE:
        return isDeliberate
          ? props.onTake()
          : setRemark('That Enter came too quickly: read this, then press Enter.');
      case BACK:
        return props.onBack();
      case LATER:
        return props.onClose();
    }
  });

  return (
    <Frame title="After the repair" keys={KEYS}>
      <ScrollText lines={lines} rows={rows} top={top} />
      {note === null ? null : (
        <Words bold wrap="cut">
          {note}
        </Words>
      )}
    </Frame>
  );
}
