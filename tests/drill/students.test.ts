import { describe, expect, test } from 'vitest';
import { LONG } from '../campaign.ts';
import {
  type DrillAsk,
  type DrillInTest,
  library,
  newDrill,
  partsChanger,
  perfectStudent,
} from './students.ts';

/** 3 drills of one circuit in the ordinary run; the long form has 200 of each. */
const SEEDS = LONG ? 200 : 3;
const CIRCUITS = LONG ? [...library.circuits.keys()] : ['hall-module-fed'];

/** The session of a drill that a student has led to its end. */
function ended(
  seed: number,
  ask: DrillAsk,
  student: (begun: DrillInTest) => void = perfectStudent,
) {
  const begun = newDrill(seed, ask);
  student(begun);
  return begun.driver.session();
}

function results(circuit: string, student: (begun: DrillInTest) => void) {
  const drills = Array.from({ length: SEEDS }, (_, index) => {
    return ended(index + 1, { circuit }, student).revealed!;
  });
  return {
    right: drills.filter(({ right }) => right).length / SEEDS,
    points: drills.reduce((sum, { points }) => sum + points, 0) / SEEDS,
  };
}

describe.each(CIRCUITS)('students on %s', (circuit) => {
  test('one who takes the proposed tests and proves the leader is right in at least 99 of 100 and clearly ahead of a parts-changer', {
    timeout: 600_000,
  }, () => {
    const perfect = results(circuit, perfectStudent);
    const changer = results(circuit, partsChanger);
    expect(perfect.right).toBeGreaterThanOrEqual(0.99);
    expect(changer.right).toBeLessThan(0.6);
    expect(perfect.points - changer.points).toBeGreaterThan(40);
  });
});

test('with a fault that comes and goes, a student who moves the harness finds it', () => {
  // It is there in half of the readings: of eight vehicles it hid in all that matter on two.
  for (const seed of LONG ? [1, 2, 3, 5, 6, 7] : [3, 5])
    expect(ended(seed, { level: 'intermittent' }).revealed!.right).toBe(true);
});

test('a misleading work order misleads one who measures in one drill of two at most', () => {
  const right = Array.from({ length: 2 }, (_, index) => {
    const { opened, revealed } = ended(index + 1, { level: 'misled' });
    expect(opened.vehicle).not.toMatchObject({ earlierRepair: null });
    return revealed!.right;
  });
  expect(right).toContain(true);
});

test('two faults: the scripted student finds both where each shows by itself', () => {
  for (const seed of [2, 4]) {
    const { revealed } = ended(seed, { level: 'double', circuit: 'throttle-potentiometer' });
    expect(revealed!.repairs).toHaveLength(2);
    expect(revealed!.right).toBe(true);
  }
});
