/** One question answered with a line of text: a note, a reason, a folder. */
import { Box } from 'ink';
import { useState } from 'react';
import { useBody } from '../parts/body-size.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { TextField } from '../parts/text-field.tsx';
import {
  overflowWords,
  type TextFieldState,
  textField,
  textFieldAfter,
} from '../parts/text-field-state.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';

/** What a text comes to while it is typed, and whether it can be taken; null for nothing to say. */
export type TextCheck = (text: string) => { readonly ok: boolean; readonly words: string } | null;

export interface TextQuestionProps {
  readonly title: string;
  readonly question: string;
  /** More about it, below the field, a paragraph a line; PgUp and PgDn scroll what is too much. */
  readonly about?: string;
  readonly message: string | null;
  /** Said when Enter comes with nothing typed. */
  readonly empty?: string;
  /** Said below the field while it is typed; what it does not let through is not taken. */
  readonly check?: TextCheck;
  readonly onAnswer: (text: string) => void;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'confirm' },
  { keys: ['escape'], show: 'Esc', help: 'leave it' },
];

/** For what cannot be done. */
export const NO_REASON = "! A reason is needed: type why it can't be done, then press Enter.";
const NOTHING_TYPED = '! Nothing is typed yet: type it, then press Enter; Esc leaves it.';

export function TextQuestion(props: TextQuestionProps) {
  const [field, setField] = useState(textField);
  const [isEmpty, setIsEmpty] = useState(false);
  const [top, setTop] = useState(0);
  const look = useLook();
  const body = bodySize(useSize(), KEYS);
  // An empty field is no mistake yet: the page below it says what to write.
  const typed = field.text.trim();
  const checked = typed === '' ? null : (props.check?.(typed) ?? null);
  const said = checked && (checked.ok ? checked.words : `! ${checked.words}`);
  const message = isEmpty
    ? (props.empty ?? NOTHING_TYPED)
    : (overflowWords(field) ?? said ?? props.message);
  const block = (texts: readonly string[]) => textBlock(texts, body.columns, look);
  const lines = block(props.about?.split('\n') ?? []);
  // Question, field, and a blank line behind each.
  const above =
    block([props.question]).length + 3 + (message === null ? 0 : block([message]).length);
  const rows = Math.max(1, body.rows - above);
  useKeys(
    (event) => {
      const label = keyLabel(event);
      const to = scrollBy(label, { count: lines.length, rows, top, pages: true });
      if (to !== null) return setTop(to);
      if (label === 'escape') return props.onClose();
      const text = field.text.trim();
      setIsEmpty(label === 'return' && text === '');
      if (label !== 'return') return setField(textFieldAfter(field, event));
      if (text !== '' && props.check?.(text)?.ok !== false) props.onAnswer(text);
    },
    { takesText: true },
  );
  return (
    <Frame title={props.title} keys={KEYS}>
      <Words>{props.question}</Words>
      <Words> </Words>
      <Field field={field} />
      <Words> </Words>
      {message === null ? null : <Words bold>{message}</Words>}
      {lines.length === 0 ? null : <ScrollText lines={lines} rows={rows} top={top} />}
    </Frame>
  );
}

function Field({ field }: { field: TextFieldState }) {
  const { columns } = useBody();
  return (
    <Box height={1} flexShrink={0}>
      <Words bold>{'> '}</Words>
      <TextField field={field} width={columns - 2} />
    </Box>
  );
}
