/** Between which numbers a test can lie at all, whichever suspect is right and whatever car it is. */
import type { Span } from '../circuit/circuit.ts';
import type { Way } from './fact.ts';

/** The numbers that a test can show, as stretches. */
export interface Reach {
  /** In order, none touching another; none where the test shows looks. */
  readonly spans: readonly Span[];
  /** Whether over-limit is among it. */
  readonly overLimit: boolean;
}

/**
 * The reach of suspects, each with its ways on some cars. What one suspect shows in one way changes steadily from car to
 * car, so that all between its least and its most can be shown; its ways (a switched output on, off) are apart.
 */
export function reachOf(suspects: Iterable<readonly (readonly Way[])[]>): Reach {
  const spans: Span[] = [];
  let overLimit = false;
  for (const cars of suspects) {
    const own = new Map<number, Span>();
    for (const ways of cars)
      ways.forEach(({ shown, share }, at) => {
        if (shown.kind === 'look' || !(share > 0)) return;
        const { value } = shown;
        if (value === Number.POSITIVE_INFINITY) overLimit = true;
        else {
          const { low, high } = own.get(at) ?? { low: value, high: value };
          own.set(at, { low: Math.min(low, value), high: Math.max(high, value) });
        }
      });
    spans.push(...own.values());
  }
  return { spans: joined(spans), overLimit };
}

/** The union of two reaches: values that the one or the other can show. */
export function joinedReach(one: Reach, other: Reach): Reach {
  return {
    spans: joined([...one.spans, ...other.spans]),
    overLimit: one.overLimit || other.overLimit,
  };
}

function joined(spans: readonly Span[]): Span[] {
  const made: Span[] = [];
  for (const { low, high } of [...spans].sort((a, b) => a.low - b.low)) {
    const last = made.at(-1);
    if (last && low <= last.high)
      made[made.length - 1] = { low: last.low, high: Math.max(last.high, high) };
    else made.push({ low, high });
  }
  return made;
}
