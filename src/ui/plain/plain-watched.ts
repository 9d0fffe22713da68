/** Rounds of moving and warming in the dialogue of lines. */
import { readWatched } from '../../session/read-watched.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import { watchedWords } from '../../session/watched-words.ts';
import { helpLine, type Place, sayAll, type Word } from './plain-words.ts';
import { perform } from './until-saved.ts';

export const WATCH_WORD: Word<Place> = {
  words: ['watch'],
  help: helpLine(
    'watch plug: 4.9 V to 5.1 V, 0 drops, 3 min',
    'what one round of wiggling or heating showed',
  ),
  does: async (place, typed) => {
    const { opened, dialogue } = place;
    const asked = watchedAsked(opened, opened.driver.session());
    if (!asked) return sayAll(place, ['Nothing is wiggled or heated at this step.']);
    const read = readWatched(typed, asked);
    if (!('type' in read)) return sayAll(place, [`${read.words}; ${read.fix}.`]);
    if ((await perform(place, read)).ok) dialogue.say(`In the record: ${watchedWords(read)}.`);
    return null;
  },
};
