/** Linear equations, solved by hand beside. */
import { describe, expect, test } from 'vitest';
import { createElimination, eliminate, SOLVED } from '../../src/circuit/eliminate.ts';

/** Rows of coefficients and the right side; the solution, or the unknown that has no equation. */
function solve(rows: readonly (readonly number[])[]): number[] | number {
  const work = createElimination(rows.length);
  work.matrix.set(rows.flat());
  const failed = eliminate(work);
  return failed === SOLVED ? [...work.next] : failed;
}

describe('elimination', () => {
  test('solves what has a solution', () => {
    // 2x + y = 5 and x + 3y = 10: x = 1, y = 3
    expect(
      solve([
        [2, 1, 5],
        [1, 3, 10],
      ]),
    ).toEqual([expect.closeTo(1, 12), expect.closeTo(3, 12)]);
    // a chain of three: x + y = 3, y + z = 5, z + x = 4 gives 1, 2, 3
    expect(
      solve([
        [1, 1, 0, 3],
        [0, 1, 1, 5],
        [1, 0, 1, 4],
      ]),
    ).toEqual([1, 2, 3].map((x) => expect.closeTo(x, 12)));
  });
  test('changes rows where the diagonal is zero, or so small that dividing by it would cost digits', () => {
    expect(
      solve([
        [0, 1, 2],
        [1, 1, 3],
      ]),
    ).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
    // e x + y = 1 and x + y = 2: x = 1 / (1 - e), y = (1 - 2e) / (1 - e)
    const e = 1e-9;
    const [x, y] = solve([
      [e, 1, 1],
      [1, 1, 2],
    ]) as number[];
    expect(Math.abs(x! - 1 / (1 - e))).toBeLessThan(1e-14);
    expect(Math.abs(y! - (1 - 2 * e) / (1 - e))).toBeLessThan(1e-14);
  });
  test('keeps a node of megohms apart from one of milliohms that is larger by a rounding only', () => {
    // A leak of a nanosiemens hangs on a node held at 12 V by 12 siemens: no current, so both stand at 12 V.
    const leak = 1e-9;
    const more = leak * (1 + 2 ** -52);
    const [far, held] = solve([
      [leak, -leak, 0],
      [-more, 12 + leak, 12 * 12],
    ]) as number[];
    expect(Math.abs(held! - 12)).toBeLessThan(1e-9);
    expect(Math.abs(far! - held!)).toBeLessThan(1e-9);
  });
  test('names the unknown for which no equation is left', () => {
    expect(
      solve([
        [1, 1, 2],
        [2, 2, 4],
      ]),
    ).toBe(1);
    expect(
      solve([
        [0, 1, 2],
        [0, 1, 2],
      ]),
    ).toBe(0);
    expect(
      solve([
        [Number.NaN, 1, 2],
        [0, 1, 2],
      ]),
    ).toBe(0);
  });
});
