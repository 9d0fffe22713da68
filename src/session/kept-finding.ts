/** What was found of a capture as an event keeps it: as many digits as a scope has, and the first of a long list. */
import type { Drops } from '../waveform/find-drops.ts';
import type { Finding } from '../waveform/finding.ts';
import type { Phase } from '../waveform/measure-phase.ts';
import type { CapturedPhase } from './events.ts';

/** Digits kept of what was measured: a reading typed with as many reads back as the same number. */
const DIGITS = 5;
/** Places, teeth or edges kept one by one; more are counted. */
const LISTED = 24;

/** `value` with the digits that are kept. */
export function keptNumber(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

/** A finding with its numbers rounded as an event keeps them. */
export function keptFinding(finding: Finding): Finding {
  switch (finding.kind) {
    case 'coarse':
      return { ...finding, samplesPerPulse: keptNumber(finding.samplesPerPulse) };
    case 'dead':
      return { ...finding, level: keptNumber(finding.level) };
    case 'stuck-high':
    case 'stuck-low':
    case 'stuck-between':
      return { ...finding, volts: keptNumber(finding.volts) };
    case 'low-not-low':
    case 'high-not-high':
      return {
        ...finding,
        volts: keptNumber(finding.volts),
        limitVolts: keptNumber(finding.limitVolts),
      };
    case 'noisy':
      return { ...finding, noise: keptNumber(finding.noise), swing: keptNumber(finding.swing) };
    case 'drop-out':
    case 'extra-pulses': {
      const { listed, ...more } = firstOf(finding.seconds);
      return { ...finding, seconds: listed.map(keptNumber), ...more };
    }
    case 'contact-lost': {
      const { listed, ...more } = firstOf(finding.places);
      const places = listed.map(({ at, seconds, from, to }) => ({
        at: keptNumber(at),
        seconds: keptNumber(seconds),
        from: keptNumber(from),
        to: keptNumber(to),
      }));
      return { ...finding, places, ...more };
    }
    case 'missing-teeth':
    case 'weak-teeth': {
      const { listed, ...more } = firstOf(finding.teeth);
      return { ...finding, teeth: listed, ...more };
    }
    case 'weak':
      return {
        ...finding,
        volts: keptNumber(finding.volts),
        hertz: keptNumber(finding.hertz),
        limitVolts: keptNumber(finding.limitVolts),
      };
    case 'run-out':
      return {
        ...finding,
        share: keptNumber(finding.share),
        limitShare: keptNumber(finding.limitShare),
      };
    case 'currents':
      return {
        ...finding,
        amperes: keptNumber(finding.amperes),
        wantedAmperes: keptNumber(finding.wantedAmperes),
      };
    case 'slow-edges':
      return {
        ...finding,
        edgeSeconds: keptNumber(finding.edgeSeconds),
        pulseSeconds: keptNumber(finding.pulseSeconds),
      };
    case 'pattern':
    case 'inverted':
      return finding;
  }
}

/** Drop-outs with their numbers rounded as an event keeps them. */
export function keptDrops({
  shortestSeconds,
  longestSeconds,
  limit,
  least,
  most,
  count,
}: Drops): Drops {
  const maybe = (value: number | null) => (value === null ? null : keptNumber(value));
  return {
    count,
    shortestSeconds: maybe(shortestSeconds),
    longestSeconds: maybe(longestSeconds),
    limit: maybe(limit),
    least: keptNumber(least),
    most: keptNumber(most),
  };
}

/** A pair of channels to be kept, which are counted from 1 there. */
export function keptPhase({ reference, channel, cycleDegrees, edges }: Phase): CapturedPhase {
  const { listed, ...more } = firstOf(edges);
  return {
    reference: reference + 1,
    channel: channel + 1,
    cycleDegrees,
    edges: listed.map(({ degrees, direction, plusMinus, seen }) => ({
      degrees: keptNumber(degrees),
      direction,
      plusMinus: keptNumber(plusMinus),
      seen,
    })),
    ...more,
  };
}

function firstOf<T>(all: readonly T[]): { readonly listed: readonly T[]; readonly more?: number } {
  const more = all.length - LISTED;
  return more > 0 ? { listed: all.slice(0, LISTED), more } : { listed: all };
}
