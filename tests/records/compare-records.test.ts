/** Two sessions side by side, with the tests that no step asked for. */
import { expect, it } from 'vitest';
import { compareRecords } from '../../src/records/compare-records.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { begin, fileOf, freeWalk, signalAt, type Walk } from './sample-session.ts';

/** The cells of each row, by the first of them. */
function rowsOf(left: Walk, right: Walk) {
  const [a, b] = [left, right].map((walk) => recordOf(walk.session, fileOf(walk).head));
  const tables = compareRecords(a!, b!).sections.flatMap(({ blocks }) => blocks);
  return tables.flatMap((block) =>
    block.kind === 'table' ? block.rows.map((row) => row.map(({ parts }) => parts.join(' '))) : [],
  );
}

it('says of both what was followed and where they come from', () => {
  const rows = rowsOf(begin(), freeWalk({ by: 'program' }));
  expect(rows).toContainEqual([
    'Followed',
    'Invented three-wire sensor, no signal',
    'Free order of tests: Invented sensor circuit',
    'DIFFERENT',
  ]);
  expect(rows).toContainEqual([
    'Comes from',
    'a real vehicle, as stated; answers from a person',
    'a real vehicle, as stated; answers from a program',
    'DIFFERENT',
  ]);
});

it('puts the same test of both in one row, the last of each', () => {
  const left = begin().do(signalAt(4.9), signalAt(5.01));
  const rows = rowsOf(left, freeWalk()).filter((row) => row.includes('4.7 to 5.2 V'));
  expect(rows.map((row) => row.slice(1))).toEqual([
    ['4.7 to 5.2 V', '5.01 V, GOOD', '0.02 V, LOW', 'DIFFERENT'],
  ]);
});

it('keeps a test after the repair apart from the same one before it', () => {
  const left = freeWalk().do(signalAt(5.01));
  const rows = rowsOf(left, freeWalk()).filter((row) => row.includes('4.7 to 5.2 V'));
  expect(rows.map(([title, , ...found]) => [/after the repair/.test(title!), ...found])).toEqual([
    [false, '0.02 V, LOW', '0.02 V, LOW', 'same'],
    [true, '5.01 V, GOOD', 'not done', 'DIFFERENT'],
  ]);
});
