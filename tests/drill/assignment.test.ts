import { describe, expect, test } from 'vitest';
import { loadAssignment, seedFor, studentKey } from '../../src/drill/assignment.ts';
import { loadActions } from '../../src/drill/drill-actions.ts';
import { hash } from './students.ts';

const TEXT = `assignment: week-3
title: Hall sensors
drills:
  - { procedure: hall-no-signal, level: named, seed: 12 }
  - { procedure: hall-module-fed, level: blind, limit-minutes: 30 }
`;
const week = loadAssignment(TEXT, 'week.yaml').value!;

test('an assignment lists drills with level, seed and time limit', () => {
  expect(week).toEqual({
    name: 'week-3',
    title: 'Hall sensors',
    drills: [
      { procedure: 'hall-no-signal', level: 'named', seed: 12, limitMinutes: null },
      { procedure: 'hall-module-fed', level: 'blind', seed: null, limitMinutes: 30 },
    ],
  });
});

describe('seeds', () => {
  test('a fixed seed is everybody’s', () => {
    expect(seedFor(week, 1, 'Ada', hash)).toBe(12);
    expect(seedFor(week, 1, 'Bo', hash)).toBe(12);
  });
  test('an own seed goes by the name, however it is typed, and by the part', () => {
    const own = seedFor(week, 2, 'Ada Example', hash);
    expect(seedFor(week, 2, '  ada   EXAMPLE ', hash)).toBe(own);
    expect(seedFor(week, 2, 'Bo Example', hash)).not.toBe(own);
    // By hand: the first 32 bits of SHA-256 over the four lines.
    const text = 'ohmward assignment\nweek-3\n2\nada example';
    expect(own).toBe(Number.parseInt(hash(text).slice(0, 8), 16));
    expect(studentKey('A\u030Ada')).toBe(studentKey('\u00C5da'));
  });
});

test.each([
  ['assignment: week-3\ndrills: []\n', 2],
  ['assignment: week-3\ndrills:\n  - { procedure: x, level: hard }\n', 3],
  ['assignment: week-3\ndrills:\n  - { procedure: x, level: named, seed: -1 }\n', 3],
  ['assignment: week-3\ndrills:\n  - { procedure: x, level: named, limit: 3 }\n', 3],
  ['assignment: Week 3\ndrills:\n  - { procedure: x, level: named }\n', 1],
])('a mistake in an assignment is shown at its line: %j', (text, line) => {
  const { value, issues } = loadAssignment(text, 'week.yaml');
  expect(value).toBeNull();
  expect(issues[0]!.at.line).toBe(line);
});

test('a mistake in a file of actions is shown at its line', () => {
  const { value, issues } = loadActions('actions:\n  - mesure: volts a b\n', 'a.yaml');
  expect(value).toBeNull();
  expect(issues[0]!.at.line).toBe(2);
});
