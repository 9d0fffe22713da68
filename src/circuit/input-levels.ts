/** The two voltages that a module's input counts by, in one car: as they are written, or by what stands behind the pin. */
import {
  type Circuit,
  likeliestEnd,
  type ModulePart,
  type ModulePin,
  moduleOf,
  type PullEnd,
} from './circuit.ts';
import type { Draw } from './plan.ts';
import { feedChoice, pullChoice } from './plan-module.ts';
import type { TerminalId, VehicleState } from './test.ts';

/** In volts at the pin. */
export interface InputLevels {
  readonly lowBelow: number;
  readonly highAbove: number;
}

/** The levels of the input at `terminal` (`module.signal`) in one draw of the car's values; null where it has none. */
export function inputLevels(
  circuit: Circuit,
  terminal: TerminalId,
  value: Draw['value'],
  state: VehicleState,
): InputLevels | null {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ name }) => `${module.name}.${name}` === terminal);
  if (pin?.input?.kind !== 'levels') return null;
  const { lowBelow, highAbove, of } = pin.input;
  const times =
    of === 'pull-amps'
      ? value(`${terminal}.pull`, pin.pull!.ohms)
      : of === 'pull-supply'
        ? supplyVolts(circuit, pin, value, state)
        : 1;
  return { lowBelow: lowBelow * times, highAbove: highAbove * times };
}

/** What the resistor behind a pin leads to, as the module holds it: its own comparison does not sag with a dragged rail. */
function supplyVolts(
  circuit: Circuit,
  pin: ModulePin,
  value: Draw['value'],
  state: VehicleState,
): number {
  const module = moduleOf(circuit);
  const { to } = pin.pull!;
  const key = `${module.name}.${pin.name}`;
  const end =
    to.kind === 'one-of'
      ? (to.ends[value(`${key}.pull-to`, pullChoice(to))]?.end ?? likeliestEnd(to))
      : to;
  const running = state === 'running' || state === 'cranking' ? state : 'rest';
  const battery = () => value(`battery.${running}`, circuit.battery[running]);
  if (end.kind === 'volts')
    return value(end.as === undefined ? `${key}.bias` : `${module.name}.${end.as}.bias`, end.volts);
  if (end.kind !== 'pin') return battery();
  return referenceVolts(module, end.pin, value) ?? battery();
}

/** What an output of the module gives; null where it follows the battery. */
function referenceVolts(module: ModulePart, name: string, value: Draw['value']): number | null {
  const pin = module.inside.find((one) => one.name === name);
  if (!pin?.reference) return pin?.joinedTo ? referenceVolts(module, pin.joinedTo, value) : null;
  const { volts, batteryChance } = pin.reference;
  const key = `${module.name}.${name}`;
  const follows =
    batteryChance !== undefined && value(`${key}.feed`, feedChoice(batteryChance)) === 1;
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
