/**
 * Gaussian elimination on a dense matrix that is mostly zeros. The diagonal is the pivot wherever it is not too small
 * beside its column (threshold pivoting, as in SPICE): the equations of a node balance there, and swapping a row of
 * megohms for one of milliohms that is larger by a rounding would cost the digits of the megohms.
 */

/** A pivot smaller than this, against the largest entry of the diagonal at the start, means that no equation is left. */
const PIVOT_RATIO_MIN = 1e-15;
/** The diagonal is taken as pivot when it has at least this share of the largest entry below it; SPICE's usual value, from memory. */
const DIAGONAL_SHARE_MIN = 1e-3;
/** A diagonal of less than this many siemens is not made the measure: sources without resistance have none. */
const DIAGONAL_MIN_SIEMENS = 1e-6;

/** Returned by `eliminate` when every unknown was found. */
export const SOLVED = -1;

/** The equations and room to work in, made once. */
export interface Elimination {
  readonly size: number;
  /** `size` rows of `size` coefficients and the right side; overwritten. */
  readonly matrix: Float64Array;
  /** The solution. */
  readonly next: Float64Array;
  readonly rowAt: Int32Array;
  readonly columns: Int32Array;
}

/** Room for `size` unknowns. */
export function createElimination(size: number): Elimination {
  return {
    size,
    matrix: new Float64Array(size * (size + 1)),
    next: new Float64Array(size),
    rowAt: new Int32Array(size),
    columns: new Int32Array(size + 1),
  };
}

/** Solves `matrix` into `next`: `SOLVED`, or the number of the unknown for which no equation is left. */
export function eliminate(work: Elimination): number {
  const { matrix: m, size: n, columns, rowAt, next } = work;
  const width = n + 1;
  let peak = 0;
  for (let i = 0; i < n; i += 1) {
    rowAt[i] = i * width;
    const diagonal = Math.abs(m[i * width + i]!);
    if (diagonal > peak) peak = diagonal;
  }
  const least = PIVOT_RATIO_MIN * Math.max(peak, DIAGONAL_MIN_SIEMENS);
  for (let k = 0; k < n; k += 1) {
    let best = k;
    const diagonal = Math.abs(m[rowAt[k]! + k]!);
    let size = diagonal;
    for (let i = k + 1; i < n; i += 1) {
      const candidate = Math.abs(m[rowAt[i]! + k]!);
      if (candidate > size) {
        size = candidate;
        best = i;
      }
    }
    if (!(size > least)) return k;
    if (diagonal > least && diagonal >= DIAGONAL_SHARE_MIN * size) best = k;
    const pivotRow = rowAt[best]!;
    rowAt[best] = rowAt[k]!;
    rowAt[k] = pivotRow;
    let filled = 0;
    for (let j = k + 1; j < width; j += 1)
      if (m[pivotRow + j] !== 0) {
        columns[filled] = j;
        filled += 1;
      }
    const inverse = 1 / m[pivotRow + k]!;
    for (let i = k + 1; i < n; i += 1) {
      const row = rowAt[i]!;
      const lead = m[row + k]!;
      if (lead === 0) continue;
      const factor = lead * inverse;
      for (let c = 0; c < filled; c += 1) {
        const j = columns[c]!;
        m[row + j]! -= factor * m[pivotRow + j]!;
      }
    }
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    const row = rowAt[k]!;
    let sum = m[row + n]!;
    for (let j = k + 1; j < n; j += 1) {
      const entry = m[row + j]!;
      if (entry !== 0) sum -= entry * next[j]!;
    }
    next[k] = sum / m[row + k]!;
  }
  return SOLVED;
}
