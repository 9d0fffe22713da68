/** What the signal at the leads of a test should be like: from the target, the module's input and the healthy circuit. */
import type { SignalExpected } from '../waveform/judge-channel.ts';
import type { MeasureOptions } from '../waveform/measure-channel.ts';
import { type Circuit, inputTerminals, partName, sensorOf } from './circuit.ts';
import type { Model } from './model.ts';
import { inputOn } from './nets.ts';
import { PLAIN_SETUP, plainSetup } from './plain-setup.ts';
import { FLAT_QUARTER, FLAT_SHARE, FLAT_VOLTS, WEAK_SHARE } from './read-instrument.ts';
import type { Setup, Test } from './test.ts';

export interface SignalKnown {
  readonly measure: MeasureOptions;
  readonly expected: SignalExpected;
  /** Levels of the healthy circuit in volts. */
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

/** What is known of the signal that `test` looks at. */
export function expectedSignal(model: Model, test: Test): SignalKnown {
  const { circuit } = model;
  const { target } = circuit;
  const moving: Test = { ...test, setup: plainSetup(test.setup) };
  const levels = model.levels('healthy', moving, -1);
  const swing = Math.max(FLAT_VOLTS, levels.high - levels.low);
  const sensor = sensorOf(circuit);
  const plus = 'plus' in test.probe ? test.probe.plus : '';
  const at = inputOn(circuit, PLAIN_SETUP, plus)?.terminal;
  const input = at ? model.inputLevels(at, moving.setup.state) : null;
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

/** The scope test at the module's first input, for a step that asks for a number of the signal. */
export function signalTest(circuit: Circuit, setup: Setup): Test | null {
  const [plus] = inputTerminals(circuit);
  if (plus === undefined) return null;
  const input = inputOn(circuit, PLAIN_SETUP, plus)?.input;
  const minus = input?.kind === 'swing' ? `${partName(plus)}.${input.against}` : 'battery.negative';
  return { setup: { ...setup, target: 'moving' }, probe: { kind: 'pattern', plus, minus } };
}
