/** The questions of a session that are answered with a line of text. */

import { DRIVEN_WORDS, readDrive } from '../../session/read-drive.ts';
import { readWatched, WATCHED_FORM, type WatchedAsked } from '../../session/read-watched.ts';
import { readWork } from '../../session/read-work.ts';
import { watchedWords } from '../../session/watched-words.ts';
import { NO_REASON, type TextCheck } from './text-question.tsx';

/** A question with its page: `about` stands below it, `empty` is said to an empty answer. */
export interface Question {
  readonly title: string;
  readonly question: string;
  readonly about?: string;
  readonly empty?: string;
  readonly check?: TextCheck;
}

export const NOTE: Question = {
  title: 'Note',
  question: 'What did you see?',
  about:
    'It goes into the record with the time and its place in the session. It changes no answer.',
};
export const CANNOT: Question = {
  title: "This step can't be done",
  question: 'Why not?',
  about:
    "For example: can't reach the terminal; connector must not be opened. The record shows the reason.",
  empty: NO_REASON,
};
export const CANNOT_RETEST: Question = {
  title: "This test can't be done",
  question: 'Why not?',
  about:
    "For example: can't reach the terminal any more. The record shows the reason, and that this test does not prove the repair.",
  empty: NO_REASON,
};
export const OWN_WORDS: Question = {
  title: 'Your own conclusion',
  question: 'What is wrong, and what fixes it?',
};
export const DRIVE: Question = {
  title: 'Test drive after the repair',
  question: 'Did the trouble codes stay away, or come back?',
  about:
    'Begin with "away" or "back", then say how it was driven: away, 80 km and three cold starts. It goes into this record with the time.',
  check: (text) => {
    const read = readDrive(text);
    if ('type' in read) return { ok: true, words: `Understood: ${DRIVEN_WORDS[read.code]}.` };
    return { ok: false, words: `${read.words}: ${read.fix}` };
  },
};
/** What is told on the telephone stands below the field. */
export function workQuestion(
  told: readonly string[],
  estimate: (said: string) => string | null,
): Question {
  return {
    title: 'The customer',
    question: 'Is the work authorised or declined, and by whom?',
    about: [...told, WORK_ABOUT].join('\n'),
    check: (text) => {
      const read = readWork(text);
      const costs = estimate(text);
      const more = costs === null ? '' : ` ${costs}`;
      if (!('type' in read)) return { ok: false, words: `${read.words}: ${read.fix}.${more}` };
      return { ok: true, words: `Understood: ${read.answer} by ${read.by}.${more}` };
    },
  };
}
const WORK_ABOUT =
  'Write: authorised by R. Example, by telephone, up to 240 EUR. Hours and price lines behind it (1.5 h, sensor connector) make the estimate. It goes into this record with the time.';
export const CLIP: Question = {
  title: 'Clip something in',
  question: 'From where, to where, and what: lead, test-light, lamp, or ohms?',
  about: 'For example: sensor.signal battery.negative 470 ohm',
};

/** The question after one round of moving or warming. */
export function watchedQuestion(asked: WatchedAsked | null): Question {
  const places = asked?.places.join(', ') ?? '';
  return {
    title: 'While wiggling',
    question: 'What did the instrument show in this round?',
    about: `For example: ${WATCHED_FORM}; or the readings as they come: plug: 4.98, 5.01, 0.3. Places here: ${places}; without one it was all of it.${asked?.limits ? ' A reading a good circuit cannot give counts as a drop-out.' : ''}`,
    check: (text) => {
      const read = asked ? readWatched(text, asked) : null;
      if (!read) return { ok: false, words: 'nothing is wiggled or heated at this step' };
      return 'type' in read
        ? { ok: true, words: `Understood: ${watchedWords(read)}.` }
        : { ok: false, words: `${read.words}: ${read.fix}` };
    },
  };
}
