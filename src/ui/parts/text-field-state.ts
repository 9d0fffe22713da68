/** One line of text being typed: the rules, without React. */
import type { KeyEvent } from '../term/key-decoder.ts';
import { graphemesOf } from './wrap-words.ts';

/** What stands in the field, and where typing goes on. */
export interface TextFieldState {
  readonly text: string;
  /** Where the next sign goes, counted in visible signs from the left. */
  readonly cursor: number;
  /** Signs that found no room since the field was last cut or moved in: a long paste comes in pieces. Missing when all did. */
  readonly left?: number;
}

/** Signs one field takes: two pages of a note. */
const SIGNS_MAX = 4000;

/** What is said while the field had no room for all that was typed or pasted; null when it had. */
export function overflowWords({ left = 0 }: TextFieldState): string | null {
  if (left === 0) return null;
  const signs = left === 1 ? '1 character was' : `${left} characters were`;
  return `! ${signs} too many: a field holds ${SIGNS_MAX}. The rest is kept.`;
}

/** A field holding `text`, the cursor behind it. */
export function textField(text = ''): TextFieldState {
  return { text, cursor: graphemesOf(text).length };
}

/** The field after a key; the very same object if the key is none of its own (Enter, Escape, Up and so on). */
export function textFieldAfter(state: TextFieldState, event: KeyEvent): TextFieldState {
  if (event.kind === 'paste')
    return inserted(state, event.isPiece ? event.text : oneLine(event.text), event.cut);
  if (event.alt) return state;
  if (event.ctrl) return event.name === 'text' ? edited(state, event.text) : state;
  const signs = graphemesOf(state.text);
  const { cursor } = state;
  switch (event.name) {
    case 'text':
      return inserted(state, event.text);
    case 'backspace':
      return cursor === 0 ? state : cutOut(signs, cursor - 1, cursor);
    case 'delete':
      return cursor >= signs.length ? state : cutOut(signs, cursor, cursor + 1);
    case 'left':
      return moved(state, Math.max(0, cursor - 1));
    case 'right':
      return moved(state, Math.min(signs.length, cursor + 1));
    case 'home':
      return moved(state, 0);
    case 'end':
      return moved(state, signs.length);
    default:
      return state;
  }
}

/** The shell's editing keys. */
function edited(state: TextFieldState, letter: string): TextFieldState {
  const signs = graphemesOf(state.text);
  const { cursor } = state;
  if (letter === 'u') return cursor === 0 ? state : cutOut(signs, 0, cursor);
  if (letter === 'k') return cursor >= signs.length ? state : cutOut(signs, cursor, signs.length);
  if (letter === 'd') return cursor >= signs.length ? state : cutOut(signs, cursor, cursor + 1);
  if (letter === 'a') return moved(state, 0);
  if (letter === 'e') return moved(state, signs.length);
  if (letter !== 'w' || cursor === 0) return state;
  let from = cursor;
  while (from > 0 && signs[from - 1] === ' ') from--;
  while (from > 0 && signs[from - 1] !== ' ') from--;
  return cutOut(signs, from, cursor);
}

function moved(state: TextFieldState, cursor: number): TextFieldState {
  return cursor === state.cursor ? state : { text: state.text, cursor };
}

function cutOut(signs: readonly string[], from: number, to: number): TextFieldState {
  return { text: [...signs.slice(0, from), ...signs.slice(to)].join(''), cursor: from };
}

/**
 * As much of the addition as finds room; `cut` signs of it were lost before. A typed mark joins the sign before it, so
 * the cursor is counted anew.
 */
function inserted(state: TextFieldState, addition: string, cut = 0): TextFieldState {
  if (addition === '') return state;
  const signs = graphemesOf(state.text);
  const [start, end] = [signs.slice(0, state.cursor).join(''), signs.slice(state.cursor).join('')];
  const adding = graphemesOf(addition);
  const isMark = graphemesOf(start + addition + end).length <= signs.length;
  const room = isMark ? adding.length : Math.max(0, SIGNS_MAX - signs.length);
  const before = start + adding.slice(0, room).join('');
  const over = cut + Math.max(0, adding.length - room);
  const left = over === 0 ? 0 : over + (state.left ?? 0);
  return {
    text: before + end,
    cursor: graphemesOf(before).length,
    ...(left === 0 ? {} : { left }),
  };
}

/** A pasted text as one line: line ends and tabs as spaces, other controls left out, nothing at either end. */
function oneLine(text: string): string {
  return text
    .replace(/[\n\t]+/g, ' ')
    .replace(/\p{Cc}/gu, '')
    .trim();
}
