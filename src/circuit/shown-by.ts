/** What an instrument shows: digits in a unit, or one of its looks. */
import {
  LOOKS,
  type Look,
  type MeterUnit,
  type NumberProbe,
  type Probe,
  type Test,
  UNIT_OF,
} from './test.ts';

/** Whether a probe gives a number. */
export function isNumberProbe(probe: Probe): probe is NumberProbe {
  return Object.hasOwn(UNIT_OF, probe.kind);
}

/** The unit of its number; null where it shows a look. */
export function unitShownBy(probe: Probe): MeterUnit | null {
  return isNumberProbe(probe) ? UNIT_OF[probe.kind] : null;
}

/** Visible damage, from best to worst; empty for a number. */
export function looksShownBy(probe: Probe): readonly Look[] {
  return isNumberProbe(probe) ? [] : LOOKS[probe.kind];
}

/** The unit of the number that a test gives; of one that shows looks nobody asks. */
export function numberUnitOf({ probe }: Pick<Test, 'probe'>): MeterUnit {
  return unitShownBy(probe) ?? 'V';
}
