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
    words: 'Take back the last answer. The file keeps it as taken back, and you can change it.',
  },
  {
    action: 'cannot',
    keys: ['f3', 'ctrl-x'],
    show: 'F3',
    other: 'Ctrl+X',
    help: "can't do this",
    words:
      "This step can't be done here. Asks why and skips it, if the procedure has an alternative.",
  },
  {
    action: 'note',
    keys: ['f4', 'ctrl-n'],
    show: 'F4',
    other: 'Ctrl+N',
    help: 'note',
    words: 'Write down something you noticed. It goes into the record with the time.',
  },
  {
    action: 'suspects',
    keys: ['f5', 'ctrl-p'],
    show: 'F5',
    other: 'Ctrl+P',
    help: 'suspects',
    words: 'What could be wrong, and how likely, after all readings so far.',
  },
  {
    action: 'next-tests',
    keys: ['f6', 'ctrl-t'],
    show: 'F6',
    other: 'Ctrl+T',
    help: 'best tests',
    words:
      "The tests that would tell you most now. Do one of them and come back; mark one you can't do here and it is not suggested again.",
  },
  {
    action: 'any-test',
    keys: ['insert', 'ctrl-v'],
    show: 'Ins',
    other: 'Ctrl+V',
    help: 'another test',
    words:
      'Any test you like, at any time: from the list for this circuit, or set up yourself; also one that was done already, with the time.',
  },
  {
    action: 'way',
    keys: ['f7', 'ctrl-y'],
    show: 'F7',
    other: 'Ctrl+Y',
    help: 'path so far',
    words: 'All answers so far. Pick one to go back to it.',
  },
  {
    action: 'sketch',
    keys: ['f8', 'ctrl-l'],
    show: 'F8',
    other: 'Ctrl+L',
    help: 'wiring',
    words: 'The wiring sketch with the leads, full screen.',
  },
  {
    action: 'instruments',
    keys: ['f9', 'ctrl-o'],
    show: 'F9',
    other: 'Ctrl+O',
    help: 'instruments',
    words: 'What you have at hand. Only tests you can do with it are suggested.',
  },
  {
    action: 'pause',
    keys: ['f10', 'ctrl-g'],
    show: 'F10',
    other: 'Ctrl+G',
    help: 'pause',
    words: 'Stop here. All answers are saved; the session continues later from here.',
  },
  {
    action: 'sums',
    keys: ['f11', 'ctrl-r'],
    show: 'F11',
    other: 'Ctrl+R',
    help: 'sums',
    words: 'The calculations that fit this step, worked out with its values.',
  },
  {
    action: 'capture',
    keys: ['f12', 'ctrl-f'],
    show: 'F12',
    other: 'Ctrl+F',
    help: 'capture',
    words:
      'Measure a saved capture instead of judging the trace by eye; a simulated vehicle makes its own.',
  },
  {
    action: 'watch',
    keys: ['ctrl-s', 'alt-s'],
    show: 'Ctrl+S',
    other: 'Alt+S',
    help: 'what was seen',
    words:
      'When something is wiggled or heated: minimum, maximum and drop-outs of each round. It does not answer the step by itself.',
  },
  {
    action: 'plan',
    keys: ['ctrl-q', 'alt-q'],
    show: 'Ctrl+Q',
    other: 'Alt+Q',
    help: 'plan a drive',
    words:
      "For an intermittent that won't act up here: what to record on a drive, where the leads go, who drives and how, with the road-test cautions.",
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
export function keysOfAction(action: SessionAction): readonly string[] {
  return SESSION_KEYS.find((key) => key.action === action)?.keys ?? [];
}

/** The same key on other pages that take a capture. */
export const CAPTURE_KEY: KeyBinding = {
  keys: keysOfAction('capture'),
  show: 'F12',
  help: 'capture',
};

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
