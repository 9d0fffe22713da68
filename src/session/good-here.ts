/** What is good for this car in a test, what tells it, and whether a value there says anything alone. */

import type { Span } from '../circuit/circuit.ts';
import type { MeterUnit } from '../circuit/test.ts';
import type { EventNumber, ExpectedShown } from './events.ts';

/** The good range of a test on this car. */
export interface GoodHere {
  readonly expected: Extract<ExpectedShown, { kind: 'number' }>;
  /** The reading that narrowed it most; null while none has. */
  readonly from: EventNumber | null;
  /** What is good lies so far apart that nearly any value would be. */
  readonly isWide: boolean;
}

/** What is good now, and how each telling reading moved it. */
export interface GoodHereAsk {
  /** What is good now. */
  readonly expected: ExpectedShown;
  readonly unit: MeterUnit;
  /** Nominal, of the battery at rest. */
  readonly batteryVolts: number;
  /** What was good before and after each reading that told a value of the car. */
  readonly told: readonly {
    readonly event: EventNumber;
    readonly before: ExpectedShown;
    readonly after: ExpectedShown;
  }[];
}

/** Ends so many times apart, or over this part of the battery, are wide. Our choice. */
const WIDE_TIMES = 3;
const WIDE_PART = 1 / 3;
/** Below this a voltage is a drop, and compared with nothing: its ends may lie many times apart. Our choice. */
const DROP_VOLTS = 0.5;
/** A reading that leaves more than this part of a range has not narrowed it; so little is the scatter of the cars. Our choice. */
const NARROWED_PART = 0.8;

/** What is good here; null for looks. */
export function goodHere({ expected, unit, batteryVolts, told }: GoodHereAsk): GoodHere | null {
  if (expected.kind !== 'number') return null;
  let from: EventNumber | null = null;
  let least = NARROWED_PART;
  for (const { event, before, after } of told) {
    const part = widthOf(after) / widthOf(before);
    if (part < least) {
      least = part;
      from = event;
    }
  }
  return { expected, from, isWide: isWide(expected, unit, batteryVolts) };
}

/** Whether the one range is so much narrower than the other, and touches it, that it is worth telling beside it. */
export function isNarrower(one: GoodHere['expected'], other: GoodHere['expected']): boolean {
  const touches = lowOf(one) <= highOf(other) && lowOf(other) <= highOf(one);
  return touches && widthOf(one) < NARROWED_PART * widthOf(other);
}

function isWide(expected: GoodHere['expected'], unit: MeterUnit, batteryVolts: number): boolean {
  const low = lowOf(expected);
  const high = highOf(expected);
  if (high === Number.POSITIVE_INFINITY) return false;
  return IS_WIDE[unit]({ low, high }, batteryVolts);
}

function isFarApart({ low, high }: Span): boolean {
  return low > 0 && high > WIDE_TIMES * low;
}

const IS_WIDE: Readonly<Record<MeterUnit, (span: Span, batteryVolts: number) => boolean>> = {
  V: (span, batteryVolts) =>
    span.high - span.low > WIDE_PART * batteryVolts ||
    (isFarApart(span) && span.high >= DROP_VOLTS),
  ohm: isFarApart,
  A: isFarApart,
};

function widthOf(shown: ExpectedShown): number {
  return shown.kind === 'number' ? highOf(shown) - lowOf(shown) : Number.NaN;
}

function lowOf({ low }: GoodHere['expected']): number {
  return low ?? Number.NEGATIVE_INFINITY;
}

function highOf({ high }: GoodHere['expected']): number {
  return high ?? Number.POSITIVE_INFINITY;
}
