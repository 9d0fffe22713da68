/** Two captures of the same signal by what was kept of them: before the repair beside after it. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { CaptureMeasured } from './events.ts';
import { SIGNAL_KIND_WORDS } from './measure-capture.ts';

/** One measure, in words; `change` is empty where nothing changed or nothing can be compared. */
export interface MeasuredPair {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly change: string;
}

/** A level that moved by less than this share of the larger swing stayed: noise and the scope's steps. Our choice. */
const SAME_LEVEL = 0.02;
/** Duty within so many points of a hundred stayed. Our choice. */
const SAME_POINTS = 1;
const DIGITS = 4;

/** All measures that either capture has. The engine turns as it likes, so a change is only told of kind, levels and duty. */
export function compareMeasured(before: CaptureMeasured, after: CaptureMeasured): MeasuredPair[] {
  const swing = Math.max(before.high - before.low, after.high - after.low);
  const pair = (
    name: string,
    was: number | null,
    is: number | null,
    units: readonly [Unit, Unit],
    same: (difference: number) => boolean,
  ): MeasuredPair[] =>
    was === null && is === null
      ? []
      : [
          {
            name,
            before: shown(was, units[0]),
            after: shown(is, units[1]),
            change:
              was === null || is === null || units[0] !== units[1] || same(Math.abs(is - was))
                ? ''
                : changed(is - was, units[1]),
          },
        ];
  const levels = [before.unit, after.unit] as const;
  const level = (difference: number) => difference <= SAME_LEVEL * swing;
  const notCompared = () => true;
  return [
    {
      name: 'signal',
      before: SIGNAL_KIND_WORDS[before.kind],
      after: SIGNAL_KIND_WORDS[after.kind],
      change: before.kind === after.kind ? '' : 'another kind of signal',
    },
    ...pair('low', before.low, after.low, levels, level),
    ...pair('high', before.high, after.high, levels, level),
    ...pair('frequency', before.hertz, after.hertz, ['Hz', 'Hz'], notCompared),
    ...pair('duty', before.duty, after.duty, ['%', '%'], (points) => points <= SAME_POINTS),
    ...pair('speed', before.rpm, after.rpm, ['rpm', 'rpm'], notCompared),
  ];
}

function shown(value: number | null, unit: Unit): string {
  return value === null ? 'none' : formatQuantity({ value, unit }, { digits: DIGITS });
}

function changed(by: number, unit: Unit): string {
  const words = formatQuantity({ value: Math.abs(by), unit });
  return by > 0 ? `${words} more` : `${words} less`;
}
