/** Keys are declared once, with their words; the footer, the help page and the dispatch all read the table. */
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { Words } from './safe-words.tsx';
import { columnsOf } from './wrap-words.ts';

/** One key with what the screen says of it. */
export interface KeyBinding {
  /** Labels as `keyLabel` gives them: `return`, `y`, `ctrl-c`, `page-up`. */
  readonly keys: readonly string[];
  /** How the key is called on the screen: `Enter`, `y`, `PgUp/PgDn`. */
  readonly show: string;
  /** What it does, in a word or two; an empty text keeps it out of the footer. */
  readonly help: string;
}

/** The binding of a key press, if it has one. */
export function bindingOf<B extends KeyBinding>(
  event: KeyEvent,
  table: readonly B[],
): B | undefined {
  const label = keyLabel(event);
  return table.find((binding) => binding.keys.includes(label));
}

/** The footer's lines: `[Enter] confirm  [b] back`, never broken inside a hint. */
export function keyHintLines(table: readonly KeyBinding[], width: number): string[] {
  const lines: string[] = [];
  for (const { show, help } of table) {
    if (help === '') continue;
    const hint = `[${show}] ${help}`;
    const last = lines.at(-1);
    if (last !== undefined && columnsOf(last) + 2 + columnsOf(hint) <= width)
      lines[lines.length - 1] = `${last}  ${hint}`;
    else lines.push(hint);
  }
  return lines;
}

/** The footer by itself; `Frame` draws it for you. */
export function KeyHints({ table, width }: { table: readonly KeyBinding[]; width: number }) {
  return (
    <Words width={width} wrap="cut">
      {keyHintLines(table, width).join('\n')}
    </Words>
  );
}
