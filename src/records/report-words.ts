/** Small pieces of wording that all reports share. */
import { type Hand, PIECES_NEEDED } from '../session/events.ts';
import { DRIVEN_WORDS } from '../session/read-drive.ts';
import { isProvenToday, judgedByWords } from './judged-by.ts';
import type {
  JudgedToday,
  Moment,
  RecordConclusion,
  RecordTest,
  RecordVehicle,
  SessionRecord,
} from './record-form.ts';
import type { Cell } from './report-form.ts';

/** `2026-11-25 13:27 (+00:00)` as the clock of the shop showed it; empty for an empty time. */
export function dateWords(at: string): string {
  const match = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)[^Z+-]*(Z|[+-]\d\d:\d\d)$/.exec(at);
  if (!match) return at;
  return `${match[1]} ${match[2]} (${match[3] === 'Z' ? 'UTC' : match[3]})`;
}

/** The time of day, or minutes and seconds of work where the wall clock was left out. */
export function timeWords({ at, workedMs }: Pick<Moment, 'at' | 'workedMs'>): string {
  const time = /T(\d\d:\d\d:\d\d)/.exec(at)?.[1];
  if (time !== undefined) return time;
  const seconds = Math.floor(workedMs / 1000);
  return `+${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** `1 h 05 min`, `12 min 30 s`, `45 s`. */
export function durationWords(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const minutes = Math.floor(seconds / 60);
  if (minutes >= 60)
    return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
  return minutes > 0 ? `${minutes} min ${seconds % 60} s` : `${seconds} s`;
}

/** Where a record comes from, as the program was told or could tell: which kind of vehicle, and who gave the answers. */
export function originWords(vehicle: RecordVehicle, by: readonly Hand[]): string {
  return `${VEHICLE_WORDS[vehicle]}; answers from ${handsWords(by)}`;
}

const VEHICLE_WORDS: Readonly<Record<RecordVehicle, string>> = {
  real: 'a real vehicle, as stated',
  simulated: 'a simulated vehicle',
  drill: 'a drill on a simulated vehicle',
};

/** `a person and a file of answers`. */
export function handsWords(by: readonly Hand[]): string {
  return by.map((hand) => HAND_WORDS[hand]).join(' and ');
}

const HAND_WORDS: Readonly<Record<Hand, string>> = {
  person: 'a person',
  'answers-file': 'a file of answers',
  program: 'a program',
  pipe: 'a pipe',
  'not-stated': 'an unstated source',
};

/** What a reader must know of answers that no person gave at a terminal; null where one did. */
export const HAND_WARNINGS: Readonly<Record<Hand, string | null>> = {
  person: null,
  'answers-file': 'Answers in this record come from a file, not from a person at the vehicle.',
  program: 'Answers in this record were given by a program, not typed in by a person.',
  pipe: 'Answers in this record came through a pipe: a person, a file or a program may have given them.',
  'not-stated':
    'This record was started with an early version of the program, which did not record who gave the answers.',
};

/** `as judged by rules 1; today's say HIGH`; empty where they say the same. */
export function todayWords(today: JudgedToday | undefined): string {
  return today ? `as judged by rules ${today.rules}; today's say ${today.words}` : '';
}

/** What a conclusion that is not proven rests on, in a record as in its event. */
interface RestsOn {
  readonly restsOn?: unknown;
  readonly evidence: readonly { readonly counted: boolean }[];
}

/**
 * Why a conclusion is not proven: pieces may be enough, and yet one reading carries them all, or another repair is still
 * too likely beside it. Which of the last two it is the event does not say.
 */
export function proofGap({ restsOn, evidence }: RestsOn): keyof typeof GAP_WORDS {
  if (restsOn !== null && restsOn !== undefined) return 'one-reading';
  const pieces = evidence.filter(({ counted }) => counted).length;
  return pieces < PIECES_NEEDED ? 'few-pieces' : 'not-sure';
}

const GAP_WORDS = {
  'one-reading': 'it rests on one reading that was not repeated',
  'few-pieces': 'fewer than three independent pieces of evidence point to it',
  'not-sure': 'another repair is not unlikely enough yet, or the readings do not all agree',
} as const;

/** How sure a conclusion is, and by which rules, where they are not ours; empty without one. */
export function provenWords(record: WithCertainty): string {
  const judged = judgedByWords(record.conclusion?.judgedBy);
  return [certaintyWords(record), judged].filter((words) => words !== '').join('; ');
}

interface WithCertainty {
  readonly circuit: unknown;
  readonly conclusion: (Pick<RecordConclusion, 'proven' | 'judgedBy'> & RestsOn) | null;
}

function provenBy(conclusion: Pick<RecordConclusion, 'proven' | 'judgedBy'>): string {
  if (isProvenToday(conclusion)) return 'proven';
  const { rules, today } = conclusion.judgedBy ?? {};
  return rules === today ? 'called proven' : 'called proven by the rules of that time,';
}

function certaintyWords({ circuit, conclusion }: WithCertainty): string {
  if (!conclusion) return '';
  switch (conclusion.proven) {
    case null:
      return circuit === null
        ? 'not weighed: there is no circuit model to weigh the evidence with'
        : 'not weighed';
    case true:
      return `${provenBy(conclusion)} by at least three independent pieces of evidence`;
    case false:
      return `not proven: ${GAP_WORDS[proofGap(conclusion)]}`;
  }
}

/** What was reported of driving it: when, what the codes did, how. */
export function driveWords({ at, code, words }: SessionRecord['retest']['drives'][number]): string {
  const said = [DRIVEN_WORDS[code], words].filter((part) => part !== '').join('; ');
  return at === '' ? said : `${dateWords(at)}: ${said}`;
}

/** `The work was authorised by R. Example; by telephone, up to 240 EUR (2 March 2026).` */
export function workWords({ at, answer, by, words }: SessionRecord['work'][number]): string {
  const said = [`${answer} by ${by}`, words].filter((part) => part !== '').join('; ');
  return `The work was ${said}${at === '' ? '' : ` (${dateWords(at)})`}.`;
}

/** Whether the tests after the repair pass, and nobody has said yet what a drive showed. */
export function isDriveDue({ retest: { verdict, drives } }: SessionRecord): boolean {
  return drives.length === 0 && (verdict === 'cured' || verdict === 'not-shown');
}

/** Said over what is ruled out where no fault was found. */
export const RIGHT_WHEN_TESTED =
  'Each of these was right when it was tested. A fault that comes and goes does not show while it is away.';

/** Said before the repairs that no reading speaks against. */
export const NOT_RULED_OUT = 'Not tested, or not far enough to rule them out';

/** The verdict after the repair. */
export function verdictWords(verdict: SessionRecord['retest']['verdict']): string {
  switch (verdict) {
    case 'cured':
      return 'fixed, as far as the tests after the repair show: they passed';
    case 'not-cured':
      return 'not fixed: the fault is still there after the repair';
    case 'changed':
      return 'changed: the vehicle behaves differently after the repair, but is not right';
    case 'not-shown':
      return 'not proven: the tests that could be done after the repair passed, but one could not be done';
    case 'no-retest':
      return 'closed without a test after the repair';
    case null:
      return 'open: no test after the repair has closed this session';
  }
}

/** Whether a test after the repair passed, as a cell of a table. */
export function passedCell(passed: boolean | null): Cell {
  if (passed === null) return { parts: ['NOT MADE'] };
  return { parts: [passed ? 'PASSED' : 'FAILED'], tone: passed ? 'good' : 'bad' };
}

/** Labelled facts without those that are empty. */
export function filled(rows: readonly (readonly [string, string])[]): [string, string][] {
  return rows.flatMap(([label, text]) => (text.trim() === '' ? [] : [[label, text]]));
}

/** Of a test that was only written down: when it was made, and what the person says of it; empty for any other. */
export function madeWords({ made, note = '' }: Pick<RecordTest, 'made' | 'note'>): string {
  const when = made === undefined ? '' : `made ${made.includes(':') ? `at ${made}` : made}`;
  return [when, note].filter((one) => one !== '').join('; ');
}
