/**
 * The two states of a signal by histogram, as IEEE Std 181 does: range of the data, bins, the range split in two
 * halves, the mode of each half. The level is the mean of the samples in the modal bin and its neighbours, which
 * takes the bin's width out of the result.
 */

/** What the histogram of a channel says, in the channel's unit. */
export interface Levels {
  readonly low: number;
  readonly high: number;
  /** high - low. */
  readonly amplitude: number;
  /** Lowest and highest sample, spikes and all. */
  readonly least: number;
  readonly most: number;
  /** Mean of all samples. */
  readonly mean: number;
  /** Standard deviation of all samples. */
  readonly deviation: number;
  /** Share of the samples within a sixth of the amplitude of one of the levels: near 1 for a switched signal. */
  readonly atLevels: number;
  /** Root mean square of the deviation from the nearer level, of those samples. */
  readonly noise: number;
}

/** Bins over the range; IEEE 181 users take 100, and finer bins keep a small noise narrow. */
const BINS = 128;
/** Share of samples at either end that may be spikes and does not stretch the range. */
const SPIKE_SHARE = 1e-4;
/** Half width of a state in amplitudes. */
const STATE_WIDTH = 1 / 6;

/** Levels of `samples`; of an empty channel everything is NaN. */
export function findLevels(samples: Float32Array): Levels {
  const whole = extent(samples);
  const coarse = histogram(samples, whole.least, whole.most);
  const [from, to] = withoutSpikes(coarse, whole.least, whole.most, samples.length);
  const counts = from === whole.least && to === whole.most ? coarse : histogram(samples, from, to);
  const width = (to - from) / BINS;
  const half = BINS / 2;
  const lowBin = fullest(counts, 0, half);
  const highBin = fullest(counts, half, BINS);
  const low = meanBetween(samples, from + (lowBin - 1) * width, from + (lowBin + 2) * width);
  const high = meanBetween(samples, from + (highBin - 1) * width, from + (highBin + 2) * width);
  const amplitude = Math.max(0, high - low);
  return { low, high, amplitude, ...whole, ...around(samples, low, high) };
}

function extent(samples: Float32Array): Pick<Levels, 'least' | 'most' | 'mean' | 'deviation'> {
  const { NaN: none } = Number;
  if (samples.length === 0) return { least: none, most: none, mean: none, deviation: none };
  // Sums about the first sample keep their digits when the signal sits on a large bias.
  const origin = samples[0]!;
  let least = origin;
  let most = origin;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const value = samples[i]!;
    const away = value - origin;
    sum += away;
    squares += away * away;
    if (value < least) least = value;
    else if (value > most) most = value;
  }
  const offset = sum / samples.length;
  const variance = Math.max(0, squares / samples.length - offset * offset);
  return { least, most, mean: origin + offset, deviation: Math.sqrt(variance) };
}

function histogram(samples: Float32Array, from: number, to: number): Uint32Array {
  const counts = new Uint32Array(BINS);
  const scale = BINS / (to - from || 1);
  for (let i = 0; i < samples.length; i += 1) {
    const bin = (samples[i]! - from) * scale;
    if (bin < 0) continue;
    if (bin < BINS) counts[bin | 0]! += 1;
    else if (samples[i]! <= to) counts[BINS - 1]! += 1;
  }
  return counts;
}

/** The range without a few spikes at its ends; unchanged unless a spike stands well apart. */
function withoutSpikes(
  counts: Uint32Array,
  least: number,
  most: number,
  total: number,
): [number, number] {
  const allowed = Math.floor(total * SPIKE_SHARE);
  const width = (most - least) / BINS;
  let first = 0;
  for (let seen = 0; first < BINS - 1; first += 1) {
    seen += counts[first]!;
    if (seen > allowed) break;
  }
  let last = BINS - 1;
  for (let seen = 0; last > first; last -= 1) {
    seen += counts[last]!;
    if (seen > allowed) break;
  }
  return [
    first === 0 ? least : least + first * width,
    last === BINS - 1 ? most : least + (last + 1) * width,
  ];
}

function fullest(counts: Uint32Array, from: number, to: number): number {
  let best = from;
  for (let bin = from; bin < to; bin += 1) if (counts[bin]! > counts[best]!) best = bin;
  return best;
}

function meanBetween(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const value = samples[i]!;
    if (value < from || value > to) continue;
    sum += value;
    count += 1;
  }
  return count === 0 ? (from + to) / 2 : sum / count;
}

function around(
  samples: Float32Array,
  low: number,
  high: number,
): { atLevels: number; noise: number } {
  const reach = (high - low) * STATE_WIDTH;
  const middle = (low + high) / 2;
  let count = 0;
  let squares = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const away = samples[i]! - (samples[i]! > middle ? high : low);
    if (away > reach || away < -reach) continue;
    count += 1;
    squares += away * away;
  }
  return {
    atLevels: samples.length === 0 ? 0 : count / samples.length,
    noise: count === 0 ? 0 : Math.sqrt(squares / count),
  };
}
