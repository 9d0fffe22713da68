/** The fields of the job sheet for earlier work: free words, and of one part what went in and what it changed. No React. */
import {
  type EarlierRepair,
  EFFECTS,
  FITTED,
  type Fitted,
  type Job,
  type RepairEffect,
} from '../../procedure/job.ts';
import { type Replaceable, readRepair, repairsRemark } from '../../procedure/read-repair.ts';
import {
  type Form,
  type FormField,
  fieldChoice,
  fieldText,
  textInput,
} from '../parts/form-state.ts';

export const REPAIRS_KEY = 'repairs';
const PART_KEY = 'replaced-part';
const FITTED_KEY = 'fitted';
const CHANGED_KEY = 'changed';
const NOT_STATED = 'not stated';
const FITTED_WORDS: Readonly<Record<Fitted, string>> = {
  new: 'new',
  'second-hand': 'used part',
  'other-make': 'aftermarket',
};
const CHANGED_WORDS: Readonly<Record<RepairEffect, string>> = {
  nothing: 'nothing',
  'for-a-while': 'for a while',
  cured: 'fixed it then',
};

/** The fields with what the job has already. The choices speak of the first part that was made new. */
export function repairFields({ earlierRepairs }: Job, parts: readonly Replaceable[]): FormField[] {
  const first = earlierRepairs.find(({ part }) => part !== null) ?? null;
  return [
    textInput(
      REPAIRS_KEY,
      'Earlier repairs',
      earlierRepairs.map((one) => repairText(one, one === first, parts)).join('; '),
      'Separated by ; for example: crank sensor replaced last week, no change; harness taped. A part just replaced is less suspect.',
    ),
    choice(
      PART_KEY,
      'Part replaced',
      parts.map(({ id }) => shortName(id)),
      first?.part ? shortName(first.part) : undefined,
      'Left or Right: which part of this circuit was replaced or repaired, if the words above do not say.',
    ),
    choice(
      FITTED_KEY,
      'What was fitted',
      Object.values(FITTED_WORDS),
      first?.fitted && FITTED_WORDS[first.fitted],
      'A used or aftermarket part is less certain to be good.',
    ),
    choice(
      CHANGED_KEY,
      'It changed',
      Object.values(CHANGED_WORDS),
      first?.changed && CHANGED_WORDS[first.changed],
      'About the complaint. A good part that changed nothing is hardly to blame; one that helped for a while points to contacts.',
    ),
  ];
}

function choice(
  key: string,
  label: string,
  among: readonly string[],
  chosen: string | undefined,
  hint: string,
): FormField {
  const options = [NOT_STATED, ...among];
  return {
    kind: 'choice',
    key,
    label,
    hint,
    options,
    chosen: Math.max(0, options.indexOf(chosen ?? '')),
  };
}

/** The same wherever the sensor sits: `sensor`, `sensor connector`, `signal wire`, `wheel`. */
function shortName(id: string): string {
  const [kind, name = ''] = id.split(/\.(.*)/);
  if (kind === 'connector') return `${plain(name)} connector`;
  if (kind === 'wire') return `${plain(name)} wire`;
  return id === 'target' ? 'wheel' : plain(id);
}

function plain(word: string): string {
  return word.replaceAll('-', ' ');
}

/** With its part named outright where the words alone do not say it; of all but the first, what went in and what it changed. */
function repairText(
  repair: EarlierRepair,
  isFirst: boolean,
  parts: readonly Replaceable[],
): string {
  const { words, part, fitted, changed } = repair;
  const read = readRepair(words, parts);
  const more = isFirst
    ? []
    : [
        ...(fitted === undefined || read.fitted === fitted ? [] : [FITTED_TYPED[fitted]]),
        ...(changed === undefined || read.changed === changed ? [] : [CHANGED_TYPED[changed]]),
      ];
  const text = [words, ...more].join(', ');
  return part === null ? text : `${part}: ${text}`;
}

const FITTED_TYPED = { new: 'genuine', 'second-hand': 'used part', 'other-make': 'aftermarket' };
const CHANGED_TYPED = {
  nothing: 'no change',
  'for-a-while': 'ok for a while',
  cured: 'cured it',
};

/** The work that the fields tell of. What was chosen belongs to the part chosen, else to the first one that the words name. */
export function repairsIn(sheet: Form, parts: readonly Replaceable[]): EarlierRepair[] {
  const told = fieldText(sheet, REPAIRS_KEY)
    .split(';')
    .map((one) => readRepair(one.trim(), parts))
    .filter(({ words }) => words !== '');
  const part = parts.find(({ id }) => shortName(id) === fieldChoice(sheet, PART_KEY))?.id;
  const fitted = FITTED.find((one) => FITTED_WORDS[one] === fieldChoice(sheet, FITTED_KEY));
  const changed = EFFECTS.find((one) => CHANGED_WORDS[one] === fieldChoice(sheet, CHANGED_KEY));
  const chosen = { ...(fitted && { fitted }), ...(changed && { changed }) };
  const at = told.findIndex(
    (one) => one.part !== null && (part === undefined || one.part === part),
  );
  if (at >= 0) return told.map((one, index) => (index === at ? { ...one, ...chosen } : one));
  if (part === undefined) return told;
  // Free words that name no part of this circuit speak of the chosen one, where they are all that was said.
  const [only] = told.length === 1 ? told : [];
  if (only) return [{ ...only, part, ...chosen }];
  return [{ words: part.includes('.') ? 'made good' : 'replaced', part, ...chosen }, ...told];
}

/** Whether a field of the sheet is one of these. */
export function isOfRepair(key: string): boolean {
  return [REPAIRS_KEY, PART_KEY, FITTED_KEY, CHANGED_KEY].includes(key);
}

/** What was understood of all that was said of earlier work, for the person to check; null where nothing was. */
export function repairRemark(sheet: Form, parts: readonly Replaceable[]): string | null {
  const key = sheet.fields[sheet.at]?.key ?? '';
  const repairs = repairsIn(sheet, parts);
  const isAlone =
    (key === FITTED_KEY || key === CHANGED_KEY) && fieldChoice(sheet, key) !== NOT_STATED;
  if (isAlone && !repairs.some(({ part }) => part !== null))
    return 'Of which part? Choose it above, or name it among the earlier repairs.';
  return repairs.length === 0 ? null : repairsRemark(repairs, parts);
}
