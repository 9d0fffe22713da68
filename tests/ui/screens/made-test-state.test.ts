/** When a test was made that was done before it was written down. */
import { expect, test } from 'vitest';
import { BEFORE_THE_JOB } from '../../../src/session/events.ts';
import { readMade } from '../../../src/ui/screens/made-test-state.ts';

test.each<[typed: string, made: string | null]>([
  ['', BEFORE_THE_JOB],
  ['before', BEFORE_THE_JOB],
  [' Before the job ', BEFORE_THE_JOB],
  ['14:05', '14:05'],
  ['9.30', '09:30'],
  ['7h15', '07:15'],
  ['0:00', '00:00'],
  ['23:59', '23:59'],
  ['24:00', null],
  ['12:60', null],
  ['99:99', null],
  ['14:5', null],
  ['beforehand', null],
  ['at noon', null],
  ['14:05:30', null],
])('"%s" is %s', (typed, made) => {
  expect(readMade(typed)).toBe(made);
});
