/** A choice in the dialogue of lines. */
import type { Dialogue } from '../../ui/plain/dialogue.ts';

/** Shows the choices with their numbers and asks until one is named; the one that was, or null at the end of input. */
export async function pickByNumber<T>(
  { say, ask }: Pick<Dialogue, 'say' | 'ask'>,
  title: string,
  choices: readonly T[],
  wordsOf: (choice: T) => string,
): Promise<T | null> {
  say(title);
  for (const [index, choice] of choices.entries()) say(`  ${index + 1}  ${wordsOf(choice)}`);
  while (true) {
    const line = await ask(`Which one, 1 to ${choices.length}? `);
    if (line === null) return null;
    const choice = /^\d+$/.test(line.trim()) ? choices[Number(line) - 1] : undefined;
    if (choice !== undefined) return choice;
  }
}
