/** Words that change no answer: notes, readings so far, the wiring. */

import { testOf } from '../../procedure/test-of.ts';
import { foundLines } from '../screens/conclusion-words.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

export const NOTE_WORDS: readonly Word<WordPlace>[] = [
  {
    words: ['note'],
    help: helpLine('note TEXT', 'write a note'),
    does: note,
  },
  {
    words: ['edit'],
    help: helpLine('edit', 'write a note in your editor ($VISUAL or $EDITOR)'),
    does: async (place) => {
      const edited = (await place.dialogue.edit?.()) ?? { problem: 'there is no editor here' };
      if ('problem' in edited) return sayAll(place, [edited.problem]);
      if (edited.text === '') return sayAll(place, ['Nothing was written, so no note was made.']);
      return note(place, edited.text);
    },
  },
];

async function note(place: WordPlace, text: string): Promise<DialogueEnd> {
  if ((await performSaved(place, { type: 'add-note', text })).ok) place.dialogue.say('Noted.');
  return null;
}

export const READINGS_WORD: Word<WordPlace> = {
  words: ['readings'],
  help: helpLine('readings', 'readings so far'),
  does: (place) => {
    const found = foundLines(place.opened, place.opened.driver.session());
    return sayAll(
      place,
      found.length === 0
        ? ['Nothing has been read yet.']
        : found.map((line, index) => `  ${String(index + 1).padStart(2)}  ${line}`),
    );
  },
};

const SKETCH_COLUMNS = 78;

export const SKETCH_WORD: Word<WordPlace> = {
  words: ['sketch'],
  help: helpLine('sketch', 'the wiring with the leads on it'),
  does: (place) => {
    const { step, opened } = place;
    const drawn = opened.sketch(step && testOf(step), SKETCH_COLUMNS, true);
    return sayAll(
      place,
      drawn.length > 0
        ? drawn
        : ['This session has no circuit model, so there is no wiring to show.'],
    );
  },
};
