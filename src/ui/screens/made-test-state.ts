/** A test that was made already, as a form: when, what it showed, and a note. No React. */

import { LOOK_WORDS } from '../../circuit/look-words.ts';
import { numberUnitOf } from '../../circuit/shown-by.ts';
import { parseReading } from '../../quantity/parse-reading.ts';
import type { Command } from '../../session/command.ts';
import { BEFORE_THE_JOB } from '../../session/events.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import { type Form, fieldChoice, fieldText, textInput } from '../parts/form-state.ts';
import { expectedInTest, testCommand } from './prompt-state.ts';

const WHEN_KEY = 'when';
const SHOWN_KEY = 'shown';
const NOTE_KEY = 'note';
const NOT_STATED = 'not stated';

/** The form, empty but for when. */
export function madeTestForm({ kind, looks, test, healthy }: TestToDo): Form {
  const good = healthy === '' ? '' : ` A healthy circuit shows: ${healthy}.`;
  return {
    at: 1,
    fields: [
      textInput(
        WHEN_KEY,
        'Made',
        BEFORE_THE_JOB,
        `"${BEFORE_THE_JOB}", or a time of the clock such as 14:05.`,
      ),
      kind === 'number'
        ? textInput(
            SHOWN_KEY,
            'It showed',
            '',
            `As the meter showed it, in ${numberUnitOf(test)}; OL for over-limit.${good}`,
          )
        : {
            kind: 'choice',
            key: SHOWN_KEY,
            label: 'It showed',
            hint: `Left or Right.${good}`,
            options: [NOT_STATED, ...looks.map((look) => LOOK_WORDS[look])],
            chosen: 0,
          },
      textInput(NOTE_KEY, 'Note', '', 'Anything about it that the next person should know.'),
    ],
  };
}

/** When it was made, of what was typed: `before`, `14:05`, `9.30`; null for anything else. */
export function readMade(typed: string): string | null {
  const text = typed.trim().toLowerCase();
  if (text === '' || /^before\b/.test(text)) return BEFORE_THE_JOB;
  const [, hours, minutes] = /^(\d{1,2})[:.h](\d{2})$/.exec(text) ?? [];
  if (hours === undefined || minutes === undefined) return null;
  if (Number(hours) > 23 || Number(minutes) > 59) return null;
  return `${hours.padStart(2, '0')}:${minutes}`;
}

/** The command that writes it down, or why the form cannot be taken yet, and at which field. */
export function madeTestCommand(
  form: Form,
  opened: OpenedSession,
  toDo: TestToDo,
): Command | { readonly at: number; readonly words: string } {
  const made = readMade(fieldText(form, WHEN_KEY));
  if (made === null)
    return { at: 0, words: `Write "${BEFORE_THE_JOB}", or a time of the clock such as 14:05.` };
  const answer = shownIn(form, opened, toDo);
  if ('words' in answer) return answer;
  const command = testCommand(toDo, answer);
  if (command?.type !== 'record-test') return { at: 1, words: 'What did it show?' };
  const note = fieldText(form, NOTE_KEY);
  return { ...command, made, ...(note === '' ? {} : { note }) };
}

function shownIn(
  form: Form,
  opened: OpenedSession,
  toDo: TestToDo,
): Command | { readonly at: number; readonly words: string } {
  if (toDo.kind === 'look') {
    const look = toDo.looks.find((one) => LOOK_WORDS[one] === fieldChoice(form, SHOWN_KEY));
    if (!look) return { at: 1, words: 'What did it show?' };
    return { type: 'choose-outcome', outcome: look, look };
  }
  const typed = fieldText(form, SHOWN_KEY);
  const read = parseReading(typed, expectedInTest(opened, toDo));
  switch (read.status) {
    case 'read':
      return { type: 'record-reading', typed, value: read.quantity.value };
    case 'unfinished':
      return { at: 1, words: 'What did it show?' };
    case 'doubt':
      return {
        at: 1,
        words: `${read.words} Write it as: ${read.choices.map(({ words }) => words).join(', or ')}.`,
      };
    case 'refused':
      return { at: 1, words: `${read.words}${read.fix ? `; ${read.fix}` : ''}.` };
  }
}

/** What was understood of the field at hand; null to show its hint. */
export function madeTestRemark(form: Form, opened: OpenedSession, toDo: TestToDo): string | null {
  const key = form.fields[form.at]?.key;
  if (key !== SHOWN_KEY || toDo.kind !== 'number' || fieldText(form, SHOWN_KEY) === '') return null;
  const answer = shownIn(form, opened, toDo);
  return 'words' in answer ? answer.words : null;
}
