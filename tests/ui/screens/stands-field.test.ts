/** Where the maker states that the edges stand: on the sheet, and in a job file. */
import { expect, test } from 'vitest';
import { emptyJob } from '../../../src/procedure/job.ts';
import { loadJob } from '../../../src/procedure/load-job.ts';
import { fieldProblem, jobOf, jobSheet } from '../../../src/ui/screens/job-sheet-state.ts';
import { shipped } from '../../circuit/shipped.ts';

const STANDS = 'falls at 114 deg, rises at 294 deg; within 4 deg';
const CIRCUIT = shipped('hall-module-fed');
const sheetOf = (stands: string) => jobSheet({ ...emptyJob('x'), stands }, [], CIRCUIT);

test('a sheet keeps them, and refuses what nobody can understand', () => {
  expect(jobOf(sheetOf(STANDS), emptyJob(''), [], CIRCUIT).stands).toBe(STANDS);
  expect(fieldProblem(sheetOf(STANDS), CIRCUIT)).toBeNull();
  expect(fieldProblem(sheetOf('at the mark'), CIRCUIT)?.words).toContain('write it as "falls at');
});

test('what turns with no crankshaft is not asked for them', () => {
  const wheel = jobSheet(emptyJob('x'), [], shipped('current-two-wire'));
  expect(wheel.fields.some(({ key }) => key === 'stands')).toBe(false);
});

test('a job file has them in the same words', () => {
  const read = (text: string) => loadJob(`complaint: x\nstands: "${text}"\n`, 'job.yaml').value;
  expect(read(STANDS)?.job.stands).toBe(STANDS);
  expect(read('at the mark')).toBeNull();
});
