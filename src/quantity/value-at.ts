/** Values drawn from what is known of them, and how such knowledge is put together. */
import type { Alternative, Toleranced, Unit } from './quantity.ts';

/** Ends more than this many times apart say that not even the size is known: then each decade is as likely as the next. Ours. */
const FAR_APART = 3;
/** A ratio of exactly three stays three: 0.15 / 0.05 and 0.03 / 0.01 differ in their last bit. */
const ROUNDING = 1e-9;

/**
 * The quantile of `value` at `u` in 0..1: of the values it may have, the share `u` lies before this one. Rises with `u`;
 * of several alternatives the first takes the first part of 0..1, in the order in which they are written. Above 1 and
 * below 0, by up to one, lies what the value should not be: up to `OUTSIDE_MOST` times beyond its ends.
 */
export function valueAt(value: Toleranced, u: number): number {
  const { low, high, oneOf } = value;
  if (u > 1 || u < 0) return outside(value, u);
  if (oneOf !== undefined) {
    let before = 0;
    for (let index = 0; ; index += 1) {
      const { chance, value: one } = oneOf[index]!;
      const share = (u - before) / chance;
      // The last takes what rounding leaves.
      if (share < 1 || index === oneOf.length - 1) return valueAt(one, Math.min(1, share));
      before += chance;
    }
  }
  if (low === high) return low;
  return value.spread === 'log' ? low * Math.exp(u * Math.log(high / low)) : low + (high - low) * u;
}

/** A value that is not as described lies up to this many times beyond its end. Our choice. */
const OUTSIDE_MOST = 3;

function outside({ low, high }: Toleranced, u: number): number {
  if (u > 1) return high > 0 ? high * OUTSIDE_MOST ** (u - 1) : high + (u - 1) * (high - low);
  return low > 0 ? low / OUTSIDE_MOST ** -u : low + u * (high - low);
}

/**
 * Anything between two ends: evenly in the logarithm where both are above zero and far apart, else evenly. A part of a
 * whole, in per cent, is always even: it could as well be written as what is left.
 */
export function unknownBetween(low: number, high: number, unit: Unit): Toleranced {
  if (unit !== '%' && low > 0 && high / low > FAR_APART * (1 + ROUNDING))
    return { nominal: Math.sqrt(low * high), low, high, unit, spread: 'log' };
  return { nominal: (low + high) / 2, low, high, unit };
}

/** One of several values; the first of the likeliest is the nominal one. A single one is itself. */
export function oneOfSeveral(alternatives: readonly Alternative[]): Toleranced {
  const [first] = alternatives;
  if (!first) throw new Error('value-at: one of none');
  if (alternatives.length === 1) return first.value;
  const likeliest = alternatives.reduce((best, one) => (one.chance > best.chance ? one : best));
  return {
    nominal: likeliest.value.nominal,
    low: Math.min(...alternatives.map(({ value }) => value.low)),
    high: Math.max(...alternatives.map(({ value }) => value.high)),
    unit: first.value.unit,
    oneOf: alternatives,
  };
}

/** Which of several things it is, as its number from 0; `chances` come to 1. */
export function whichOf(chances: readonly number[]): Toleranced {
  return oneOfSeveral(
    chances.map((chance, index) => ({
      chance,
      value: { nominal: index, low: index, high: index, unit: '1' },
    })),
  );
}

/** The same knowledge of another value: each number by `to`, a proportion. */
export function mapped(value: Toleranced, to: (number: number) => number, unit: Unit): Toleranced {
  return {
    ...value,
    nominal: to(value.nominal),
    low: to(value.low),
    high: to(value.high),
    unit,
    ...(value.oneOf && {
      oneOf: value.oneOf.map((one) => ({ ...one, value: mapped(one.value, to, unit) })),
    }),
  };
}
