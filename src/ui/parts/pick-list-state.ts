/** Choosing one line of a list that typing narrows down: the rules, without React. */
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { type TextFieldState, textField, textFieldAfter } from './text-field-state.ts';
import { windowTop } from './window-state.ts';

/** One line that can be chosen. */
export interface PickItem {
  /** The row. */
  readonly text: string;
  /** What else the filter finds it by. */
  readonly also?: string;
}

/** What was typed, which line is marked, and where the window stands. */
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
  if (words.length === 0) return [...items];
  return items.filter(({ text, also }) => {
    const within = `${text} ${also ?? ''}`.toLowerCase();
    return words.every((word) => within.includes(word));
  });
}

/**
 * The same, the closest first: the very words or name, then what begins with them, then what holds them together (the
 * earlier the closer), then what has a word that begins with each of them. Else in their order.
 */
export function closestFirst<I extends PickItem>(items: readonly I[], filter: string): I[] {
  const found = matching(items, filter);
  const phrase = plainWords(filter);
  if (phrase === '') return found;
  const distances = new Map(found.map((item) => [item, distanceTo(item, phrase)]));
  return found.sort((a, b) => distances.get(a)! - distances.get(b)!);
}

function plainWords(text: string): string {
  return text.toLowerCase().trim().replace(/\s+/g, ' ').replace(/[.]$/, '');
}

const TOGETHER = 2;
const APART = 1e6;

function distanceTo({ text, also = '' }: PickItem, phrase: string): number {
  const whole = [text, also].map(plainWords);
  if (whole.includes(phrase)) return 0;
  if (whole.some((one) => one.startsWith(phrase))) return 1;
  const place = wordPlace(whole[0]!, phrase);
  if (place >= 0) return TOGETHER + place;
  const all = whole.join(' ');
  return phrase.split(' ').every((word) => wordPlace(all, word) >= 0) ? APART : APART + 1;
}

/** Where `words` stand at the beginning of a word; -1 for nowhere. */
function wordPlace(text: string, words: string): number {
  for (let at = text.indexOf(words); at >= 0; at = text.indexOf(words, at + 1))
    if (at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]!)) return at;
  return -1;
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
