/** Two sessions side by side, or the same session before and after the repair. */

import type { RecordLine, RecordTest, SessionRecord } from './record-form.ts';
import type { Cell, Report, Section } from './report-form.ts';
import { dateWords, passedCell, provenWords, verdictWords } from './report-words.ts';

/** Two sessions: facts, then each step of either with what was found in both. */
export function compareRecords(left: SessionRecord, right: SessionRecord): Report {
  const facts: [string, (record: SessionRecord) => string][] = [
    ['Session', (record) => record.id],
    ['Comes from', (record) => record.origin],
    ['Followed', (record) => record.title],
    ['Started', (record) => dateWords(record.startedAt)],
    ['Person', (record) => record.person],
    ['Vehicle', (record) => record.job.vehicle.words],
    ['Plate', (record) => record.job.vehicle.plate],
    ['Complaint', (record) => record.complaint],
    ['Codes', (record) => record.job.codes.join(', ')],
    ['Cause', (record) => record.cause || 'not concluded'],
    ['Certainty', provenWords],
    ['After the repair', (record) => verdictWords(record.retest.verdict)],
  ];
  const rows = facts.map(([label, of]) => row([label, ''], of(left), of(right)));
  return {
    title: 'Two sessions compared',
    subtitle: [left.id, right.id],
    warnings: practiceWarning(left, right),
    sections: [
      section('Facts', 'What is known about both', ['', left.id, right.id, 'Same?'], rows),
      section(
        'Measurements',
        'Answers by step, and tests outside the procedure',
        ['Test', 'Expected', left.id, right.id, 'Same?'],
        stepRows(left, right),
      ),
    ],
    origin: [...new Set([left.origin, right.origin])].join(' / '),
    id: `${left.id}, ${right.id}`,
    head: `${left.head.hash}, ${right.head.hash}`,
  };
}

/** One session before and after the repair; null when nothing was repeated. */
export function beforeAndAfter(record: SessionRecord): Report | null {
  if (record.retest.rows.length === 0) return null;
  const rows = record.retest.rows.map((one): Cell[] => [
    { parts: [one.title, one.where].filter((part) => part !== '') },
    { parts: [one.expected] },
    { parts: [one.before || 'not taken'] },
    { parts: [one.after] },
    passedCell(one.passed),
  ]);
  return {
    title: 'Before and after the repair',
    subtitle: [record.id, dateWords(record.startedAt)],
    warnings: practiceWarning(record, record),
    sections: [
      section('Measurements', verdictWords(record.retest.verdict), BEFORE_AFTER_HEADS, rows),
    ],
    origin: record.origin,
    id: record.id,
    head: record.head.hash,
  };
}

const BEFORE_AFTER_HEADS = ['Test', 'Expected', 'Before', 'After', 'Result'];

function practiceWarning(left: SessionRecord, right: SessionRecord): string[] {
  if (left.vehicle === 'real' && right.vehicle === 'real') return [];
  return ['Practice: some of these readings are from a simulated vehicle.'];
}

function section(
  heading: string,
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Cell[])[],
): Section {
  const widths = heads.map((_, i) => (i === heads.length - 1 ? 1 : 2));
  return { heading, blocks: [{ kind: 'table', caption, heads, widths, rows }] };
}

function row([label, expected]: readonly [string, string], left: string, right: string): Cell[] {
  const same = left === right;
  const cells = [left, right].map((words) => ({ parts: words === '' ? [] : [words] }));
  const mark: Cell = same ? { parts: ['same'] } : { parts: ['DIFFERENT'], tone: 'unsure' };
  return [{ parts: [label] }, ...(expected ? [{ parts: [expected] }] : []), ...cells, mark];
}

function stepRows(left: SessionRecord, right: SessionRecord): Cell[][] {
  const [first, second] = [standing(left), standing(right)];
  const ids = [...new Set([...first.keys(), ...second.keys()])];
  return ids.map((id) => {
    const [a, b] = [first.get(id), second.get(id)];
    const made = a ?? b;
    const isAfter = made !== undefined && 'afterRepair' in made && made.afterRepair;
    const title = `${made?.title ?? id}${isAfter ? ' (after the repair)' : ''}`;
    const none = made && 'step' in made ? 'not asked' : 'not done';
    const expected = [...new Set([a?.expected, b?.expected])].filter((words) => words);
    const words = (line: Made | undefined) =>
      line ? [line.found, line.verdict?.toUpperCase()].filter((part) => part).join(', ') : '';
    return row(
      [title, expected.join(' / ') || 'no fixed value'],
      words(a) || none,
      words(b) || none,
    );
  });
}

type Made = RecordLine | RecordTest;

/** The last standing answer of each step and the last of each other test; what was made again later counts once. */
function standing({ lines, tests }: SessionRecord): Map<string, Made> {
  const kept = lines.filter((line) => line.standing === 'standing');
  const byStep = kept.map((line): [string, Made] => [`step ${line.step}`, line]);
  const byPlace = tests.map((test): [string, Made] => {
    const { title, where, setup, afterRepair } = test;
    return [JSON.stringify([title, where, setup, afterRepair]), test];
  });
  return new Map([...byStep, ...byPlace]);
}
