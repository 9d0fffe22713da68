/**
 * How large a fault is: of a wide span of sizes those at which the module notices it in some car, and no others.
 *
 * A share of a span says the size, 0 its low and 1 its high end, even in the logarithm. In one car a fault that grows
 * is noticed from some size on (a bad joint), or up to some size (a short), so both ends are found by halving.
 */
import type { Fault, Span } from './circuit.ts';

/** Ends are found to this share of the span. */
const STEP = 0.02;
/** So much is left beyond them for cars that were not looked at; what no car notices is left out when cars are picked. */
const BEYOND = 0.08;
/** Where a size that is noticed is looked for first. */
const FIRST_LOOK = [1, 0, 0.5] as const;

/** The sizes of a fault; null where it has none. */
export function sizesOf({ effect }: Fault): Span | null {
  const span = 'ohms' in effect ? effect.ohms : 'size' in effect ? effect.size : null;
  return span === null || span.low === span.high ? null : span;
}

/** The same fault with only the shares `from` to `to` of its sizes. */
export function withSizes(fault: Fault, from: number, to: number): Fault {
  const { effect } = fault;
  const span = sizesOf(fault);
  if (span === null) return fault;
  const at = (share: number): number => span.low * (span.high / span.low) ** share;
  const cut = {
    low: from === 0 ? span.low : rounded(at(from)),
    high: to === 1 ? span.high : rounded(at(to)),
  };
  if ('ohms' in effect) return { ...fault, effect: { ...effect, ohms: cut } };
  return 'size' in effect ? { ...fault, effect: { ...effect, size: cut } } : fault;
}

/**
 * The smallest and the largest share at which some of `cars` cars complains, and a little beyond; null where none does.
 * `complains` is asked for a car and a share.
 */
export function complainingSizes(
  cars: number,
  complains: (car: number, share: number) => boolean,
): { readonly from: number; readonly to: number } | null {
  const all = Array.from({ length: cars }, (_, car) => car);
  const known = FIRST_LOOK.find((share) => all.some((car) => complains(car, share)));
  if (known === undefined) return null;
  return {
    from: smallest(all, known, complains),
    to: 1 - smallest(all, 1 - known, (car, share) => complains(car, 1 - share)),
  };
}

/** `known` is a share at which some car complains; cars that complain no earlier than another cost one look. */
function smallest(
  cars: readonly number[],
  known: number,
  complains: (car: number, share: number) => boolean,
): number {
  if (known === 0) return 0;
  let found = known;
  for (const car of cars) {
    if (found <= STEP) return 0;
    if (!complains(car, found - STEP)) continue;
    let yes = found - STEP;
    let no = 0;
    if (complains(car, 0)) return 0;
    while (yes - no > STEP) {
      const middle = (yes + no) / 2;
      if (complains(car, middle)) yes = middle;
      else no = middle;
    }
    found = yes;
  }
  return Math.max(0, found - BEYOND);
}

/** Two digits are enough for a size. */
function rounded(size: number): number {
  return Number(size.toPrecision(2));
}
