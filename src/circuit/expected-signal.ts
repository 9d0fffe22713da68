/** What the signal at the leads of a test should be like: from the target, the module's input and the healthy circuit. */
import type { SignalExpected } from '../waveform/judge-channel.ts';
import type { MeasureOptions } from '../waveform/measure-channel.ts';
import { type Circuit, inputTerminals, partName, sensorOf } from './circuit.ts';
import { hangsOnTheCar } from './input-levels.ts';
import type { Model } from './model.ts';
import { inputOn } from './nets.ts';
import { PLAIN_SETUP, plainSetup } from './plain-setup.ts';
import { FLAT_QUARTER, FLAT_SHARE, FLAT_VOLTS, WEAK_SHARE } from './read-instrument.ts';
import type { Setup, Test } from './test.ts';

/** What a capture at these leads is measured with, and what it is held against. */
export interface SignalKnown {
  readonly measure: MeasureOptions;
  readonly expected: SignalExpected;
  /** Levels of the healthy circuit in volts, and what its module counts by where those cross it. */
  readonly levels: { readonly low: number; readonly high: number };
  /** Below this swing the line is flat; where it is called low and high then. In volts. */
  readonly flat: {
    readonly swing: number;
    readonly lowBelow: number;
    readonly highAbove: number;
  };
  /** Turns of the target for each turn of the crankshaft; null where it does not turn with it. */
  readonly ratio: number | null;
  /** The sensor moves through a travel instead of turning. */
  readonly isTravel: boolean;
}

/** Cars of the circuit file that stand for one of which nothing is known. */
const CARS = 33;

/** Points of cars that the circuit file describes, when no car stands there whose readings would choose them. */
export function anyCars({ pointOf, samples }: Pick<Model, 'pointOf' | 'samples'>): Float64Array[] {
  return Array.from({ length: Math.min(CARS, samples) }, (_, sample) => pointOf(sample));
}

/**
 * What is known of the signal that `test` looks at, in the middle of `cars`, points of healthy circuits: of one car its
 * own. What a module counts by hangs on what its pull-up leads to, which may be 5 V in one and the battery in another.
 */
export function expectedSignal(
  model: Model,
  test: Test,
  cars: readonly Float64Array[] = anyCars(model),
): SignalKnown {
  const { circuit } = model;
  const { target } = circuit;
  const moving: Test = { ...test, setup: plainSetup(test.setup) };
  const plus = 'plus' in test.probe ? test.probe.plus : '';
  const at = inputOn(circuit, PLAIN_SETUP, plus)?.terminal ?? null;
  // As for the look of the model: levels that hang on the car are held against what is healthy in this car.
  const isOwn = at !== null && hangsOnTheCar(circuit, at);
  const found = (isOwn ? cars : [null]).map((point) => model.signalAt(moving, at, point));
  const levels = {
    low: median(found.map(({ low }) => low)),
    high: median(found.map(({ high }) => high)),
  };
  const swing = Math.max(FLAT_VOLTS, levels.high - levels.low);
  const sensor = sensorOf(circuit);
  const counted = found.flatMap((one) => one.levels ?? []);
  const input = counted.length > 0 && {
    lowBelow: median(counted.map(({ lowBelow }) => lowBelow)),
    highAbove: median(counted.map(({ highAbove }) => highAbove)),
  };
  const crosses = input && levels.low < input.lowBelow && levels.high > input.highAbove;
  const wheel =
    target?.teeth && sensor.kind !== 'potentiometer'
      ? { teeth: target.teeth, missing: target.missing }
      : null;
  return {
    measure: wheel ? { wheel } : {},
    expected: {
      ...(wheel && { wheel }),
      ...(crosses ? { lowBelow: input.lowBelow, highAbove: input.highAbove } : {}),
      ...(sensor.kind === 'reluctor' ? { leastPeakToPeak: WEAK_SHARE * swing } : {}),
      ...(sensor.kind === 'current-switch'
        ? { currents: { low: sensor.low.nominal, high: sensor.high.nominal } }
        : {}),
    },
    levels,
    flat: {
      swing: Math.max(FLAT_SHARE * swing, FLAT_VOLTS),
      lowBelow: levels.low + FLAT_QUARTER * swing,
      highAbove: levels.high - FLAT_QUARTER * swing,
    },
    ratio: target && target.turns > 0 ? target.turns : null,
    isTravel: sensor.kind === 'potentiometer',
  };
}

/** Of an even number the lower one of the middle, so that it is that of a car. */
function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[(values.length - 1) >> 1]!;
}

/** The scope test at the module's first input, for a step that asks for a number of the signal. */
export function signalTest(circuit: Circuit, setup: Setup): Test | null {
  const [plus] = inputTerminals(circuit);
  if (plus === undefined) return null;
  const input = inputOn(circuit, PLAIN_SETUP, plus)?.input;
  const minus = input?.kind === 'swing' ? `${partName(plus)}.${input.against}` : 'battery.negative';
  return { setup: { ...setup, target: 'moving' }, probe: { kind: 'pattern', plus, minus } };
}
