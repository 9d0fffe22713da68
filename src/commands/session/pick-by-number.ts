/** A choice in the dialogue of lines. */
import type { Dialogue } from '../../ui/plain/dialogue.ts';

/** What is looked for by words instead of its number. */
export interface Finder<T> {
  /** The rest of the question: `a trouble code or words`. */
  readonly words: string;
  readonly find: (typed: string) => readonly T[];
  readonly found: (typed: string) => void;
}

/**
 * Shows the choices with their numbers and asks until one is named, or found by words that fit no other; the one that
 * was, or null at the end of input.
 */
export async function pickByNumber<T>(
  { say, ask }: Pick<Dialogue, 'say' | 'ask'>,
  title: string,
  choices: readonly T[],
  wordsOf: (choice: T) => string,
  finder: Finder<T> | null = null,
): Promise<T | null> {
  say(title);
  const line = (choice: T) => `  ${choices.indexOf(choice) + 1}  ${wordsOf(choice)}`;
  for (const choice of choices) say(line(choice));
  const or = finder === null ? '' : `, or ${finder.words}`;
  while (true) {
    const typed = (await ask(`Which one, 1 to ${choices.length}${or}? `))?.trim();
    if (typed === undefined) return null;
    const choice = /^\d+$/.test(typed) ? choices[Number(typed) - 1] : undefined;
    if (choice !== undefined) return choice;
    if (finder === null || typed === '') continue;
    const [only, ...others] = finder.find(typed);
    if (only === undefined) say(`Nothing matches "${typed}".`);
    else {
      finder.found(typed);
      if (others.length === 0) return only;
      for (const one of [only, ...others]) say(line(one));
    }
  }
}
