/** When two cars answer a test alike, and when a test tells them apart. */
import { SOUND_INSULATION_OHMS } from '../../../src/circuit/open-values.ts';
import type { MeterUnit, Test } from '../../../src/circuit/test.ts';
import { type Shows, Unsolved, type Vehicle } from './vehicle.ts';

/** Least difference by unit, and a share of the larger reading on top of it. */
export type Limits = Readonly<Record<MeterUnit | 'share', number>>;

/** Readings this near are the same. */
export const SAME: Limits = { V: 0.02, ohm: 2, A: 0.0002, share: 0.03 };
/** Readings this far apart tell two cars apart. */
export const APART: Limits = { V: 0.06, ohm: 6, A: 0.0006, share: 0.08 };

/** What each of the tests shows on the vehicle. */
export async function readingsOf(
  vehicle: Vehicle,
  tests: readonly Test[],
): Promise<(Shows | null)[]> {
  const found: (Shows | null)[] = [];
  for (const test of tests) found.push(await readingOf(vehicle, test));
  return found;
}

/** What the test shows on the vehicle; null where it could not be solved. */
export async function readingOf(vehicle: Vehicle, test: Test): Promise<Shows | null> {
  try {
    return await vehicle.shows(test);
  } catch (error) {
    if (error instanceof Unsolved) return null;
    throw error;
  }
}

/** Whether two readings are within `limits` of each other. What could not be solved tells nothing. */
export function isNear(one: Shows | null, other: Shows | null, limits: Limits): boolean {
  if (!one || !other) return true;
  if (one.kind === 'look' || other.kind === 'look')
    return one.kind === 'look' && other.kind === 'look' && one.look === other.look;
  const [a, b] = [conducting(one), conducting(other)];
  return Math.abs(a - b) <= limits[one.unit] + limits.share * Math.max(Math.abs(a), Math.abs(b));
}

/** Above the ohms of sound insulation nothing conducts, however much it is. */
function conducting({ value, unit }: Extract<Shows, { kind: 'number' }>): number {
  return unit === 'ohm' ? Math.min(value, SOUND_INSULATION_OHMS) : value;
}
