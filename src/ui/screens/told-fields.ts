/** The fields of the job sheet for what is told and seen before anything is touched. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { type Circumstances, HAPPENS, type Happens, type Job } from '../../procedure/job.ts';
import { movedWords, toldBy } from '../../session/told.ts';
import { type Form, type FormField, fieldText, textInput } from '../parts/form-state.ts';

export const HAPPENS_KEY = 'happens';
const FAILS_KEY = 'fails-with-it';
const WORK_KEY = 'recent-work';
const SEEN_KEY = 'seen';
const FREEZE_KEY = 'freeze-frame';

/** The fields with what the job has already. */
export function toldFields({ circumstances = {} }: Job): FormField[] {
  const { happens = [], failsWithIt = '', recentWork = '', seen = '' } = circumstances;
  return [
    textInput(
      HAPPENS_KEY,
      'When it happens',
      happens.join(', '),
      `Separated by commas: ${HAPPENS.join(', ')}.`,
    ),
    textInput(
      FAILS_KEY,
      'What else fails',
      failsWithIt,
      'What else has stopped working since then. "nothing" if everything else works.',
    ),
    textInput(
      WORK_KEY,
      'Recent work',
      recentWork,
      'On the vehicle before it started, for example: wheel bearing, timing belt, engine out, accident.',
    ),
    textInput(
      SEEN_KEY,
      'Visible damage',
      seen,
      'Without touching anything, for example: harness chafed at the bracket; connector wet.',
    ),
    textInput(
      FREEZE_KEY,
      'Freeze frame',
      (circumstances.freezeFrame ?? []).join('; '),
      'Freeze-frame data, separated by ; for example 812 rpm; coolant 91 C. Kept for the record, not weighed.',
    ),
  ];
}

/** What these fields say; a key is absent where its field is empty. */
export function circumstancesOf(sheet: Form): Pick<Job, 'circumstances'> {
  const happens = wordsOf(fieldText(sheet, HAPPENS_KEY)).flatMap((word) => happensOf(word) ?? []);
  const [failsWithIt, recentWork] = [fieldText(sheet, FAILS_KEY), fieldText(sheet, WORK_KEY)];
  const seen = fieldText(sheet, SEEN_KEY);
  const freezeFrame = linesOf(fieldText(sheet, FREEZE_KEY));
  const circumstances: Circumstances = {
    ...(happens.length > 0 && { happens: HAPPENS.filter((one) => happens.includes(one)) }),
    ...(failsWithIt !== '' && { failsWithIt }),
    ...(recentWork !== '' && { recentWork }),
    ...(seen !== '' && { seen }),
    ...(freezeFrame.length > 0 && { freezeFrame }),
  };
  return Object.keys(circumstances).length === 0 ? {} : { circumstances };
}

/** What stands between commas and blanks; words that only join them say nothing. */
function wordsOf(text: string): string[] {
  return text.split(/[,;/\s]/).filter((word) => word !== '' && !JOINING.has(word.toLowerCase()));
}
const JOINING = new Set([
  'and',
  'or',
  'when',
  'only',
  'if',
  'in',
  'on',
  'over',
  'while',
  'the',
  'it',
  'is',
]);

function linesOf(text: string): string[] {
  return text
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

/** Other words for it. */
const LIKE: Readonly<Record<string, Happens>> = {
  rain: 'wet',
  rainy: 'wet',
  damp: 'wet',
  warm: 'hot',
  bump: 'bumps',
  bumpy: 'bumps',
  potholes: 'bumps',
  crank: 'cranking',
  starting: 'cranking',
  permanent: 'always',
  constant: 'always',
};

function happensOf(word: string): Happens | null {
  const small = word.toLowerCase();
  return HAPPENS.find((one) => one === small) ?? LIKE[small] ?? null;
}

/** Why the field cannot be taken, or null. */
export function happensProblem(text: string): string | null {
  const unknown = wordsOf(text).find((word) => happensOf(word) === null);
  return unknown === undefined
    ? null
    : `"${unknown}" is not one of: ${HAPPENS.join(', ')}. Anything else belongs in the complaint.`;
}

/** What was understood of one of these fields, and what it moves; null for any other, and for one that moves nothing. */
export function toldRemark(sheet: Form, key: string, circuit: Circuit | null): string | null {
  const text = fieldText(sheet, key);
  if (key === HAPPENS_KEY) {
    const problem = happensProblem(text);
    if (problem !== null) return problem;
  }
  const isWords = key === FAILS_KEY || key === WORK_KEY || key === SEEN_KEY;
  if (!isWords && key !== HAPPENS_KEY) return null;
  const told = toldBy({ earlierRepairs: [], ...circumstancesOf(sheet) });
  const keys = told.flatMap((one) => (one.key.startsWith(`${key}:`) ? one.key : []));
  const moved = movedWords(keys, circuit);
  if (moved !== '') return `Understood: ${moved}.`;
  return isWords ? 'Kept as a note: it does not change the odds.' : null;
}
