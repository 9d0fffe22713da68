/** Cautions, alone on the screen, until a deliberate `y` says that they were read. */
import { Box } from 'ink';
import { useState } from 'react';
import { inShort } from '../../procedure/in-short.ts';
import { type Caution, SIGNAL_WORDS, type SignalWord } from '../../procedure/procedure.ts';
import { BIG_ROWS, bigWords } from '../parts/big-words.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { type Colour, Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { type Paragraph, textBlock } from '../parts/text-block.ts';
import { windowRows } from '../parts/window-state.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { useKeyTiming } from './use-key-timing.ts';

export interface CautionScreenProps<B extends KeyBinding> {
  readonly cautions: readonly Caution[];
  /** Ids of those that were read in full before: they stand in short, behind what is new. */
  readonly read: ReadonlySet<string>;
  readonly aside: string;
  /** What comes after it, in words: `before step 3, engine running`. */
  readonly before: string;
  /** Why the last command was refused, or what it did. */
  readonly message: string | null;
  readonly clock: () => number;
  readonly onAcknowledge: () => void;
  /** Keys that work here besides `y`. */
  readonly keys: readonly B[];
  readonly onKey: (binding: B) => void;
}

const YES: KeyBinding = { keys: ['y'], show: 'y', help: 'I have read this and it is so' };

const COLOURS: Readonly<Record<SignalWord, Colour | undefined>> = {
  DANGER: 'red',
  WARNING: 'red',
  CAUTION: 'magenta',
  NOTICE: undefined,
};

/** The screen. Mount it anew (`key`) for each set of cautions. */
export function CautionScreen<B extends KeyBinding>(props: CautionScreenProps<B>) {
  const { cautions, clock, onAcknowledge, onKey } = props;
  const look = useLook();
  const timing = useKeyTiming(clock);
  const [top, setTop] = useState(0);
  const [seen, setSeen] = useState(0);
  const [remark, setRemark] = useState('');
  const keys = [YES, ...props.keys];
  const body = bodySize(useSize(), keys);
  const word = gravest(cautions);
  const lines = textBlock(cautionParagraphs(props, word), body.columns, look);
  // One row between word and text, one below the text for the remark.
  const isTall = body.rows >= BIG_ROWS + 2 + lines.length;
  const head = isTall ? bigWords(word, look.ascii) : [`!!!   ${[...word].join(' ')}   !!!`];
  const rows = Math.max(1, body.rows - head.length - 2);
  const end = Math.max(seen, Math.min(lines.length, top + windowRows(lines.length, rows)));

  useKeys((event) => {
    const { isDeliberate } = timing(event);
    const label = keyLabel(event);
    const to = scrollBy(label, { count: lines.length, rows, top });
    if (to !== null) {
      setTop(to);
      setSeen(end);
      setRemark('');
      return;
    }
    const binding = bindingOf(event, props.keys);
    if (binding) return onKey(binding);
    if (!YES.keys.includes(label)) {
      if (label === 'return') setRemark('Enter is not enough here: press y once you have read it.');
      return;
    }
    if (!isDeliberate) setRemark('That y came too fast: read it first, then press y.');
    else if (end < lines.length) setRemark('There is more below: PgDn to the end, then press y.');
    else onAcknowledge();
  });

  return (
    <Frame title="Before you go on" aside={props.aside} keys={keys}>
      <Box flexDirection="column" flexShrink={0}>
        <Words bold colour={COLOURS[word]} wrap="cut">
          {head.join('\n')}
        </Words>
        <Words> </Words>
      </Box>
      <ScrollText lines={lines} rows={rows} top={top} />
      <Box flexGrow={1} />
      <Words bold wrap="cut">
        {remark || props.message || ' '}
      </Words>
    </Frame>
  );
}

/** The gravest signal word among them. */
function gravest(cautions: readonly Caution[]): SignalWord {
  return SIGNAL_WORDS.find((word) => cautions.some((caution) => caution.word === word)) ?? 'NOTICE';
}

function cautionParagraphs(
  { cautions, read, before }: Pick<CautionScreenProps<KeyBinding>, 'cautions' | 'read' | 'before'>,
  word: SignalWord,
): Paragraph[] {
  const sorted = SIGNAL_WORDS.flatMap((one) => cautions.filter((caution) => caution.word === one));
  const fresh = sorted.filter(({ id }) => !read.has(id));
  const known = sorted.filter(({ id }) => read.has(id));
  return [
    ...fresh.map((caution) => ({
      text: sorted.length === 1 ? caution.say : `${caution.word}: ${caution.say}`,
      bold: caution.word === word,
      hang: sorted.length === 1 ? 0 : 2,
    })),
    ...(known.length > 0 ? [{ text: 'Read before; the same applies here:' }] : []),
    ...known.map((caution) => ({ text: inShort(caution), bold: caution.word === word, hang: 2 })),
    { text: '' },
    { text: before },
    { text: "The maker's procedure, local rules and qualified practice come first." },
  ];
}
