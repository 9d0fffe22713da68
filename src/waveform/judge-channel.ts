/** What measures mean against what the vehicle should have: common trade limits, and the module's own where known. */
import type { WheelExpected } from './find-wheel.ts';
import type { Finding } from './finding.ts';
import type { ChannelMeasures } from './measure-channel.ts';

/** What is known about the vehicle; what is left out is not judged. */
export interface SignalExpected {
  /** The module takes the signal for low below, and for high above, in volts. */
  readonly lowBelow?: number;
  readonly highAbove?: number;
  readonly wheel?: WheelExpected;
  /** Lobe that a coil should leave before the gap. */
  readonly beforeGap?: 'negative' | 'positive';
  /** Level that a switched signal should have while the gap passes. */
  readonly gapLevel?: 'low' | 'high';
  /** Two states of a current sensor in amperes. */
  readonly currents?: { readonly low: number; readonly high: number };
  /** Least peak to peak of a coil at its lowest speed in volts. */
  readonly leastPeakToPeak?: number;
}

/** Without thresholds a line this near to zero is low; common practice, no source. */
export const LOW_VOLTS = 1;
/** Noise above this share of the amplitude disturbs. Common practice, no source. */
const NOISY_SHARE = 0.08;
/** A coil should give a few hundred millivolts at cranking. Common practice, no source. */
const COIL_LEAST_VOLTS = 0.2;
/** Once-a-turn swing of a coil's height beyond which the wheel or its air gap is suspect. Common practice, no source. */
const RUN_OUT_MOST = 0.3;
/** Two-wire sensors hold their currents within a fifth. Common practice, no source. */
const CURRENT_SHARE = 0.2;
/** Transitions longer than this share of the shorter level look rounded. Common practice, no source. */
const SLOW_SHARE = 0.25;
/** A transition of so few samples is not resolved. */
const RESOLVED_SAMPLES = 3;
/** Pitches found from the spacing of a turn are not whole numbers. */
const PITCHES_SAME = 0.25;
/** Fewer samples in a regular period than this cannot show its shape. */
const PERIOD_SAMPLES = 6;

/** Findings, worst first; an empty list means nothing against the signal. */
export function judgeChannel(measures: ChannelMeasures, expected: SignalExpected = {}): Finding[] {
  if (measures.kind === 'steady') return [steady(measures, expected)];
  if (measures.kind === 'sweep') return sweepFindings(measures, expected);
  const coarse = coarseFindings(measures);
  if (coarse.length > 0) return coarse;
  const wheel = wheelFindings(measures, expected);
  if (measures.kind === 'alternating') return [...wheel, ...coilFindings(measures, expected)];
  const { gapLevel } = measures;
  if (expected.gapLevel && gapLevel && gapLevel !== expected.gapLevel)
    wheel.push({ kind: 'inverted', seen: gapLevel });
  return [...levelFindings(measures, expected), ...wheel, ...edgeFindings(measures)];
}

/** Nothing else is said about a signal whose pulses were sampled too seldom: most of it would be wrong. */
function coarseFindings({ pulses, sampleSeconds }: ChannelMeasures): Finding[] {
  const hertz = pulses.regularHertz;
  const samplesPerPulse = hertz === null ? Infinity : 1 / hertz / sampleSeconds;
  return samplesPerPulse < PERIOD_SAMPLES ? [{ kind: 'coarse', samplesPerPulse }] : [];
}

function steady({ levels, unit }: ChannelMeasures, expected: SignalExpected): Finding {
  const { mean } = levels;
  const { lowBelow = LOW_VOLTS, highAbove } = expected;
  if (unit === 'V' && highAbove !== undefined && mean >= highAbove)
    return { kind: 'stuck-high', volts: mean };
  if (
    unit === 'V' &&
    Math.abs(mean) < lowBelow &&
    (highAbove !== undefined || lowBelow !== LOW_VOLTS)
  )
    return { kind: 'stuck-low', volts: mean };
  if (unit === 'V' && highAbove !== undefined) return { kind: 'stuck-between', volts: mean };
  return { kind: 'dead', level: mean, unit };
}

function levelFindings(measures: ChannelMeasures, expected: SignalExpected): Finding[] {
  const { levels, unit } = measures;
  const found = thresholdFindings('level', unit, levels.low, levels.high, expected);
  const seen = measures.currents;
  const wanted = expected.currents;
  if (seen && wanted)
    for (const state of ['low', 'high'] as const) {
      const [amperes, wantedAmperes] = [seen[state], wanted[state]];
      if (Math.abs(amperes / wantedAmperes - 1) > CURRENT_SHARE)
        found.push({ kind: 'currents', state, amperes, wantedAmperes });
    }
  if (levels.noise > NOISY_SHARE * levels.amplitude)
    found.push({ kind: 'noisy', noise: levels.noise, swing: levels.amplitude, unit });
  return found;
}

function thresholdFindings(
  of: 'level' | 'sweep',
  unit: ChannelMeasures['unit'],
  low: number,
  high: number,
  { lowBelow, highAbove }: SignalExpected,
): Finding[] {
  const found: Finding[] = [];
  if (unit === 'V' && lowBelow !== undefined && low >= lowBelow)
    found.push({ kind: 'low-not-low', of, volts: low, limitVolts: lowBelow });
  if (unit === 'V' && highAbove !== undefined && high <= highAbove)
    found.push({ kind: 'high-not-high', of, volts: high, limitVolts: highAbove });
  return found;
}

function edgeFindings({
  riseSeconds,
  fallSeconds,
  pulses,
  sampleSeconds,
}: ChannelMeasures): Finding[] {
  const pulseSeconds = Math.min(
    pulses.highSeconds?.mean ?? Infinity,
    pulses.lowSeconds?.mean ?? Infinity,
  );
  const edgeSeconds = Math.max(riseSeconds?.mean ?? 0, fallSeconds?.mean ?? 0);
  if (!(edgeSeconds > SLOW_SHARE * pulseSeconds)) return [];
  if (edgeSeconds < RESOLVED_SAMPLES * sampleSeconds) return [];
  return [{ kind: 'slow-edges', edgeSeconds, pulseSeconds }];
}

function wheelFindings(
  { wheel, pulses }: ChannelMeasures,
  { wheel: wanted }: SignalExpected,
): Finding[] {
  if (!wheel) {
    if (wanted && pulses.rising > 2 * wanted.teeth)
      return [{ kind: 'pattern', found: null, wanted }];
    return [];
  }
  const found: Finding[] = [];
  const alien = wanted && (wheel.pitches !== wanted.teeth || wheel.missing !== wanted.missing);
  if (alien && wheel.by === 'gap')
    found.push({
      kind: 'pattern',
      found: { teeth: wheel.pitches, missing: wheel.missing },
      wanted,
    });
  // Pitches of the wanted number, but the gap drowns among others: another wheel on this channel has other pitches.
  const count = wanted ? wanted.teeth - wanted.missing : 0;
  const isWanted = wanted && Math.abs(wheel.pitches - wanted.teeth) < PITCHES_SAME;
  if (isWanted && wheel.by === 'spacing' && wheel.pulses < count)
    found.push({ kind: 'missing-teeth', teeth: [], seen: wheel.pulses, of: count });
  const of = wheel.pitches - wheel.missing;
  const absent = alien || wheel.by !== 'gap' ? [] : absentTeeth(of, wheel.pattern);
  if (absent.length > 0)
    found.push({ kind: 'missing-teeth', teeth: absent, seen: of - absent.length, of });
  for (const kind of ['missing', 'extra'] as const) {
    const places = wheel.irregular.filter((it) => it.kind === kind);
    if (places.length === 0) continue;
    const each = new Set(places.map((it) => it.pitch));
    found.push({
      kind: kind === 'missing' ? 'drop-out' : 'extra-pulses',
      seconds: places.map((it) => it.seconds),
      pitch: each.size === 1 && places.length > 1 ? places[0]!.pitch + 1 : null,
    });
  }
  return found;
}

/** Teeth, from 1, that an unbroken wheel would have and `pattern` has not. */
function absentTeeth(count: number, pattern: readonly number[]): number[] {
  const present = new Set(pattern);
  return Array.from({ length: count }, (_, pitch) => pitch)
    .filter((pitch) => !present.has(pitch))
    .map((pitch) => pitch + 1);
}

function coilFindings({ coil, unit }: ChannelMeasures, expected: SignalExpected): Finding[] {
  if (!coil) return [];
  const found: Finding[] = [];
  const limitVolts = expected.leastPeakToPeak ?? COIL_LEAST_VOLTS;
  const { peakToPeak: volts, hertz } = coil.slow;
  if (unit === 'V' && volts < limitVolts) found.push({ kind: 'weak', volts, hertz, limitVolts });
  if (coil.weakPitches.length > 0)
    found.push({ kind: 'weak-teeth', teeth: coil.weakPitches.map((pitch) => pitch + 1) });
  if (coil.runOut > RUN_OUT_MOST)
    found.push({ kind: 'run-out', share: coil.runOut, limitShare: RUN_OUT_MOST });
  if (expected.beforeGap && coil.beforeGap && coil.beforeGap !== expected.beforeGap)
    found.push({ kind: 'inverted', seen: coil.beforeGap });
  return found;
}

function sweepFindings({ sweep, unit }: ChannelMeasures, expected: SignalExpected): Finding[] {
  if (!sweep) return [];
  const found = thresholdFindings('sweep', unit, sweep.least, sweep.most, expected);
  if (sweep.dropOuts.length === 0) return found;
  const places = sweep.dropOuts.map(({ startSeconds, seconds, from, to }) => ({
    at: startSeconds,
    seconds,
    from,
    to,
  }));
  return [{ kind: 'contact-lost', places, unit }, ...found];
}
