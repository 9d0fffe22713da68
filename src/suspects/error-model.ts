/** What the ranking allows for beyond the meter's uncertainty: a model that rounds, and readings that are slips. */
import { METER_UNITS } from '../circuit/meter-units.ts';
import { SOUND_INSULATION_OHMS } from '../circuit/open-values.ts';
import type { MeterUnit } from '../circuit/test.ts';
import type { Column } from './prediction-table.ts';

/** What the model allows itself. Our assumptions; the reasons stand beside the defaults. */
export interface ErrorModel {
  readonly ofValue: number;
  readonly volts: number;
  readonly ohms: number;
  readonly amps: number;
  readonly wrongReading: number;
  readonly pseudoSamples: number;
  readonly steadyChance: number;
  readonly leakShare: number;
}

export const ERROR_MODEL: ErrorModel = {
  /** A real circuit has wires, contacts and temperatures that the description rounds: 2 % of the value ... */
  ofValue: 0.02,
  /** ... and a few millivolts of offsets in grounds ... */
  volts: 0.005,
  /** ... or of lead and clip resistance. */
  ohms: 0.2,
  /** ... or of some microamperes that leak beside the meter. */
  amps: 20e-6,
  /** One reading in fifty is not what it claims: a lead in the wrong place, a slip, or something not in the model. */
  wrongReading: 0.02,
  /** Looks never seen in the samples may still happen: as if one more sample had shown all looks evenly (Laplace). */
  pseudoSamples: 1,
  /**
   * Whether a fault keeps its size from one reading to the next (then one sample must explain all readings), or
   * changes with heat and movement (then each reading is on its own). Evens, as we know of no count.
   */
  steadyChance: 0.5,
  /**
   * Where nothing should conduct, three readings in ten are no over-limit but some megohms: insulation ages and is damp.
   * Common practice, no source.
   */
  leakShare: 0.3,
};

/** An allowance of nothing, for problems that are exact: published examples, logic puzzles. */
export const EXACT_MODEL: ErrorModel = {
  ofValue: 0,
  volts: 0,
  ohms: 0,
  amps: 0,
  wrongReading: 0,
  pseudoSamples: 0,
  steadyChance: 1,
  leakShare: 0,
};

/** What leaks reads so many ohms, each decade as likely as the next; below it something conducts. Common practice, no source. */
export const LEAK_OHMS = { low: SOUND_INSULATION_OHMS, high: 1e8 } as const;

/** How likely a test that shows over-limit reads `value` ohms, by leaking insulation: per ohm, or of over-limit a chance. */
export function leakDensity(value: number, { leakShare }: ErrorModel): number {
  if (value === Infinity) return 1 - leakShare;
  const { low, high } = LEAK_OHMS;
  return value < low || value > high ? 0 : leakShare / (value * Math.log(high / low));
}

/** Standard deviation of what the model leaves out, at a predicted value. */
export function modelWidth(unit: Column['unit'], at: number, errorModel: ErrorModel): number {
  const size = Math.abs(at);
  // Looks have no unit and no width; nobody asks.
  const absolute = errorModel[METER_UNITS[unit ?? 'V'].by];
  return Math.max(
    errorModel.ofValue * size + absolute,
    LEAST_WIDTH.ofValue * size + LEAST_WIDTH.absolute,
  );
}

/** Standard deviation of two that are independent; as `Math.hypot` to the bit, and much faster. */
export function joinedWidth(one: number, other: number): number {
  const a = Math.abs(one);
  const b = Math.abs(other);
  const most = Math.max(a, b);
  if (most === 0) return 0;
  const first = (a / most) * (a / most);
  const second = (b / most) * (b / most);
  return Math.sqrt(first + second) * most;
}

/** Width that even an exact meter on an exact model has, so that a density exists: a share of the value, and volts or ohms. */
const LEAST_WIDTH = { ofValue: 1e-9, absolute: 1e-9 };

/** How likely a wrong reading is to show `value`: anything, or in volts and amperes the nothing of a lead that does not touch. */
export function slipDensity(
  column: Column,
  value: number,
  standardUncertainty: number,
  errorModel: ErrorModel,
): number {
  const anything = 1 / shownSpan(column, value);
  if (!SLIPS[column.unit ?? 'V'].showNothing) return anything;
  const width = joinedWidth(standardUncertainty, modelWidth(column.unit, 0, errorModel));
  const nothing = Math.exp(-0.5 * (value / width) ** 2) / (width * SQRT_2PI);
  return (1 - NO_TOUCH_SHARE) * anything + NO_TOUCH_SHARE * nothing;
}
/** Half of all slips there are leads without contact. Our assumption. */
const NO_TOUCH_SHARE = 0.5;

/**
 * The span over which a wrong reading is taken to be spread evenly: from the lowest to the highest thing any suspect
 * shows, or as far as this reading lies. In ohms evenly in the logarithm, as ranges there run over decades.
 */
export function shownSpan(column: Column, value: number): number {
  let low = value;
  let high = value;
  for (const at of column.values)
    if (at !== Infinity) {
      low = Math.min(low, at);
      high = Math.max(high, at);
    }
  const unit = column.unit ?? 'V';
  const { spanMin } = SLIPS[unit];
  if (!METER_UNITS[unit].runsOverDecades) return Math.max(high - low, spanMin);
  const size = Math.max(value, spanMin);
  return size * Math.log(Math.max(high, 10 * spanMin) / Math.max(low, spanMin)) + spanMin;
}
/**
 * How slips show in each unit. Where a lead without contact shows nothing, half of them do. A wrong reading can be anywhere
 * within at least a volt or ten milliamperes, whatever the suspects show; below an ohm, ohms are lead resistance. Ours.
 */
const SLIPS: Readonly<
  Record<MeterUnit, { readonly showNothing: boolean; readonly spanMin: number }>
> = {
  V: { showNothing: true, spanMin: 1 },
  ohm: { showNothing: false, spanMin: 1 },
  A: { showNothing: true, spanMin: 0.01 },
};

const SQRT_2PI = Math.sqrt(2 * Math.PI);
