/**
 * What a good circuit shows at a step, and the limits that follow from it.
 *
 * The circuit model gives the span over all tolerances. The limits of `good` stand outside that span by what the
 * meter itself may be off and by what the model leaves out, rounded outwards to digits a person would write.
 */
import { functionOf, METER_UNITS } from '../circuit/meter-units.ts';
import type { Expected, Model } from '../circuit/model.ts';
import { SOUND_INSULATION_OHMS } from '../circuit/open-values.ts';
import type { Meter, MeterUnit, Test } from '../circuit/test.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import type { ExpectedRange } from './procedure.ts';

/** Part of the value that the model leaves out: temperature, ageing, loads not drawn. An assumption. */
const MODEL_ALLOWANCE = 0.01;
/** Digits a limit is given with. */
const LIMIT_DIGITS = 3;

/** The healthy span of a number at this test, or null when the test shows looks. */
export function computedRange(model: Model, test: Test): ExpectedRange | null {
  return rangeOf(model.meter, model.expected(test));
}

/** The limits of `good` around what is expected; null for looks. */
export function rangeOf(meter: Meter, expected: Expected): ExpectedRange | null {
  if (expected.kind !== 'number') return null;
  const { low, nominal, high, unit } = expected;
  const { ranges } = functionOf(meter, unit);
  const top = ranges[ranges.length - 1] ?? Number.MAX_VALUE;
  return {
    low: low > top ? leastOver(top, unit) : outwards(low - allowance(meter, unit, low), -1),
    nominal: Number.isFinite(nominal) ? nominal : null,
    high: high > top ? null : outwards(high + allowance(meter, unit, high), 1),
    from: 'circuit',
  };
}

/** Where a good circuit shows over-limit, the least that is as good: nothing there conducts but insulation. */
function leastOver(top: number, unit: MeterUnit): number {
  return METER_UNITS[unit].overLimitMeansOpen ? Math.min(top, SOUND_INSULATION_OHMS) : top;
}

function allowance(meter: Meter, unit: MeterUnit, value: number): number {
  if (!Number.isFinite(value)) return 0;
  return meterUncertainty(functionOf(meter, unit), value).limit + MODEL_ALLOWANCE * Math.abs(value);
}

/** Rounded to `LIMIT_DIGITS` digits, away from the span. */
function outwards(value: number, direction: 1 | -1): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - LIMIT_DIGITS + 1);
  const steps = direction > 0 ? Math.ceil(value / step) : Math.floor(value / step);
  return Number((steps * step).toPrecision(LIMIT_DIGITS));
}
