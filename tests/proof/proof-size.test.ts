/** How large a circuit and a tree may be together, and what is said where they are larger. The limits are ours. */
import { expect, it } from 'vitest';
import { ISSUE_CODES } from '../../src/commands/check/issue-codes.ts';
import { proofSize } from '../../src/proof/proof-size.ts';
import { checkExample } from './example.ts';

const { linked } = checkExample();
const faults = linked!.circuit!.faults;
/** The example's tree over a circuit with so many times its faults. */
const withFaults = (times: number) => ({
  ...linked!,
  circuit: { ...linked!.circuit!, faults: Array.from({ length: times }, () => faults).flat() },
});
/** The fewest times of its faults of which this holds. */
const leastTimes = (holds: (codes: readonly string[]) => boolean) => {
  for (let times = 1; times < 10_000; times += 1)
    if (holds(proofSize(withFaults(times), 256).issues.map(({ code }) => code))) return times;
  throw new Error('never');
};

it('a tree over an ordinary circuit is proved with all cars, and nothing is said', () => {
  expect(proofSize(linked!, 256)).toEqual({ cars: 256, issues: [] });
});

it('what is larger is proved with as many fewer cars, which the author is told', () => {
  const times = leastTimes((codes) => codes.includes('fewer-cars'));
  expect(proofSize(withFaults(times - 1), 256).cars).toBe(256);
  const { cars, issues } = proofSize(withFaults(2 * times), 256);
  // Twice the faults with half the cars: as much work as at the limit.
  expect(cars).toBeGreaterThan(0.49 * 256 - 1);
  expect(cars).toBeLessThanOrEqual(128);
  const [issue] = issues;
  expect(issue).toMatchObject({ severity: 'warning', fix: expect.stringContaining('--cars 256') });
  expect(issue!.words).toContain(`with ${cars} cars of each fault instead of 256`);
  expect(issue!.words).toContain(`${2 * times * faults.length} faults`);
});

it('at least some cars of each fault go through whatever is proved at all', () => {
  const times = leastTimes((codes) => codes.includes('not-proved'));
  expect(proofSize(withFaults(times - 1), 256).cars).toBeGreaterThan(64);
  expect(proofSize(withFaults(times - 1), 32).cars).toBeGreaterThan(8);
  const { cars, issues } = proofSize(withFaults(times), 256);
  expect(cars).toBe(0);
  expect(issues.map(({ severity }) => severity)).toEqual(['error']);
});

it('the codes are explained', () => {
  expect(ISSUE_CODES).toHaveProperty('fewer-cars');
  expect(ISSUE_CODES).toHaveProperty('not-proved');
});
