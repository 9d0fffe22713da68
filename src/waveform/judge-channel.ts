/** What measures mean, in words a technician would use, against what the vehicle should have. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { WheelExpected } from './find-wheel.ts';
import type { ChannelMeasures } from './measure-channel.ts';

export const FINDING_KINDS = [
  'coarse',
  'dead',
  'stuck-high',
  'stuck-low',
  'stuck-between',
  'low-not-low',
  'high-not-high',
  'noisy',
  'drop-out',
  'pattern',
  'missing-teeth',
  'extra-pulses',
  'weak',
  'weak-teeth',
  'run-out',
  'inverted',
  'currents',
  'slow-edges',
] as const;
export type FindingKind = (typeof FINDING_KINDS)[number];

export interface Finding {
  readonly kind: FindingKind;
  readonly words: string;
  /** Where in the capture, in seconds from the first sample, for findings that have places. */
  readonly seconds: readonly number[];
}

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
/** Places named one by one; more are counted. */
const PLACES_NAMED = 5;

/** Findings, worst first; an empty list means nothing against the signal. */
export function judgeChannel(measures: ChannelMeasures, expected: SignalExpected = {}): Finding[] {
  if (measures.kind === 'steady') return [steady(measures, expected)];
  if (measures.kind === 'sweep') return sweepFindings(measures, expected);
  const coarse = coarseFindings(measures);
  if (coarse.length > 0) return coarse;
  const wheel = wheelFindings(measures, expected);
  if (measures.kind === 'alternating') return [...wheel, ...coilFindings(measures, expected)];
  const { gapLevel, name } = measures;
  if (expected.gapLevel && gapLevel && gapLevel !== expected.gapLevel)
    wheel.push(plain('inverted', `${name} is inverted: it is ${gapLevel} while the gap passes`));
  return [...levelFindings(measures, expected), ...wheel, ...edgeFindings(measures)];
}

/** Nothing else is said about a signal whose pulses were sampled too seldom: most of it would be wrong. */
function coarseFindings({ pulses, sampleSeconds, name }: ChannelMeasures): Finding[] {
  const hertz = pulses.regularHertz;
  const samples = hertz === null ? Infinity : 1 / hertz / sampleSeconds;
  if (samples >= PERIOD_SAMPLES) return [];
  const words = `${name}: only ${samples.toFixed(1)} samples in a pulse; capture it at a higher sample rate`;
  return [plain('coarse', words)];
}

function steady({ levels, unit, name }: ChannelMeasures, expected: SignalExpected): Finding {
  const at = show(levels.mean, unit);
  const { lowBelow = LOW_VOLTS, highAbove } = expected;
  if (unit === 'V' && highAbove !== undefined && levels.mean >= highAbove)
    return plain('stuck-high', `${name} is stuck high at ${at}: it never changes`);
  if (
    unit === 'V' &&
    Math.abs(levels.mean) < lowBelow &&
    (highAbove !== undefined || lowBelow !== LOW_VOLTS)
  )
    return plain('stuck-low', `${name} is stuck low at ${at}: it never changes`);
  if (unit === 'V' && highAbove !== undefined)
    return plain(
      'stuck-between',
      `${name} is stuck at ${at}, between low and high: it never changes`,
    );
  return plain('dead', `${name} is dead: it stays at ${at}`);
}

function levelFindings(measures: ChannelMeasures, expected: SignalExpected): Finding[] {
  const { levels, name, unit } = measures;
  const found: Finding[] = [];
  const { lowBelow, highAbove } = expected;
  if (unit === 'V' && lowBelow !== undefined && levels.low >= lowBelow)
    found.push(
      plain(
        'low-not-low',
        `${name}: the low level is ${show(levels.low, 'V')}, the module needs less than ${show(lowBelow, 'V')}`,
      ),
    );
  if (unit === 'V' && highAbove !== undefined && levels.high <= highAbove)
    found.push(
      plain(
        'high-not-high',
        `${name}: the high level is ${show(levels.high, 'V')}, the module needs more than ${show(highAbove, 'V')}`,
      ),
    );
  const seen = measures.currents;
  const wanted = expected.currents;
  if (seen && wanted)
    for (const state of ['low', 'high'] as const)
      if (Math.abs(seen[state] / wanted[state] - 1) > CURRENT_SHARE)
        found.push(
          plain(
            'currents',
            `${name}: the ${state} current is ${show(seen[state], 'A')} instead of ${show(wanted[state], 'A')}`,
          ),
        );
  if (levels.noise > NOISY_SHARE * levels.amplitude)
    found.push(
      plain(
        'noisy',
        `${name} is noisy: ${show(levels.noise, unit)} on a swing of ${show(levels.amplitude, unit)}`,
      ),
    );
  return found;
}

function edgeFindings({
  riseSeconds,
  fallSeconds,
  pulses,
  sampleSeconds,
  name,
}: ChannelMeasures): Finding[] {
  const shortest = Math.min(
    pulses.highSeconds?.mean ?? Infinity,
    pulses.lowSeconds?.mean ?? Infinity,
  );
  const slow = Math.max(riseSeconds?.mean ?? 0, fallSeconds?.mean ?? 0);
  if (!(slow > SLOW_SHARE * shortest) || slow < RESOLVED_SAMPLES * sampleSeconds) return [];
  const words = `${name}: edges are rounded, ${show(slow, 's')} of a pulse of ${show(shortest, 's')}`;
  return [plain('slow-edges', words)];
}

function wheelFindings(
  { wheel, pulses, name }: ChannelMeasures,
  { wheel: wanted }: SignalExpected,
): Finding[] {
  if (!wheel) {
    if (wanted && pulses.rising > 2 * wanted.teeth)
      return [
        plain(
          'pattern',
          `${name}: no turn of a ${wanted.teeth}-${wanted.missing} wheel can be made out`,
        ),
      ];
    return [];
  }
  const found: Finding[] = [];
  const gap = (pitches: number, missing: number) =>
    missing === 0 ? `${pitches} teeth` : `${pitches}-${missing}`;
  const alien = wanted && (wheel.pitches !== wanted.teeth || wheel.missing !== wanted.missing);
  if (alien && wheel.by === 'gap') {
    const words = `${name}: the pattern is ${gap(wheel.pitches, wheel.missing)}, it should be ${gap(wanted.teeth, wanted.missing)}`;
    found.push(plain('pattern', words));
  }
  // Pitches of the wanted number, but the gap drowns among others: another wheel on this channel has other pitches.
  const count = wanted ? wanted.teeth - wanted.missing : 0;
  const isWanted = wanted && Math.abs(wheel.pitches - wanted.teeth) < PITCHES_SAME;
  if (isWanted && wheel.by === 'spacing' && wheel.pulses < count) {
    const words = `${name}: only ${wheel.pulses} of ${count} teeth are seen in every turn`;
    found.push(plain('missing-teeth', words));
  }
  const absent =
    alien || wheel.by !== 'gap' ? [] : absentTeeth(wheel.pitches - wheel.missing, wheel.pattern);
  if (absent.length > 0)
    found.push(
      plain(
        'missing-teeth',
        `${name}: ${teeth(absent)} missing in every turn, counted from the gap`,
      ),
    );
  for (const kind of ['missing', 'extra'] as const) {
    const places = wheel.irregular.filter((it) => it.kind === kind);
    if (places.length === 0) continue;
    const at = places.slice(0, PLACES_NAMED).map((it) => show(it.seconds, 's'));
    const more = places.length > PLACES_NAMED ? ` and ${places.length - PLACES_NAMED} more` : '';
    const what = kind === 'missing' ? 'a tooth drops out' : 'a false pulse appears';
    const each = new Set(places.map((it) => it.pitch));
    const same =
      each.size === 1 && places.length > 1 ? `, always at pitch ${places[0]!.pitch + 1}` : '';
    found.push({
      kind: kind === 'missing' ? 'drop-out' : 'extra-pulses',
      words: `${name}: ${what} at ${at.join(', ')}${more}${same}`,
      seconds: places.map((it) => it.seconds),
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

function coilFindings({ coil, name }: ChannelMeasures, expected: SignalExpected): Finding[] {
  if (!coil) return [];
  const found: Finding[] = [];
  const least = expected.leastPeakToPeak ?? COIL_LEAST_VOLTS;
  if (coil.slow.peakToPeak < least)
    found.push(
      plain(
        'weak',
        `${name} is weak at low speed: ${show(coil.slow.peakToPeak, 'V')} peak to peak at ${show(coil.slow.hertz, 'Hz')}`,
      ),
    );
  if (coil.weakPitches.length > 0)
    found.push(
      plain(
        'weak-teeth',
        `${name}: ${teeth(coil.weakPitches.map((pitch) => pitch + 1))} weaker than the others`,
      ),
    );
  if (coil.runOut > RUN_OUT_MOST)
    found.push(
      plain(
        'run-out',
        `${name}: the height swings by ${Math.round(coil.runOut * 100)} % once a turn: run-out or a loose wheel`,
      ),
    );
  if (expected.beforeGap && coil.beforeGap && coil.beforeGap !== expected.beforeGap)
    found.push(
      plain(
        'inverted',
        `${name} is inverted: the lobe before the gap is ${coil.beforeGap}; the leads are exchanged`,
      ),
    );
  return found;
}

function sweepFindings(
  { sweep, name, unit }: ChannelMeasures,
  expected: SignalExpected,
): Finding[] {
  if (!sweep) return [];
  const found: Finding[] = [];
  const { lowBelow, highAbove } = expected;
  if (unit === 'V' && lowBelow !== undefined && sweep.least >= lowBelow) {
    const words = `${name}: it only comes down to ${show(sweep.least, 'V')}, the module needs less than ${show(lowBelow, 'V')}`;
    found.push(plain('low-not-low', words));
  }
  if (unit === 'V' && highAbove !== undefined && sweep.most <= highAbove) {
    const words = `${name}: it only comes up to ${show(sweep.most, 'V')}, the module needs more than ${show(highAbove, 'V')}`;
    found.push(plain('high-not-high', words));
  }
  if (sweep.dropOuts.length === 0) return found;
  const places = sweep.dropOuts
    .slice(0, PLACES_NAMED)
    .map((it) => `${show(it.from, 'V')} (to ${show(it.to, 'V')} for ${show(it.seconds, 's')})`);
  const more =
    sweep.dropOuts.length > PLACES_NAMED ? ` and ${sweep.dropOuts.length - PLACES_NAMED} more` : '';
  const seconds = sweep.dropOuts.map((it) => it.startSeconds);
  const words = `${name}: contact is lost at ${places.join(', ')}${more}`;
  return [{ kind: 'drop-out', words, seconds }, ...found];
}

function teeth(numbers: readonly number[]): string {
  const named = numbers.slice(0, PLACES_NAMED).join(', ');
  const more = numbers.length > PLACES_NAMED ? ` and ${numbers.length - PLACES_NAMED} more` : '';
  return numbers.length === 1 ? `tooth ${named} is` : `teeth ${named}${more} are`;
}

function plain(kind: FindingKind, words: string): Finding {
  return { kind, words, seconds: [] };
}

function show(value: number, unit: Unit): string {
  return formatQuantity({ value, unit });
}
