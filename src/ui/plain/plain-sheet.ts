/** The job sheet as a dialogue of lines: the fields, remarks and doubts of the screen. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Job } from '../../procedure/job.ts';
import type { Replaceable } from '../../procedure/read-repair.ts';
import type { Form, FormField } from '../parts/form-state.ts';
import { textField } from '../parts/text-field-state.ts';
import {
  fieldProblem,
  jobDoubts,
  jobOf,
  jobProblem,
  jobRemark,
  jobSheet,
} from '../screens/job-sheet-state.ts';
import { type Terminals, withPins } from '../screens/pin-fields.ts';
import type { Dialogue } from './dialogue.ts';

/** The sheet so far, and what of the vehicle it can ask for. */
export interface SheetAsk {
  readonly job: Job;
  readonly terminals: Terminals;
  /** Parts of the circuit that can have been replaced before. */
  readonly parts: readonly Replaceable[];
  /** Of which values can be known; nothing is asked where it is left out. */
  readonly circuit?: Circuit | null;
}

/** Words that are no text of a field. */
const BEGIN = 'begin';
const BACK = 'back';
const EMPTY = '-';

/** Asks field by field; the job, or null at the end of input. What is doubtful is asked about before the session begins. */
export async function askSheet(ask: SheetAsk, dialogue: Dialogue): Promise<Job | null> {
  const { say } = dialogue;
  const { circuit = null } = ask;
  let sheet = jobSheet(ask.job, ask.terminals, circuit, ask.parts);
  say('Job sheet. Enter leaves a field as it is, "-" clears it, "back" goes to the previous one,');
  say('"begin" skips the rest.');
  while (true) {
    const filled = await fillIn(sheet, ask, dialogue);
    if (!filled) return null;
    sheet = filled;
    const missing = jobProblem(sheet);
    if (missing !== null) {
      say(missing);
      sheet = { ...sheet, at: 0 };
      continue;
    }
    const wrong = fieldProblem(sheet, circuit);
    if (wrong !== null) {
      say(wrong.words);
      sheet = { ...sheet, at: wrong.at };
      continue;
    }
    const at = await askDoubts(sheet, dialogue);
    if (at === null) return null;
    if (at === BEGIN) return jobOf(sheet, ask.job, ask.parts, circuit);
    sheet = { ...sheet, at };
  }
}

/** From the field at hand to the last one, or until the person wants to begin. */
async function fillIn(
  from: Form,
  { job, terminals, parts, circuit = null }: SheetAsk,
  { say, ask }: Dialogue,
): Promise<Form | null> {
  let sheet = from;
  while (true) {
    const field = sheet.fields[sheet.at];
    if (!field) return sheet;
    if (field.hint !== '') say(hintOf(field));
    const line = await ask(`${field.label}${presentWords(field)}: `);
    if (line === null) return null;
    const typed = line.trim();
    if (typed === BEGIN) return sheet;
    if (typed === BACK) {
      sheet = { ...sheet, at: Math.max(0, sheet.at - 1) };
      continue;
    }
    const next = typed === '' ? field : answered(field, typed);
    if (!next) {
      say(`"${typed}" is not one of them: ${optionsOf(field).join(', ')}.`);
      continue;
    }
    sheet = { ...sheet, fields: sheet.fields.map((old) => (old === field ? next : old)) };
    const remark = jobRemark(sheet, parts, circuit);
    if (typed !== '' && remark !== null) say(`  ${remark}`);
    sheet = { ...withPins(sheet, terminals, circuit, job), at: sheet.at + 1 };
  }
}

/** The field with what was typed; null when it is no choice of it. */
function answered(field: FormField, typed: string): FormField | null {
  if (field.kind === 'text') return { ...field, field: textField(typed === EMPTY ? '' : typed) };
  const chosen = optionsOf(field).findIndex((option) => option.startsWith(typed.toLowerCase()));
  return field.kind === 'choice' && chosen >= 0 ? { ...field, chosen } : null;
}

function optionsOf(field: FormField): readonly string[] {
  return field.kind === 'choice' ? field.options : [];
}

/** The arrow keys of the screen mean nothing here. */
function hintOf(field: FormField): string {
  return field.kind === 'choice' ? `One of: ${optionsOf(field).join(', ')}.` : field.hint;
}

function presentWords(field: FormField): string {
  const present = field.kind === 'choice' ? field.options[field.chosen] : '';
  const text = field.kind === 'text' ? field.field.text : (present ?? '');
  return text === '' ? '' : ` [${text}]`;
}

/** `begin` when all is right or the person says so, the field to correct, or null at the end of input. */
async function askDoubts(
  sheet: Form,
  { say, ask }: Dialogue,
): Promise<typeof BEGIN | number | null> {
  const doubts = jobDoubts(sheet);
  const [first] = doubts;
  if (!first) return BEGIN;
  say('Before the session begins: is this right?');
  for (const { words } of doubts) say(`  ${words}`);
  while (true) {
    const line = await ask('Type "yes" to begin anyway, or "back" to correct it: ');
    if (line === null) return null;
    if (/^y(es)?$/i.test(line.trim())) return BEGIN;
    if (line.trim() === BACK) return first.at;
  }
}
