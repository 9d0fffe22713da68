/** The 95 % interval of a share (Wilson 1927; Brown, Cai and DasGupta 2001 compare it with others). */

/** Standard deviations of a normal that leave 5 % outside. */
const Z = 1.959964;

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** `count` of `of`; all of it where nothing was counted. */
export function wilson(count: number, of: number): Interval {
  if (of === 0) return { low: 0, high: 1 };
  const share = count / of;
  const middle = share + Z ** 2 / (2 * of);
  const half = Z * Math.sqrt((share * (1 - share)) / of + Z ** 2 / (4 * of ** 2));
  const whole = 1 + Z ** 2 / of;
  return { low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) };
}

/** `97.2 % (95.9 to 98.1)`; a dash where nothing was counted. */
export function shareWords(count: number, of: number): string {
  if (of === 0) return '-';
  const { low, high } = wilson(count, of);
  const percent = (share: number) => (100 * share).toFixed(1);
  return `${percent(count / of)} % (${percent(low)} to ${percent(high)})`;
}
