/** One line of text being typed: the view. The cursor is an inverse cell, so it needs no colour. */
import { Box } from 'ink';
import { shownText, useLook } from '../term/use-look.ts';
import { Words } from './safe-words.tsx';
import type { TextFieldState } from './text-field-state.ts';
import { columnsOf, graphemesOf, takeColumns } from './wrap-words.ts';

export interface TextFieldProps {
  readonly field: TextFieldState;
  /** Columns, the cursor's cell included. A longer text is shown around the cursor. */
  readonly width: number;
}

/** The text with its cursor. */
export function TextField({ field, width }: TextFieldProps) {
  const look = useLook();
  const signs = graphemesOf(field.text).map((sign) => shownText(sign, look));
  const at = signs[field.cursor] ?? ' ';
  const room = Math.max(1, width);
  // From the left edge, or as much before the cursor as still leaves it in view.
  let from = field.cursor;
  let used = columnsOf(at);
  while (from > 0 && used + columnsOf(signs[from - 1] ?? '') <= room) {
    from--;
    used += columnsOf(signs[from] ?? '');
  }
  const before = signs.slice(from, field.cursor).join('');
  const after = takeColumns(signs.slice(field.cursor + 1).join(''), room - used);
  return (
    <Box width={room} height={1} flexShrink={0} overflowY="hidden">
      {before === '' ? null : <Words>{before}</Words>}
      <Words inverse>{at}</Words>
      {after === '' ? null : <Words>{after}</Words>}
    </Box>
  );
}
