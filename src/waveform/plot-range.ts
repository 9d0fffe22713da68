/** What the vertical axis of a drawn channel covers. */
import type { Channel } from './capture.ts';
import { LEAST_SWING, type SignalKind } from './measure-channel.ts';

/** Ends of an axis, in the channel's unit. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** The least that the axis of a flat line covers: a noise of millivolts is to look like one. */
const FLAT_SPAN: Readonly<Record<Channel['unit'], number>> = { V: 2, A: 0.02, '1': 0.1 };
/** Of a channel that nobody judged: so many times what is taken for flicker, less than any signal worth a look. */
const FLICKERS = 10;

/** Least span of the axis in the channel's unit, so that the noise of a flat line does not fill the picture. `kind` is null where the channel was not judged. */
export function spanLeastOf(unit: Channel['unit'], kind: SignalKind | null): number {
  if (kind === null) return FLICKERS * LEAST_SWING[unit];
  return kind === 'steady' ? FLAT_SPAN[unit] : 0;
}

/** The extremes of the samples from `first` up to `last` and of the `levels`, widened about their middle to `spanLeast`. Never without height. */
export function axisRange(
  samples: Float32Array,
  first: number,
  last: number,
  options: { readonly levels: readonly { readonly value: number }[]; readonly spanLeast: number },
): Range {
  let low = samples[first] ?? 0;
  let high = low;
  for (let i = first; i < last; i += 1) {
    const value = samples[i]!;
    if (value < low) low = value;
    else if (value > high) high = value;
  }
  for (const { value } of options.levels) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const isLine = high === low && options.spanLeast === 0;
  // A line of one value is drawn in the middle of a band of its own size.
  const span = isLine ? Math.max(1, Math.abs(high) * 0.2) : options.spanLeast;
  const spare = Math.max(0, span - (high - low)) / 2;
  return { low: low - spare, high: high + spare };
}
