/** How a signal looks from its two ends: on a scope, and to the module. */
import type { Look } from '../../../src/circuit/test.ts';
import { MASS } from './add-harness.ts';
import type { Instant } from './add-sensor.ts';
import { type Car, valueIn } from './car.ts';
import type { Drawing } from './drawing.ts';

/** Volts between two places at each instant. */
export interface Ends {
  readonly volts: readonly number[];
  readonly instants: readonly Instant[];
}

/** An input of the module. */
export interface Input {
  readonly plus: string;
  /** Another pin, or the mass. */
  readonly minus: string;
  /** Whether the module follows; `good` gives the ends of the healthy car. */
  readonly follows: (car: Car, ends: Ends, good: () => Promise<Ends>) => Promise<boolean>;
}

/** A switched input is low and high beyond these, in volts. */
const LOW_BELOW = 1.5;
const HIGH_ABOVE = 3.5;
/** A two-wire current is small and large beyond these, in amperes through the sense resistor. */
const SMALL_BELOW = 1.05 / 115;
const LARGE_ABOVE = 1.25 / 115;
/** A coil's waves are counted from so many volts peak to peak. */
const COIL_SWING = 0.8;
/** A position outside these is out of range. */
export const TRACK_VOLTS = { low: 0.2, high: 4.8 } as const;
/** An end of the travel further than this share of it from where the module has learned it: the position does not follow. */
const TRACK_OFF = 0.25;
/** Less than this share of the healthy swing, or so few volts, is flat; less than that is weak. */
const FLAT_SHARE = 0.05;
const FLAT_VOLTS = 0.02;
const WEAK_SHARE = 0.55;
const QUARTER = 0.25;
/** A drop-out that is seen, and a jump, as a share of the healthy swing. */
const DROP_SHARE = 0.1;

/** The inputs of a circuit's module, in the order of its pins. */
export function inputsOf({ sensor, module }: Drawing): readonly Input[] {
  if (sensor === 'coil')
    return [
      {
        plus: 'module.signal-plus',
        minus: 'module.signal-minus',
        follows: async (_car, ends) => swingOf(ends) >= COIL_SWING,
      },
    ];
  return module
    .filter(({ does }) => does === 'input')
    .map(({ pin }) => ({ plus: `module.${pin}`, minus: MASS, follows: followsOf(sensor, pin) }));
}

function followsOf(sensor: Drawing['sensor'], pin: string): Input['follows'] {
  if (sensor === 'tracks')
    return async (_car, ends, good) => {
      // A value that drops out for a moment follows all the same.
      const swept = withoutSpot(ends);
      return (
        Math.min(...swept.volts) >= TRACK_VOLTS.low &&
        Math.max(...swept.volts) <= TRACK_VOLTS.high &&
        coversTravel(swept, await good())
      );
    };
  return async (car, ends) => {
    const { low, high } = thresholds(car, pin);
    return Math.min(...ends.volts) < low && Math.max(...ends.volts) > high;
  };
}

/** The position comes down about as low and up about as high as the healthy one, whichever comes first. */
export function coversTravel(ends: Ends, good: Ends): boolean {
  const off = TRACK_OFF * swingOf(good);
  return (
    Math.min(...ends.volts) <= Math.min(...good.volts) + off &&
    Math.max(...ends.volts) >= Math.max(...good.volts) - off
  );
}

/** Volts that a switched signal has to cross. */
function thresholds(car: Car, pin: string): { low: number; high: number } {
  if (car.drawing.sensor === 'hall') return { low: LOW_BELOW, high: HIGH_ABOVE };
  const sense = valueIn(car, `${pin}.pull`);
  return { low: SMALL_BELOW * sense, high: LARGE_ABOVE * sense };
}

/** The travel without its worn spot. */
export function withoutSpot({ volts, instants }: Ends): Ends {
  return {
    volts: volts.filter((_, index) => !instants[index]?.onSpot),
    instants: instants.filter(({ onSpot }) => !onSpot),
  };
}

/** From the lowest to the highest. */
export function swingOf({ volts }: Ends): number {
  return Math.max(...volts) - Math.min(...volts);
}

/**
 * How a signal looks on a scope beside the healthy one of this car at the same place; a coil's waves beside `fullVolts`, from
 * which on the program calls them full.
 */
export function lookOfPattern(
  car: Car,
  plus: string,
  ends: Ends,
  good: Ends,
  fullVolts: number | null = null,
): Look {
  const swing = Math.max(swingOf(good), FLAT_VOLTS);
  const base = Math.min(...good.volts);
  const [low, high] = [Math.min(...ends.volts), Math.max(...ends.volts)];
  if (high - low < Math.max(FLAT_SHARE * swing, FLAT_VOLTS)) {
    const middle = ((low + high) / 2 - base) / swing;
    if (middle < QUARTER) return 'flat-low';
    return middle > 1 - QUARTER ? 'flat-high' : 'flat-middle';
  }
  if (car.drawing.sensor === 'tracks')
    return !coversTravel(withoutSpot(ends), good)
      ? 'weak'
      : isRagged(ends, swing)
        ? 'uneven'
        : 'full';
  const isSignal = plus.includes('.signal') && car.drawing.sensor !== 'coil';
  const pin = plus.includes('module.') ? plus.split('.')[1]! : 'signal';
  const limit = isSignal ? thresholds(car, pin) : null;
  const crosses = limit && base < limit.low && Math.max(...good.volts) > limit.high;
  const isFull = crosses
    ? low < limit.low && high > limit.high
    : high - low >= (fullVolts ?? WEAK_SHARE * swing);
  if (!isFull) return 'weak';
  return isUnevenWheel(car) ? 'uneven' : 'full';
}

/** A track that jumps, or drops out on a spot. */
function isRagged({ volts, instants }: Ends, swing: number): boolean {
  const sweep = instants.flatMap(({ travel, onSpot }, index) =>
    onSpot ? [] : [{ travel, volts: volts[index] ?? 0 }],
  );
  const first = sweep[0]?.volts ?? 0;
  const last = sweep.at(-1)?.volts ?? 0;
  const straight = (travel: number) => first + travel * (last - first);
  const jumps = sweep.some((one) => Math.abs(one.volts - straight(one.travel)) > QUARTER * swing);
  const drops = instants.some(
    ({ travel, onSpot }, index) =>
      onSpot && Math.abs((volts[index] ?? 0) - straight(travel)) > DROP_SHARE * swing,
  );
  return jumps || drops;
}

function isUnevenWheel({ faults, drawing }: Car): boolean {
  return faults.some(
    ({ trouble }) =>
      trouble.kind === 'wheel' &&
      (trouble.mode === 'damaged' || (trouble.mode === 'gap-wide' && drawing.sensor !== 'coil')),
  );
}
