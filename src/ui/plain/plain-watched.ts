/** Rounds of moving and warming in the dialogue of lines, before the repair and after it. */
import type { Step } from '../../procedure/procedure.ts';
import { readWatched } from '../../session/read-watched.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import { watchedWords } from '../../session/watched-words.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

export const WATCH_WORD: Word<WordPlace> = {
  words: ['watch'],
  help: helpLine(
    'watch plug: 4.9 V to 5.1 V, 0 drops, 3 min',
    'what one round of wiggling or heating showed',
  ),
  does: (place, typed) => watch(place, typed, null),
};

/** The same at a test after the repair. */
export const WATCH_AGAIN_WORD: Word<WordPlace & { readonly step: Step }> = {
  ...WATCH_WORD,
  does: (place, typed) => watch(place, typed, place.step),
};

async function watch(place: WordPlace, typed: string, again: Step | null): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const asked = watchedAsked(opened, opened.driver.session(), again ?? undefined);
  if (!asked) return sayAll(place, ['Nothing is wiggled or heated at this step.']);
  const read = readWatched(typed, asked);
  if (!('type' in read)) return sayAll(place, [`${read.words}; ${read.fix}.`]);
  const command = again ? { ...read, step: again.id } : read;
  if ((await performSaved(place, command)).ok)
    dialogue.say(`In the record: ${watchedWords(read)}.`);
  return null;
}
