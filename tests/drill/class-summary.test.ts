/** A class in numbers, its table and its CSV, over a drill of an early version with other students, points and ends. */
import { expect, test } from 'vitest';
import { classCsv } from '../../src/commands/drill/class-csv.ts';
import { classTable } from '../../src/commands/drill/class-table.ts';
import { type ClassDrill, classSummary } from '../../src/drill/class-summary.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';

const read = readSessionFile(nodeDisk, 'tests/log/versions/drill-1-followed.jsonl');
if (!read.ok) throw new Error('an early drill is not read');
const { session } = read;
const { vehicle } = session.opened;
if (vehicle.kind !== 'drill') throw new Error('no drill');

/** The drill as another student did it; without points it was left before its end. */
function drillOf(file: string, person: string, points: number | null, part = 1): ClassDrill {
  const revealed = points === null ? null : { ...session.revealed!, points, right: points >= 60 };
  const assignment = { name: 'week-3', part, limitMinutes: null };
  return {
    file,
    drill: { ...session, opened: { ...session.opened, person }, revealed },
    vehicle: { ...vehicle, assignment } as ClassDrill['vehicle'],
  };
}

const CLASS = [
  drillOf('d.jsonl', 'Cy', 9),
  drillOf('c.jsonl', 'bo ', 100, 2),
  drillOf('b.jsonl', 'Bo', 90, 1),
  drillOf('a.jsonl', 'Ada', 60),
  drillOf('e.jsonl', 'Di', null),
];

test('drills stand in bins of ten points, full marks in the last; those left open in none', () => {
  const { bins } = classSummary(CLASS);
  //                      9, none, 60 to 69, 90 and 100
  expect(bins).toEqual([1, 0, 0, 0, 0, 0, 1, 0, 0, 2]);
});

test('students are counted as people write their names, and drills that were finished', () => {
  const { students, finished, rows } = classSummary(CLASS);
  expect({ students, finished }).toEqual({ students: 4, finished: 4 });
  expect(rows.map(({ file }) => file)).toEqual([
    'a.jsonl',
    'b.jsonl',
    'c.jsonl',
    'd.jsonl',
    'e.jsonl',
  ]);
});

test('mean and median are over what was finished; a median of two is their middle', () => {
  expect(classSummary(CLASS)).toMatchObject({ meanPoints: 64.75, medianPoints: 75 });
  expect(classSummary(CLASS.slice(0, 3))).toMatchObject({ medianPoints: 90 });
  expect(classSummary(CLASS.slice(4))).toMatchObject({ meanPoints: null, medianPoints: null });
});

test('a drill that was done from a file of actions is told apart from one done by hand', () => {
  const byHand = session.events.map((event) =>
    'by' in event ? ({ ...event, by: 'person' } as typeof event) : event,
  );
  const own = drillOf('f.jsonl', 'Eli', 70);
  const { rows } = classSummary([
    drillOf('a.jsonl', 'Ada', 60),
    { ...own, drill: { ...own.drill, events: byHand } },
  ]);
  // The early drill was made from a file of actions.
  expect(rows.map(({ fromActions }) => fromActions)).toEqual([true, false]);
});

test('how a class of faults was found counts finished drills only', () => {
  const { misses, rows } = classSummary(CLASS);
  const [name] = rows[0]!.classes;
  expect(misses).toEqual([{ class: name, right: 3, total: 4 }]);
});

test('the table has a line a drill, its sums, and what is doubtful', () => {
  const doubtful = [{ file: 'x.jsonl', kind: 'altered', words: 'line 3 was changed' }] as const;
  const table = classTable(classSummary(CLASS), doubtful).split('\n');
  const [head, ada, , bo, cy, di] = table.map((line) => line.split(/ {2,}/));
  expect(head).toEqual(expect.arrayContaining(['student', 'procedure', 'level']));
  expect(ada!.join(' ')).toMatch(/^Ada .* 60 +yes /);
  expect(bo!.join(' ')).toMatch(/^bo .* 100 +yes /);
  expect(cy!.join(' ')).toMatch(/^Cy .* 9 +NO /);
  expect(di!.join(' ')).toMatch(/^Di .* - +open /);
  expect(table.slice(6)).toEqual([
    '',
    '4 students, 5 drills, 4 finished',
    'points: mean 64.8, median 75.0',
    expect.stringMatching(/^faults in .*: 3 of 4 found$/),
    '',
    'Look at these files:',
    'altered: x.jsonl: line 3 was changed',
    '',
  ]);
});

test('the table of a class that finished nothing has no points and no doubts', () => {
  const lines = classTable(classSummary(CLASS.slice(4)), []).split('\n');
  expect(lines.slice(2)).toEqual(['', '1 students, 1 drills, 0 finished', '']);
});

test('the CSV has each column by its head, with the remark on its file', () => {
  const csv = classCsv(classSummary(CLASS), [
    { file: 'a.jsonl', kind: 'altered', words: 'one' },
    { file: 'a.jsonl', kind: 'altered', words: 'two' },
    { file: 'x.jsonl', kind: 'altered', words: 'three' },
  ]);
  const rows = csv
    .split('\r\n')
    .slice(0, -1)
    .map((line) => line.split(',').map((cell) => cell.replace(/^"(.*)"$/, '$1')));
  const [heads] = rows;
  const at = (row: number, name: string) => rows[row]![heads!.indexOf(name)];
  expect(rows.map((row) => row.length)).toEqual(rows.map(() => heads!.length));
  expect([1, 2, 3, 4, 5].map((row) => at(row, 'points'))).toEqual(['60', '90', '100', '9', '']);
  expect([1, 4, 5].map((row) => at(row, 'right'))).toEqual(['yes', 'no', '']);
  expect([4, 5].map((row) => at(row, 'finished'))).toEqual(['yes', 'no']);
  expect([1, 3].map((row) => at(row, 'part'))).toEqual(['1', '2']);
  expect(at(1, 'assignment')).toBe('week-3');
  expect([1, 2, 6].map((row) => at(row, 'remarks'))).toEqual([
    'altered: one; altered: two',
    '',
    'altered: three',
  ]);
  expect(at(6, 'student')).toBe('');
  const score = session.revealed!.score;
  for (const { name, points } of score) expect(at(1, name)).toBe(String(points));
});
