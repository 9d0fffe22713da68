/**
 * All readings together: either one sample of the tolerances explains them all (a fault that keeps its size), or each
 * reading has samples of its own. The truth is a mixture of both.
 */
import type { ErrorModel } from './error-model.ts';
import type { SampledFit } from './likelihood.ts';

/** Fit of a reading, with where it came from and how much it counts. */
export interface WeighedFit extends SampledFit {
  readonly reading: number;
  readonly test: number;
  /** The same test read n times is one piece of news, not n: each counts 1/n. */
  readonly weight: number;
}

/** How well each suspect explains all readings together, in logarithms, and how chance then lies over its samples. */
export interface JointFit {
  readonly logRows: Float64Array;
  readonly logBlind: number;
  readonly sampleShares: Float64Array;
}

/** Logarithm of the likelihood of all readings, for each row (a candidate, or a pair of them). */
export function jointFit(
  fits: readonly WeighedFit[],
  rows: number,
  samples: number,
  errorModel: ErrorModel,
): JointFit {
  const logRows = new Float64Array(rows);
  const sampleShares = new Float64Array(rows * samples);
  const logs = new Float64Array(samples);
  const perRow = fits.map((fit) => fit.perRow.map((one) => fit.weight * Math.log(one)));
  const perSample = fits.map((fit) => fit.perSample.map((one) => fit.weight * Math.log(one)));
  for (let row = 0; row < rows; row += 1) {
    const loose = perRow.reduce((sum, one) => sum + one[row]!, 0);
    let most = -Infinity;
    for (let sample = 0; sample < samples; sample += 1) {
      let log = 0;
      for (const one of perSample) log += one[row * samples + sample]!;
      logs[sample] = log;
      if (log > most) most = log;
    }
    let sum = 0;
    if (most > -Infinity) for (const log of logs) sum += Math.exp(log - most);
    const steady = most + Math.log(sum / samples);
    const log = logOfMix(steady, loose, errorModel.steadyChance);
    logRows[row] = log;
    const held = log > -Infinity ? errorModel.steadyChance * Math.exp(steady - log) : 0;
    for (let sample = 0; sample < samples; sample += 1) {
      const share = held > 0 ? Math.exp(logs[sample]! - most) / sum : 0;
      sampleShares[row * samples + sample] = held * share + (1 - held) / samples;
    }
  }
  const logBlind = fits.reduce((sum, { weight, blind }) => sum + weight * Math.log(blind), 0);
  return { logRows, logBlind, sampleShares };
}

function logOfMix(a: number, b: number, chanceOfA: number): number {
  const most = Math.max(a, b);
  if (most === -Infinity) return most;
  return most + Math.log(chanceOfA * Math.exp(a - most) + (1 - chanceOfA) * Math.exp(b - most));
}
