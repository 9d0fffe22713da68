/** Small sums of the trade: dividers and meter loading, speed and frequency, scope settings. */

/** Two resistances in series on a supply, and a meter across the lower one. */
export interface Divider {
  readonly supplyVolts: number;
  readonly upperOhms: number;
  readonly lowerOhms: number;
  /** Input resistance of the meter across the lower part, default none. */
  readonly meterOhms?: number;
}

/** What stands at the tap, and how far the meter pulls it down. */
export interface DividerResult {
  /** Without and with the meter. */
  readonly volts: number;
  readonly withMeterVolts: number;
  /** Resistance seen from the tap: what the meter's own current flows through. */
  readonly sourceOhms: number;
  readonly amps: number;
}

/** Voltage across the lower of two resistances. An infinite lower resistance is an open one. */
export function divider({
  supplyVolts,
  upperOhms,
  lowerOhms,
  meterOhms = Infinity,
}: Divider): DividerResult {
  const tap = (lower: number) =>
    lower === Infinity ? supplyVolts : (supplyVolts * lower) / (upperOhms + lower);
  const loaded = parallelOhms(lowerOhms, meterOhms);
  return {
    volts: tap(lowerOhms),
    withMeterVolts: tap(loaded),
    sourceOhms: parallelOhms(upperOhms, lowerOhms),
    amps: supplyVolts / (upperOhms + lowerOhms),
  };
}

/** Two resistances side by side; either may be infinite or zero. */
export function parallelOhms(a: number, b: number): number {
  if (a === Infinity) return b;
  if (b === Infinity) return a;
  return a + b === 0 ? 0 : (a * b) / (a + b);
}

/** A wheel by what a counter of its teeth needs to know. */
export interface WheelSpeed {
  /** Pitches around the wheel, counted as if none were missing. */
  readonly teeth: number;
  readonly missing?: number;
  /** Turns of the wheel for each turn of the crankshaft: 0.5 for a camshaft. */
  readonly ratio?: number;
}

/** One speed in all the forms in which it is read off. */
export interface SpeedResult {
  /** Crankshaft speed and the wheel's own. */
  readonly rpm: number;
  readonly wheelRpm: number;
  /** Turns of the wheel each second. */
  readonly turnHertz: number;
  /** Of the teeth beside one another, and what a counter shows that counts over whole turns. */
  readonly toothHertz: number;
  readonly averageHertz: number;
  readonly toothSeconds: number;
  /** From tooth to tooth across the gap. */
  readonly gapSeconds: number;
  readonly turnSeconds: number;
}

/** Frequencies and times of a wheel at a crankshaft speed. */
export function speedOfWheel(
  rpm: number,
  { teeth, missing = 0, ratio = 1 }: WheelSpeed,
): SpeedResult {
  const wheelRpm = rpm * ratio;
  const turnHertz = wheelRpm / 60;
  const toothHertz = turnHertz * teeth;
  return {
    rpm,
    wheelRpm,
    turnHertz,
    toothHertz,
    averageHertz: turnHertz * (teeth - missing),
    toothSeconds: 1 / toothHertz,
    gapSeconds: (1 + missing) / toothHertz,
    turnSeconds: 1 / turnHertz,
  };
}

/** Crankshaft speed at which the teeth beside one another come at `toothHertz`. */
export function rpmOfTeeth(toothHertz: number, { teeth, ratio = 1 }: WheelSpeed): number {
  return ((toothHertz / teeth) * 60) / ratio;
}

/** A signal to be seen on a scope of so many divisions. */
export interface ScopeSignal {
  readonly lowVolts: number;
  readonly highVolts: number;
  /** Repetition to be seen, and how many of it should fit, default 2. */
  readonly hertz: number;
  readonly repeats?: number;
  readonly verticalDivisions?: number;
  readonly horizontalDivisions?: number;
}

/** What to set the scope to so that the signal fits its screen. */
export interface ScopeSettings {
  readonly voltsPerDivision: number;
  readonly secondsPerDivision: number;
  readonly screenVolts: number;
  readonly screenSeconds: number;
  /** DC for a signal that stands on one side of zero, a centred zero for one that swings. */
  readonly zero: 'bottom' | 'centre';
  /** Half-way between the levels. */
  readonly triggerVolts: number;
}

/** The signal should fill at most this share of the screen's height. Common practice, no source. */
const FILL = 0.8;
const [VERTICAL, HORIZONTAL] = [8, 10];

/** Smallest usual setting (1, 2 or 5 times a power of ten) that shows the whole signal and so many repeats. */
export function scopeSettings(signal: ScopeSignal): ScopeSettings {
  const { lowVolts, highVolts, hertz, repeats = 2 } = signal;
  const { verticalDivisions = VERTICAL, horizontalDivisions = HORIZONTAL } = signal;
  const swings = lowVolts < -0.1 * Math.abs(highVolts);
  // With zero at the foot or in the middle, the farther side decides.
  const reach = swings
    ? 2 * Math.max(Math.abs(lowVolts), Math.abs(highVolts))
    : Math.max(Math.abs(highVolts), highVolts - lowVolts);
  const voltsPerDivision = nextSetting(reach / (FILL * verticalDivisions));
  const secondsPerDivision = nextSetting(repeats / hertz / horizontalDivisions);
  return {
    voltsPerDivision,
    secondsPerDivision,
    screenVolts: voltsPerDivision * verticalDivisions,
    screenSeconds: secondsPerDivision * horizontalDivisions,
    zero: swings ? 'centre' : 'bottom',
    triggerVolts: triggerOf(lowVolts, highVolts),
  };
}

/** Two digits are as near as a knob is set; a middle that is nothing beside the swing is zero. */
function triggerOf(lowVolts: number, highVolts: number): number {
  const middle = (lowVolts + highVolts) / 2;
  return Math.abs(middle) < 0.02 * (highVolts - lowVolts) ? 0 : Number(middle.toPrecision(2));
}

/** The smallest of 1, 2, 5, 10 ... times a power of ten that is not below `least`. */
export function nextSetting(least: number): number {
  const power = Math.floor(Math.log10(least));
  // A rounding of the quotient must not skip a setting that fits exactly.
  const fits = (step: number) => Number(`${step}e${power}`) >= least * (1 - 1e-9);
  return Number(`${[1, 2, 5].find(fits) ?? 10}e${power}`);
}
