/** What a session has found out about the car: the values that its readings have shown, and whether it is as described. */
import type { CarQuantity } from '../circuit/car-quantities.ts';
import { formatQuantity, formatRange } from '../quantity/format-quantity.ts';
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { valueAt } from '../quantity/value-at.ts';

import type { CarKnowledge, ShownValue } from '../suspects/shown-values.ts';
import type { EventNumber } from './events.ts';

/** One car, as far as the readings show it. */
export interface CarView {
  /** In the order of the circuit file. */
  readonly values: readonly CarValue[];
  /** The hypothesis that the car is not as its circuit file describes it. */
  readonly misfit: Misfit;
}

/** A value that the readings have narrowed. */
export interface CarValue {
  readonly quantity: string;
  /** `battery at rest` */
  readonly words: string;
  /** `11.9 V`, `about 4.7 kΩ`, `1.8 kΩ to 6 kΩ` */
  readonly shown: string;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  /** The reading that told most of it. */
  readonly by: EventNumber;
}

/** That a value is other than the circuit file has it, with its chance. */
export interface Misfit {
  /** 0 to 1. */
  readonly chance: number;
  /** The described value that disagrees most likely; null while the car looks as described. */
  readonly value: {
    readonly quantity: string;
    readonly words: string;
    /** As the file has it, and as the readings would have it. */
    readonly described: string;
    readonly shown: string;
    /** The reading that disagrees with it. */
    readonly by: EventNumber | null;
  } | null;
}

/** A value counts as shown when it lies within this share of where it could be before any reading. Our choice. */
const NARROWED = 0.45;
/** Ends this close are one number; ends this far apart a range. */
const ONE_NUMBER = 1.04;
const ABOUT = 1.6;
/** Ends closer than this bear a third digit: a battery of 12.5 V is not one of 13 V. */
const THIRD_DIGIT = 1.1;
/** From this chance on the misfit stands among the suspects, ... */
export const MISFIT_LISTED = 0.1;
/** ... and from this one, or when it leads, its value is told. Our choice. */
export const MISFIT_TOLD = 0.3;

/** The quantities, chances and readings behind what is said of this car. */
export interface CarViewAsk {
  readonly quantities: readonly CarQuantity[];
  /** Chance that the car is not as described, 0 to 1, and that of the leading repair. */
  readonly misfit: number;
  readonly leading: number;
  /** What was known after the first n readings, n from none to all. */
  readonly before: readonly CarKnowledge[];
  /** Of each reading. */
  readonly events: readonly EventNumber[];
  /** The reading that disagrees most with the others. */
  readonly disagrees: EventNumber | null;
}

/** What is known of the car after all readings. */
export function carView(ask: CarViewAsk): CarView {
  const { quantities, misfit, leading, before, events, disagrees } = ask;
  const knowledge = before.at(-1);
  if (!knowledge) throw new Error('car-view: something is known before any reading');
  const values = quantities.flatMap((quantity, at): CarValue[] => {
    const { value, key, words, unit } = quantity;
    const now = knowledge.values[at]!;
    if (value === null || !isTold(quantity, now)) return [];
    const low = valueAt(value, now.low);
    const high = valueAt(value, now.high);
    const first = before.findIndex(({ values: then }) => isTold(quantity, then[at]!));
    const by = events[Math.max(0, first - 1)];
    if (by === undefined) return [];
    return [{ quantity: key, words, shown: shownWords(quantity, now), low, high, unit, by }];
  });
  return { values, misfit: { chance: misfit, value: disagreeing() } };

  function disagreeing(): Misfit['value'] {
    const outside = knowledge?.outside;
    if (misfit < Math.min(MISFIT_TOLD, leading) || misfit < MISFIT_LISTED || !outside) return null;
    const { key, words, value, unit } = quantities[outside.at]!;
    if (value === null) return null;
    return {
      ...{ quantity: key, words, by: disagrees, described: describedWords(value) },
      shown: `about ${formatQuantity({ value: valueAt(value, outside.middle), unit }, { digits: 2 })}`,
    };
  }
}

function isTold({ key, value, ways }: CarQuantity, { low, high }: ShownValue): boolean {
  if (value === null || value.low === value.high || HIDDEN.some((start) => key.startsWith(start)))
    return false;
  if (ways) return valueAt(value, low) === valueAt(value, high);
  return high - low < NARROWED;
}
/** Copper and contacts are the fault's business. */
const HIDDEN = ['wire.', 'contact.', 'fault.', 'target.', 'bridge.'];

function shownWords({ value, unit, ways }: CarQuantity, { low, middle, high }: ShownValue): string {
  if (value === null) return '';
  if (ways) return ways[valueAt(value, middle)] ?? '';
  const [from, mid, to] = [low, middle, high].map((u) => valueAt(value, u)) as [
    number,
    number,
    number,
  ];
  if (from > 0 && to / from < ONE_NUMBER) return formatQuantity({ value: mid, unit });
  if (from > 0 && to / from < ABOUT)
    return `about ${formatQuantity({ value: mid, unit }, { digits: to / from < THIRD_DIGIT ? 3 : 2 })}`;
  return formatRange(from, to, unit, { digits: 2 });
}

function describedWords({ low, high, unit }: Toleranced): string {
  return formatRange(low, high, unit);
}
