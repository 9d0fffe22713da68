/** Choosing one line of a list that typing narrows down: the rules, without React. */
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { type TextFieldState, textField, textFieldAfter } from './text-field-state.ts';
import { windowTop } from './window-state.ts';

export interface PickItem {
  /** The row. */
  readonly text: string;
  /** What else the filter finds it by. */
  readonly also?: string;
}

export interface PickList {
  readonly filter: TextFieldState;
  /** Position among the lines that match. */
  readonly chosen: number;
  readonly top: number;
}

/** Nothing typed, the first line chosen. */
export const PICK_LIST: PickList = { filter: textField(), chosen: 0, top: 0 };

/** Items that hold every typed word, in their order. */
export function matching<I extends PickItem>(items: readonly I[], filter: string): I[] {
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  return items.filter(({ text, also }) => {
    const within = `${text} ${also ?? ''}`.toLowerCase();
    return words.every((word) => within.includes(word));
  });
}

/** The chosen item, or null when nothing matches. */
export function chosenItem<I extends PickItem>(items: readonly I[], list: PickList): I | null {
  return matching(items, list.filter.text)[list.chosen] ?? null;
}

/** The list after a key; the same object if the key is none of its own (Enter, Escape). `typing: false` leaves letters alone. */
export function pickListAfter(
  list: PickList,
  event: KeyEvent,
  context: { items: readonly PickItem[]; rows: number; typing?: boolean },
): PickList {
  const count = matching(context.items, list.filter.text).length;
  const label = keyLabel(event);
  const page = Math.max(1, context.rows - 2);
  const moves: Readonly<Record<string, number>> = {
    up: list.chosen - 1,
    down: list.chosen + 1,
    'page-up': list.chosen - page,
    'page-down': list.chosen + page,
    home: 0,
    end: count - 1,
  };
  const to = moves[label];
  if (to !== undefined) {
    const chosen = Math.max(0, Math.min(to, count - 1));
    if (chosen === list.chosen) return list;
    return {
      ...list,
      chosen,
      top: windowTop({ count, rows: context.rows, top: list.top, keep: chosen }),
    };
  }
  if (context.typing === false) return list;
  const filter = textFieldAfter(list.filter, event);
  return filter === list.filter ? list : { filter, chosen: 0, top: 0 };
}
