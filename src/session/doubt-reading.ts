/** A reading that says more of how it was taken than of the vehicle: asked about before it counts. */
import type { Judgement } from '../circuit/judge.ts';

/**
 * Why a reading is doubted, in words without a full stop, or null: over limit where volts are asked, or a value that
 * would be good with the leads exchanged. `judge` is that of the step.
 */
export function doubtReading(
  value: number,
  unit: string,
  judge: (value: number) => Judgement | null,
): string | null {
  if (unit === 'V' && value === Number.POSITIVE_INFINITY)
    return 'over limit on a volts range: check the range, and that the meter is on volts';
  const verdict = judge(value)?.verdict;
  if ((verdict === 'low' || verdict === 'high') && judge(-value)?.verdict === 'good')
    return 'the leads look swapped: with red and black exchanged it would be good';
  return null;
}
