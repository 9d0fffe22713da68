/** The two voltages that a module's input counts by, in one car: as they are written, or by what stands behind the pin. */
import {
  type Circuit,
  likeliestEnd,
  type ModulePart,
  moduleOf,
  type PullEnd,
  type PullTo,
} from './circuit.ts';
import type { Draw } from './plan.ts';
import { feedChoice, pullChoice } from './plan-module.ts';
import type { TerminalId, VehicleState } from './test.ts';

/** In volts at the pin. */
export interface InputLevels {
  readonly lowBelow: number;
  readonly highAbove: number;
}

/** The levels of an input in one draw of the car's values. */
export type LevelsIn = (value: Draw['value']) => InputLevels;

/** The levels of the input at `terminal` (`module.signal`) in one draw of the car's values; null where it has none. */
export function inputLevels(
  circuit: Circuit,
  terminal: TerminalId,
  value: Draw['value'],
  state: VehicleState,
): InputLevels | null {
  return levelsIn(circuit, terminal, state)?.(value) ?? null;
}

/** The same for many draws. */
export function levelsIn(
  circuit: Circuit,
  terminal: TerminalId,
  state: VehicleState,
): LevelsIn | null {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ name }) => `${module.name}.${name}` === terminal);
  if (pin?.input?.kind !== 'levels') return null;
  const { lowBelow, highAbove, of } = pin.input;
  const { pull } = pin;
  const pullKey = `${terminal}.pull`;
  if (of === undefined || pull === null) return () => ({ lowBelow, highAbove });
  const times =
    of === 'pull-amps'
      ? (value: Draw['value']) => value(pullKey, pull.ohms)
      : supplyVolts(circuit, pull.to, terminal, state);
  return (value) => {
    const by = times(value);
    return { lowBelow: lowBelow * by, highAbove: highAbove * by };
  };
}

/** What the resistor behind a pin leads to, as the module holds it: its own comparison does not sag with a dragged rail. */
function supplyVolts(
  circuit: Circuit,
  to: PullTo,
  key: TerminalId,
  state: VehicleState,
): (value: Draw['value']) => number {
  const module = moduleOf(circuit);
  const choice = to.kind === 'one-of' ? pullChoice(to) : null;
  const choiceKey = `${key}.pull-to`;
  const running = state === 'running' || state === 'cranking' ? state : 'rest';
  const batteryKey = `battery.${running}`;
  const battery = (value: Draw['value']) => value(batteryKey, circuit.battery[running]);
  const volts = (end: PullEnd): ((value: Draw['value']) => number) => {
    if (end.kind === 'volts') {
      const bias = end.as === undefined ? `${key}.bias` : `${module.name}.${end.as}.bias`;
      return (value) => value(bias, end.volts);
    }
    if (end.kind !== 'pin') return battery;
    return (value) => referenceVolts(module, end.pin, value) ?? battery(value);
  };
  if (to.kind !== 'one-of' || choice === null) return volts(likeliestEnd(to));
  const all = to.ends.map(({ end }) => volts(end));
  const likeliest = volts(likeliestEnd(to));
  return (value) => (all[value(choiceKey, choice)] ?? likeliest)(value);
}

/** What an output of the module gives; null where it follows the battery. */
export function referenceVolts(
  module: ModulePart,
  name: string,
  value: Draw['value'],
): number | null {
  const pin = module.inside.find((one) => one.name === name);
  if (!pin?.reference) return pin?.joinedTo ? referenceVolts(module, pin.joinedTo, value) : null;
  const { volts } = pin.reference;
  const key = `${module.name}.${name}`;
  const feed = feedChoice(pin.reference);
  const follows = feed !== null && value(`${key}.feed`, feed) === 1;
  return volts === 'battery' || follows ? null : value(`${key}.volts`, volts);
}

/** Whether levels `of` a pin can be measured by what its resistor may lead to: ground for amperes, a supply for shares of it. */
export function canMeasure(of: 'pull-amps' | 'pull-supply', ends: readonly PullEnd[]): boolean {
  const isGround = of === 'pull-amps';
  return ends.length > 0 && ends.every(({ kind }) => (kind === 'ground') === isGround);
}

/** Whether the levels hang on the car's own values, so that what is healthy has to be that car's too. */
export function hangsOnTheCar(circuit: Circuit, terminal: TerminalId): boolean {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ name }) => `${module.name}.${name}` === terminal);
  return pin?.input?.kind === 'levels' && pin.input.of !== undefined;
}
