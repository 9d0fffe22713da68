/** The words of the dialogue of lines, as tables: each with its help and what it does. */
import type { Arrangement } from '../../circuit/arrange-test.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Dialogue } from './dialogue.ts';

/** Where a word is said. */
export interface WordPlace {
  readonly opened: OpenedSession;
  readonly dialogue: Dialogue;
  /** The step that is asked; null in free order. */
  readonly step: Step | null;
  /** How the next test of the person's own is arranged; it stays so until it is arranged anew. */
  readonly arranged: { now: Arrangement };
}

/** `paused`: the dialogue ends here. */
export type DialogueEnd = 'paused' | null;

/** One word of the dialogue, with its other spellings. */
export interface Word<P extends WordPlace> {
  readonly words: readonly string[];
  /** Lines of the help: what is typed, and what it does. */
  readonly help: readonly string[];
  /** False where the word does nothing, so that the help leaves it out; told everywhere without it. */
  readonly isTold?: (place: P) => boolean;
  /** `text` is what stands behind the word. */
  readonly does: (place: P, text: string, word: string) => Promise<DialogueEnd> | DialogueEnd;
}

/** Words by what is typed. A map, since any word may be typed, `constructor` too. */
export type WordTable<P extends WordPlace> = ReadonlyMap<string, Word<P>>;

const HELP_COLUMN = 18;

/** What is typed, and beside it in a column what it does. */
export function helpLine(typed: string, words: string): [string] {
  const column = typed.length < HELP_COLUMN - 2 ? typed.padEnd(HELP_COLUMN - 2) : `${typed}  `;
  return [`  ${column}${words}`];
}

/** A table of words, and `help`, which lists them under `heading`. */
export function wordTable<P extends WordPlace>(
  heading: readonly string[],
  words: readonly Word<P>[],
): WordTable<P> {
  const help: Word<P> = {
    words: ['help'],
    help: helpLine('help', 'this list'),
    does: (place) => {
      const told = [...words, help].filter(({ isTold }) => isTold?.(place) ?? true);
      return sayAll(place, [...heading, ...told.flatMap((word) => word.help)]);
    },
  };
  return new Map([...words, help].flatMap((word) => word.words.map((one) => [one, word])));
}

/** What a line says to a table; null when its first word is none of it. */
export async function say<P extends WordPlace>(
  table: WordTable<P>,
  place: P,
  line: string,
): Promise<{ readonly end: DialogueEnd } | null> {
  const [typed = ''] = line.split(/\s+/);
  const word = table.get(typed.toLowerCase());
  if (!word) return null;
  return { end: await word.does(place, line.slice(typed.length).trim(), typed.toLowerCase()) };
}

/** Several lines. */
export function sayAll({ dialogue }: Pick<WordPlace, 'dialogue'>, lines: readonly string[]): null {
  for (const line of lines) dialogue.say(line);
  return null;
}
