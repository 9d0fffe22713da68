/** A reading that says more of how it was taken than of the vehicle: asked about before it counts. */
import type { Judgement } from '../circuit/judge.ts';
import { isMeterUnit, METER_UNITS } from '../circuit/meter-units.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import { impossibleWords, type PossibleValues } from './possible-values.ts';

type JudgeValue = (value: number) => Judgement | null;

/**
 * Why a reading is doubted, in words without a full stop, or null: over limit where it is no answer, what a dead meter
 * shows as well, a value that would be good with the leads exchanged or in a thousandth or a thousand of its unit, or one
 * that nothing in the circuit shows. `judge` is that of the step; `possible` gives what the test can show, null where
 * nobody knows.
 */
export function doubtReading(
  value: number,
  unit: string,
  judge: JudgeValue,
  possible: () => PossibleValues | null = () => null,
): string | null {
  const meter = isMeterUnit(unit) ? { unit, ...METER_UNITS[unit] } : null;
  if (meter && !meter.overLimitMeansOpen && value === Number.POSITIVE_INFINITY)
    return meter.overLimitWords;
  const isGood = (one: number) => judge(one)?.verdict === 'good';
  // Where good has no lower end any minus is good: volts that are lost would all be those of swapped leads.
  const isEndless = (one: number) => one > 0 && isGood(-one * FAR_BELOW);
  const verdict = judge(value)?.verdict;
  const isOff = verdict === 'low' || verdict === 'high';
  // Of an over-limit nothing is known but that it is large; ohms have no sign.
  if (isOff && meter?.isSigned && Number.isFinite(value) && isGood(-value) && !isEndless(value))
    return 'the leads look swapped: with red and black the other way round it would be good';
  const dead = meter?.deadMeter;
  if (isOff && dead && Math.abs(value) < dead.below) return dead.words;
  const meant = isOff && meter ? inOtherUnit(value, isGood) : null;
  if (meter && meant !== null)
    return `${formatQuantity({ value: meant, unit: meter.unit })} would be good here: check the unit`;
  if (isGood(value)) return null;
  const known = possible();
  return known && impossibleWords(known, value, isGood);
}

/** A minus so many times as large is good only where good has no lower end. Our choice. */
const FAR_BELOW = 1000;

/** Milli, kilo and mega are one key apart. */
const OTHER_UNITS = [1000, 1 / 1000];
/** Where so much more and so much less would be good as well, that it would be good says nothing. Our choice. */
const NARROW_TIMES = 1.5;

function inOtherUnit(value: number, isGood: (value: number) => boolean): number | null {
  const meant = OTHER_UNITS.map((factor) => value * factor).find(isGood);
  if (meant === undefined || !Number.isFinite(meant)) return null;
  return isGood(meant * NARROW_TIMES) || isGood(meant / NARROW_TIMES) ? null : meant;
}
