/**
 * The keys of a session, each once with its words; footer, help page and dispatch read this table.
 *
 * While a number is typed every letter may be part of its unit, so commands sit on function keys and, for terminals
 * that keep those to themselves, on Ctrl with a letter that the text field does not use.
 */
import type { KeyBinding } from '../parts/key-hints.tsx';

/** What a key of a session does, whatever key that is. */
export type SessionAction =
  | 'help'
  | 'back'
  | 'cannot'
  | 'note'
  | 'suspects'
  | 'next-tests'
  | 'any-test'
  | 'way'
  | 'sketch'
  | 'instruments'
  | 'sums'
  | 'capture'
  | 'watch'
  | 'plan'
  | 'pause';

/** A key of a session, with its line on the help page. */
export interface SessionKey extends KeyBinding {
  readonly action: SessionAction;
  /** Second key, as it is called on the help page. */
  readonly other: string;
  /** A sentence for the help page. */
  readonly words: string;
}

export const SESSION_KEYS: readonly SessionKey[] = [
  {
    action: 'back',
    keys: ['f2', 'ctrl-b'],
    show: 'F2',
    other: 'Ctrl+B',
    help: 'back',
    words:
      'Take back the last answer. It is kept in the file as taken back, and stands ready to be changed.',
  },
  {
    action: 'cannot',
    keys: ['f3', 'ctrl-x'],
    show: 'F3',
    other: 'Ctrl+X',
    help: "can't do this",
    words:
      'This step cannot be done here. Asks why and goes round it, if the procedure has a way round.',
  },
  {
    action: 'note',
    keys: ['f4', 'ctrl-n'],
    show: 'F4',
    other: 'Ctrl+N',
    help: 'note',
    words: 'Write down something you saw. It goes into the record with its time.',
  },
  {
    action: 'suspects',
    keys: ['f5', 'ctrl-p'],
    show: 'F5',
    other: 'Ctrl+P',
    help: 'suspects',
    words: 'What may be wrong, with chances, after everything read so far.',
  },
  {
    action: 'next-tests',
    keys: ['f6', 'ctrl-t'],
    show: 'F6',
    other: 'Ctrl+T',
    help: 'best tests',
    words:
      'The tests that would tell most now. You can do one of them and come back; one that cannot be done here is proposed no more.',
  },
  {
    action: 'any-test',
    keys: ['insert', 'ctrl-v'],
    show: 'Ins',
    other: 'Ctrl+V',
    help: 'another test',
    words:
      'Any test you like, looked for among all of this circuit or arranged by yourself, at any time; also one that was made already, with the time it was made.',
  },
  {
    action: 'way',
    keys: ['f7', 'ctrl-y'],
    show: 'F7',
    other: 'Ctrl+Y',
    help: 'way so far',
    words: 'All answers up to here. Choose one to go back to it.',
  },
  {
    action: 'sketch',
    keys: ['f8', 'ctrl-l'],
    show: 'F8',
    other: 'Ctrl+L',
    help: 'wiring',
    words: 'The wiring sketch with the leads, on the whole screen.',
  },
  {
    action: 'instruments',
    keys: ['f9', 'ctrl-o'],
    show: 'F9',
    other: 'Ctrl+O',
    help: 'instruments',
    words: 'What you have at hand. Only tests that can be done with it are proposed.',
  },
  {
    action: 'pause',
    keys: ['f10', 'ctrl-g'],
    show: 'F10',
    other: 'Ctrl+G',
    help: 'pause',
    words:
      'Stop here. Everything answered is saved already; the session goes on later where it stopped.',
  },
  {
    action: 'sums',
    keys: ['f11', 'ctrl-r'],
    show: 'F11',
    other: 'Ctrl+R',
    help: 'sums',
    words: 'The small sums that fit this step, done with its own values.',
  },
  {
    action: 'capture',
    keys: ['f12', 'ctrl-f'],
    show: 'F12',
    other: 'Ctrl+F',
    help: 'capture',
    words:
      'Measure a saved capture instead of judging the picture by eye; a simulated vehicle gives its own.',
  },
  {
    action: 'watch',
    keys: ['ctrl-s', 'alt-s'],
    show: 'Ctrl+S',
    other: 'Alt+S',
    help: 'what was seen',
    words:
      'Where something is moved or warmed: least, most and drops of one round, as often as one is made. It answers nothing by itself.',
  },
  {
    action: 'plan',
    keys: ['ctrl-q', 'alt-q'],
    show: 'Ctrl+Q',
    other: 'Alt+Q',
    help: 'plan a drive',
    words:
      'For a fault that nothing wakes here: what to record on a drive, where the leads go, who drives and how, with the cautions of a road test.',
  },
  {
    action: 'help',
    keys: ['?', 'f1'],
    show: '?',
    other: 'F1',
    help: 'keys',
    words: 'This page.',
  },
];

/** The keys of an action, for pages where they mean nearly the same. */
export function keysOf(action: SessionAction): readonly string[] {
  return SESSION_KEYS.find((key) => key.action === action)?.keys ?? [];
}

/** The same key on other pages that take a capture. */
export const CAPTURE_KEY: KeyBinding = { keys: keysOf('capture'), show: 'F12', help: 'capture' };

/** The table with words in the footer only for these actions, some perhaps with another one; all keys still work. */
export function withFooter(
  actions: readonly SessionAction[],
  words: Readonly<Partial<Record<SessionAction, string>>> = {},
): SessionKey[] {
  return SESSION_KEYS.map((key) => ({
    ...key,
    help: actions.includes(key.action) ? (words[key.action] ?? key.help) : '',
  }));
}

/** Keys of every page that lies over the step. */
export const CLOSE_KEY: KeyBinding = { keys: ['escape'], show: 'Esc', help: 'close' };
