/** What a drill that had dangerous tests says of them: as many as there were. */
import { expect, test } from 'vitest';
import { levelNamed } from '../../src/drill/levels.ts';
import { adviceFor, type DrillShown } from '../../src/drill/next-practice.ts';
import { scoreWords } from '../../src/drill/score.ts';

const SHOWN: DrillShown = {
  right: true,
  hits: 1,
  needed: 1,
  named: 1,
  evidence: 3,
  minutes: 20,
  yardstickMinutes: 20,
  late: false,
  readings: 6,
  stopped: 1,
  passedOver: 0,
  level: levelNamed('named'),
  wasted: 0,
  danger: 'an ohmmeter needs the key off',
  classes: ['wire'],
};

test('one test that was stopped', () => {
  expect(adviceFor(SHOWN)).toContain('The bench stopped one: an ohmmeter needs the key off.');
  expect(scoreWords({ name: 'danger' }, SHOWN)).toMatch(/^a test that would/);
});

test('three that were stopped are three, of which the first is told', () => {
  const three = { ...SHOWN, stopped: 3 };
  expect(adviceFor(three)).toContain(
    'The bench stopped 3 tests; the first: an ohmmeter needs the key off.',
  );
  expect(scoreWords({ name: 'danger' }, three)).toMatch(/^3 tests that would/);
});
