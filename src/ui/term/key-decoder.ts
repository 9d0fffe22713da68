/**
 * Bytes from a terminal, cut anywhere, to whole keys. Pure: no clock, no stream.
 *
 * A terminal promises nothing about how its bytes are grouped: a meter in keyboard mode sends `12.4` and
 * Enter in one piece, a slow line cuts an arrow key in two. So this is a state machine over code points
 * (ECMA-48 for the shape of sequences); what it does not know it drops, whole.
 */

/** Keys that carry a name and not a sign. */
export type KeyName =
  | 'return'
  | 'escape'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'page-up'
  | 'page-down'
  | 'home'
  | 'end'
  | 'backspace'
  | 'delete'
  | 'insert'
  | 'tab'
  | 'shift-tab'
  | 'f1'
  | 'f2'
  | 'f3'
  | 'f4'
  | 'f5'
  | 'f6'
  | 'f7'
  | 'f8'
  | 'f9'
  | 'f10'
  | 'f11'
  | 'f12';

/** One key: a named one (`text` is empty) or one typed code point (`name` is `text`). Ctrl+C is text `c` with `ctrl`. */
export interface KeyPress {
  readonly kind: 'key';
  readonly name: KeyName | 'text';
  readonly text: string;
  readonly ctrl: boolean;
  readonly alt: boolean;
}

/** What came between the marks of a bracketed paste; line ends as `\n`, otherwise as pasted. */
export interface Paste {
  readonly kind: 'paste';
  /** Keys that came too fast for a hand, as a piece of what may go on: blanks at its ends are typed ones. */
  readonly isPiece?: true;
  readonly text: string;
  /** Code points of a very long one that are not in `text`. */
  readonly cut?: number;
}

/** One key, or a whole paste. */
export type KeyEvent = KeyPress | Paste;

/** What an unfinished input is: how long to wait for its rest is the caller's affair. */
export type Pending = 'escape' | 'sequence' | 'paste';

/** Takes bytes in and gives whole keys out. */
export interface KeyDecoder {
  /** The keys completed by these bytes. */
  push(bytes: Uint8Array): KeyEvent[];
  /** What still waits for more bytes, or null. */
  readonly pending: Pending | null;
  /** Nothing more came: a lone escape is the Escape key, an unfinished sequence is dropped, a paste ends. */
  flush(): KeyEvent[];
}

/** The name a key table uses: `return`, `y`, `ctrl-c`, `alt-up`, `paste`. */
export function keyLabel(event: KeyEvent): string {
  if (event.kind === 'paste') return 'paste';
  const base = event.name !== 'text' ? event.name : event.text === ' ' ? 'space' : event.text;
  return `${event.ctrl ? 'ctrl-' : ''}${event.alt ? 'alt-' : ''}${base}`;
}

/** A pasted text longer than this many code points is cut, and says by how much; no field takes more. */
const PASTE_MAX = 65_536;

/** A key's sequence is far shorter; what is longer is consumed to its end but not kept. */
const PARAMETERS_MAX = 32;

const ESC = 0x1b;

const FINAL_KEYS: Readonly<Record<string, KeyName>> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  F: 'end',
  H: 'home',
  P: 'f1',
  Q: 'f2',
  R: 'f3',
  S: 'f4',
};

const TILDE_KEYS: Readonly<Record<string, KeyName>> = {
  1: 'home',
  2: 'insert',
  3: 'delete',
  4: 'end',
  5: 'page-up',
  6: 'page-down',
  7: 'home',
  8: 'end',
  11: 'f1',
  12: 'f2',
  13: 'f3',
  14: 'f4',
  15: 'f5',
  17: 'f6',
  18: 'f7',
  19: 'f8',
  20: 'f9',
  21: 'f10',
  23: 'f11',
  24: 'f12',
};

/** Keypad signs in application mode: SS3 `j` to `y` stand for `*` to `9`. */
const KEYPAD = /^[j-y]$/;

const PASTE_END = '\x1b[201~';

type State = 'ground' | 'escape' | 'csi' | 'console' | 'ss3' | 'string' | 'string-escape' | 'paste';

/** A decoder of terminal input, with nothing received yet. */
export function createKeyDecoder(): KeyDecoder {
  // ignoreBOM keeps U+FEFF as the sign it is; broken UTF-8 becomes U+FFFD, which the field shows.
  const utf8 = new TextDecoder('utf-8', { ignoreBOM: true });
  let state: State = 'ground';
  let events: KeyEvent[] = [];
  let alt = false; // an escape stood before the escape of this sequence
  let held = ''; // the sequence since its introducer
  let introducer = '';
  let afterReturn = false;
  let paste: string[] = [];
  let pasteCut = 0;
  let pasteTail = '';

  const named = (name: KeyName, ctrl = false, withAlt = false) =>
    events.push({ kind: 'key', name, text: '', ctrl, alt: withAlt });
  const typed = (text: string, ctrl: boolean, withAlt: boolean) =>
    events.push({ kind: 'key', name: 'text', text, ctrl, alt: withAlt });

  const rest = () => {
    state = 'ground';
    alt = false;
    held = '';
  };

  function ground(sign: string, point: number, withAlt: boolean): void {
    const lineFeedOfReturn = point === 0x0a && afterReturn;
    afterReturn = point === 0x0d;
    if (lineFeedOfReturn) return; // CR LF is one Enter: a second would answer the next question
    if (point === 0x0d || point === 0x0a) named('return', false, withAlt);
    else if (point === 0x09) named('tab', false, withAlt);
    else if (point === 0x7f || point === 0x08) named('backspace', false, withAlt);
    else if (point === 0x00) typed(' ', true, withAlt);
    else if (point <= 0x1a) typed(String.fromCodePoint(point + 0x60), true, withAlt);
    else if (point < 0x20) typed(String.fromCodePoint(point + 0x40), true, withAlt);
    else if (point < 0x80 || point > 0x9f) typed(sign, false, withAlt);
  }

  function afterEscape(sign: string, point: number): void {
    if (point === ESC) {
      if (alt) named('escape');
      alt = true;
      return;
    }
    const next: State | null =
      sign === '[' ? 'csi' : sign === 'O' ? 'ss3' : ']PX^_'.includes(sign) ? 'string' : null;
    if (next) {
      state = next;
      introducer = sign;
      held = '';
      return;
    }
    if (alt) named('escape');
    rest();
    ground(sign, point, true);
  }

  /** A sign that cannot belong to the sequence ends it; an introducer alone was Alt with that sign. */
  function breakOff(sign: string, point: number): void {
    if (held === '') typed(introducer, false, true);
    rest();
    if (point !== 0x18 && point !== 0x1a) step(sign, point);
  }

  /** Keeps a parameter; `!` in front says that there were too many for any key. */
  function hold(sign: string): void {
    held = held.length < PARAMETERS_MAX ? held + sign : `!${held.slice(1)}`;
  }

  function csi(sign: string, point: number): void {
    if (point >= 0x20 && point <= 0x3f) {
      hold(sign);
      return;
    }
    if (point < 0x40 || point > 0x7e) {
      breakOff(sign, point);
      return;
    }
    if (sign === '[' && held === '') {
      state = 'console';
      return;
    }
    const parameters = held;
    const withAlt = alt;
    rest();
    if (parameters === '200' && sign === '~') {
      state = 'paste';
      paste = [];
      pasteCut = 0;
      pasteTail = '';
      return;
    }
    sequence(parameters, sign, withAlt);
  }

  function sequence(parameters: string, final: string, withAlt: boolean): void {
    if (!/^[\d;:]*$/.test(parameters)) return;
    const [first = '', second = '', third = ''] = parameters.split(';');
    const modifiers = Math.max(0, Number.parseInt(second || '1', 10) - 1);
    const ctrl = (modifiers & 4) !== 0;
    const altKey = withAlt || (modifiers & 2) !== 0 || (modifiers & 8) !== 0;
    if (final === 'Z') named('shift-tab', ctrl, altKey);
    else if (final === 'u') coded(Number.parseInt(first, 10), modifiers, ctrl, altKey);
    else if (final === '~' && first === '27')
      coded(Number.parseInt(third, 10), modifiers, ctrl, altKey);
    else if (final === '~') {
      const name = TILDE_KEYS[first];
      if (name) named(name, ctrl, altKey);
    } else if (first === '' || first === '1') {
      // Any other first number makes it a report (cursor position ends in R), not a key.
      const name = FINAL_KEYS[final];
      if (name) named(name, ctrl, altKey);
    }
  }

  /** A key sent as its code point with modifiers (some terminals do so for Shift+Enter and the like). */
  function coded(point: number, modifiers: number, ctrl: boolean, withAlt: boolean): void {
    if (point === 13) named('return', ctrl, withAlt);
    else if (point === 27) named('escape', ctrl, withAlt);
    else if (point === 9) named((modifiers & 1) !== 0 ? 'shift-tab' : 'tab', ctrl, withAlt);
    else if (point === 127 || point === 8) named('backspace', ctrl, withAlt);
    else if (point >= 0x20 && point < 0xd800 && (point < 0x7f || point > 0x9f))
      typed(String.fromCodePoint(point), ctrl, withAlt);
  }

  function ss3(sign: string, point: number): void {
    if (point >= 0x30 && point <= 0x3f) {
      hold(sign);
      return;
    }
    if (point < 0x40 || point > 0x7e) {
      breakOff(sign, point);
      return;
    }
    const modifiers = Math.max(0, Number.parseInt(held || '1', 10) - 1);
    const withAlt = alt || (modifiers & 2) !== 0;
    const name = FINAL_KEYS[sign];
    const known = /^\d?$/.test(held);
    rest();
    if (!known) return;
    if (name) named(name, (modifiers & 4) !== 0, withAlt);
    else if (sign === 'M') named('return', false, withAlt);
    else if (KEYPAD.test(sign)) typed(String.fromCodePoint(point - 0x40), false, withAlt);
  }

  function pasting(sign: string): void {
    pasteTail += sign;
    if (pasteTail === PASTE_END) {
      endPaste('');
      return;
    }
    if (PASTE_END.startsWith(pasteTail)) return;
    // Not the end after all; a new escape may start the true end.
    const again = sign === '\x1b' ? sign : '';
    const plain = again ? pasteTail.slice(0, -1) : pasteTail;
    for (const part of plain)
      if (paste.length < PASTE_MAX) paste.push(part);
      else pasteCut += 1;
    pasteTail = again;
  }

  function endPaste(tail: string): void {
    const text = `${paste.join('')}${tail}`.replace(/\r\n?/g, '\n');
    rest();
    paste = [];
    pasteTail = '';
    events.push({ kind: 'paste', text, ...(pasteCut === 0 ? {} : { cut: pasteCut }) });
  }

  function step(sign: string, point: number): void {
    switch (state) {
      case 'ground':
        if (point === ESC) {
          state = 'escape';
          afterReturn = false;
        } else ground(sign, point, false);
        return;
      case 'escape':
        afterEscape(sign, point);
        return;
      case 'csi':
        csi(sign, point);
        return;
      case 'console': {
        // The Linux console's F1 to F5: ESC [ [ A to E.
        const index = 'ABCDE'.indexOf(sign);
        if (index < 0) {
          breakOff(sign, point);
          return;
        }
        rest();
        named(`f${index + 1}` as KeyName);
        return;
      }
      case 'ss3':
        ss3(sign, point);
        return;
      case 'string':
        // Replies the terminal sends as strings: nothing in them is a key.
        if (point === ESC) state = 'string-escape';
        else if (point === 0x07 || point === 0x18 || point === 0x1a) rest();
        else held = 'x';
        return;
      case 'string-escape':
        rest();
        if (sign === '\\') return;
        state = 'escape';
        afterEscape(sign, point);
        return;
      case 'paste':
        pasting(sign);
        return;
    }
  }

  function take(): KeyEvent[] {
    const out = events;
    events = [];
    return out;
  }

  return {
    push(bytes) {
      for (const sign of utf8.decode(bytes, { stream: true })) step(sign, sign.codePointAt(0) ?? 0);
      return take();
    },
    get pending() {
      if (state === 'ground') return null;
      if (state === 'paste') return 'paste';
      return state === 'escape' || (held === '' && state !== 'string-escape')
        ? 'escape'
        : 'sequence';
    },
    flush() {
      if (state === 'escape') {
        if (alt) named('escape');
        named('escape');
        rest();
      } else if (state === 'paste') endPaste(pasteTail);
      else if (state !== 'ground') {
        if (held === '' && state !== 'string-escape' && state !== 'console')
          typed(introducer, false, true);
        rest();
      }
      return take();
    },
  };
}
