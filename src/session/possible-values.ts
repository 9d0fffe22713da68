/** What a test can show in this circuit, and why a value is doubted that none of it comes near. */

import type { Span } from '../circuit/circuit.ts';
import { functionOf, METER_UNITS } from '../circuit/meter-units.ts';
import type { Meter, MeterUnit } from '../circuit/test.ts';
import { formatQuantity, formatRange } from '../quantity/format-quantity.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import { ERROR_MODEL, LEAK_OHMS, modelWidth } from '../suspects/error-model.ts';
import type { Reach } from '../suspects/shown-reach.ts';

/** What a test can show here, and what is needed to say why a value is doubted. */
export interface PossibleValues extends Reach {
  readonly unit: MeterUnit;
  readonly meter: Meter;
  /** The pins beside the leads with what the sound circuit shows there; worked out when something is doubted. */
  readonly beside: () => readonly Beside[];
}

/** What a lead would show a pin farther on. */
export interface Beside {
  /** `feed at the crankshaft position sensor` */
  readonly words: string;
  readonly span: Span;
}

/** Nothing comes near a value that lies so many widths of meter and model from all of it. */
const FAR_WIDTHS = 6;
/** What a slip of the hand makes of a number: mV for V, a point in the wrong place. The first that fits is named. */
const SLIPS = [1000, 1 / 1000, 10, 1 / 10];
/** Below this it is nothing, which most tests can show: that a slip would make it fit says nothing. Our choice. */
const NOTHING: Readonly<Record<MeterUnit, number>> = { V: 0.1, ohm: 1, A: 5e-4 };

/** Why a value cannot be what it seems, without a full stop, or null. `isGood` says whether another one would be good. */
export function impossibleWords(
  possible: PossibleValues,
  value: number,
  isGood: (value: number) => boolean,
): string | null {
  if (isPossible(possible, value)) return null;
  const { unit } = possible;
  const shown = formatQuantity({ value, unit });
  const fits = SLIPS.map((factor) => value * factor).filter(
    (one) => Number.isFinite(one) && Math.abs(one) >= NOTHING[unit] && isPossible(possible, one),
  );
  const good = fits.find(isGood);
  const pin = good === undefined ? pinBeside(possible, value) : undefined;
  const meant = good ?? (pin ? undefined : fits[0]);
  const slip = pin
    ? `; ${pin.words} would show that: check where both leads are`
    : meant === undefined
      ? '; check both leads'
      : `; ${formatQuantity({ value: meant, unit })} would fit: check unit and point`;
  return `nothing in this circuit shows ${shown} here: it shows ${reachWords(possible)}${slip}`;
}

/** Whether anything comes near the value. */
export function isPossible(
  { spans, overLimit, unit, meter }: Omit<PossibleValues, 'beside'>,
  value: number,
): boolean {
  if (value === Number.POSITIVE_INFINITY) return overLimit;
  if (overLimit && METER_UNITS[unit].overLimitMeansOpen && value >= LEAK_OHMS.low) return true;
  return spans.some((span) => isNear(span, value, unit, meter));
}

function isNear({ low, high }: Span, value: number, unit: MeterUnit, meter: Meter): boolean {
  const nearest = Math.min(Math.max(value, low), high);
  const { standard } = meterUncertainty(functionOf(meter, unit), value);
  const width = Math.hypot(standard, modelWidth(unit, nearest, ERROR_MODEL));
  return Math.abs(value - nearest) <= FAR_WIDTHS * width;
}

function pinBeside({ beside, unit, meter }: PossibleValues, value: number): Beside | undefined {
  return beside().find(({ span }) => isNear(span, value, unit, meter));
}

function reachWords({ spans, overLimit, unit, meter }: PossibleValues): string {
  const told: Span[] = [];
  for (const span of spans) {
    const last = told.at(-1);
    // Cars between those that were asked fill what is no wider than an error.
    if (last && isNear(last, span.low, unit, meter))
      told[told.length - 1] = { low: last.low, high: Math.max(last.high, span.high) };
    else told.push(span);
  }
  const words = told.map(({ low, high }) =>
    formatRange(shownEnd(low, unit), shownEnd(high, unit), unit),
  );
  return [...words, ...(overLimit ? ['OL'] : [])].join(' or ') || 'no number';
}

/** Less is nothing: a few millivolts, milliohms or microamperes. */
const SHOWN_LEAST: Readonly<Record<MeterUnit, number>> = { V: 0.02, ohm: 0.02, A: 2e-5 };

/** With the digits that a meter has. */
function shownEnd(value: number, unit: MeterUnit): number {
  return Math.abs(value) < SHOWN_LEAST[unit] ? 0 : Number(value.toPrecision(3));
}
