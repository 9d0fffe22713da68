/** The two voltages that a module's input counts by, in one car: as they are written, or by what stands behind the pin. */
import { valuesOf } from './car-quantities.ts';
import { type Circuit, likeliestEnd, moduleOf, type Pull, type PullEnd } from './circuit.ts';
import { pullChoice } from './open-values.ts';
import type { Draw } from './plan.ts';
import { readTracks } from './position-tracks.ts';
import { referenceVolts } from './reference-volts.ts';
import type { TerminalId, VehicleState } from './test.ts';

/** In volts at the pin. */
export interface InputLevels {
  readonly lowBelow: number;
  readonly highAbove: number;
}

/** The levels of an input in one draw of the car's values. */
export type LevelsIn = (value: Draw['value']) => InputLevels;

/** Something of a circuit in one draw of the car's values. */
type InDraw<Made> = (value: Draw['value']) => Made;

/** The levels of the input at `terminal` (`module.signal`) in each draw of the car's values; null where it has none. */
export function levelsIn(
  circuit: Circuit,
  terminal: TerminalId,
  state: VehicleState,
): LevelsIn | null {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ name }) => `${module.name}.${name}` === terminal);
  if (pin?.input?.kind !== 'levels') return null;
  const { lowBelow, highAbove, of } = pin.input;
  if (of === 'travel') return travelLevels(circuit, terminal, pin.input);
  const { pull } = pin;
  if (of === undefined || pull === null) return () => ({ lowBelow, highAbove });
  const resistor = pull.ohmsAs === undefined ? terminal : `${module.name}.${pull.ohmsAs}`;
  const ohms = valuesOf(circuit)(`${resistor}.pull`, pull.ohms);
  const times: InDraw<number> =
    of === 'pull-amps' ? (value) => value(ohms) : supplyVolts(circuit, pull, terminal, state);
  return (value) => {
    const by = times(value);
    return { lowBelow: lowBelow * by, highAbove: highAbove * by };
  };
}

/** By the track at the pin; levels that no track can cross where there is none. */
function travelLevels(
  circuit: Circuit,
  terminal: TerminalId,
  { lowBelow, highAbove }: InputLevels,
): LevelsIn {
  const track = readTracks(circuit).find(({ input }) => input === terminal);
  if (!track) return () => ({ lowBelow: 0, highAbove: Infinity });
  return (value) => {
    const { closed, open } = track.ends(value);
    const foot = Math.min(closed, open);
    const way = Math.abs(open - closed);
    const volts = track.volts(value);
    return {
      lowBelow: volts * (foot + lowBelow * way),
      highAbove: volts * (foot + highAbove * way),
    };
  };
}

/** What the resistor behind a pin leads to, as the module holds it: its own comparison does not sag with a dragged rail. */
function supplyVolts(
  circuit: Circuit,
  { to, alike }: Pull,
  key: TerminalId,
  state: VehicleState,
): InDraw<number> {
  const module = moduleOf(circuit);
  const drawn = valuesOf(circuit);
  const running = state === 'running' || state === 'cranking' ? state : 'rest';
  const battery = drawn(`battery.${running}`, circuit.battery[running]);
  const volts = (end: PullEnd): InDraw<number> => {
    if (end.kind === 'volts') {
      const biasKey = end.as === undefined ? `${key}.bias` : `${module.name}.${end.as}.bias`;
      const bias = drawn(biasKey, end.volts);
      return (value) => value(bias);
    }
    if (end.kind !== 'pin') return (value) => value(battery);
    const reference = referenceVolts(circuit, end.pin);
    return (value) => reference(value) ?? value(battery);
  };
  const likeliest = volts(likeliestEnd(to));
  if (to.kind !== 'one-of') return likeliest;
  const chooses = alike === undefined ? key : `${module.name}.${alike}`;
  const choice = drawn(`${chooses}.pull-to`, pullChoice(to));
  const all = to.ends.map(({ end }) => volts(end));
  return (value) => (all[value(choice)] ?? likeliest)(value);
}

/** Whether levels `of` a pin can be measured by what its resistor may lead to: ground for amperes, a supply for shares of it. */
export function canMeasure(of: 'pull-amps' | 'pull-supply', ends: readonly PullEnd[]): boolean {
  const isGround = of === 'pull-amps';
  const isFit = ({ kind }: PullEnd) => kind !== 'nothing' && (kind === 'ground') === isGround;
  return ends.length > 0 && ends.every(isFit);
}

/** Whether the levels hang on the car's own values, so that what is healthy has to be that car's too. */
export function hangsOnTheCar(circuit: Circuit, terminal: TerminalId): boolean {
  const module = moduleOf(circuit);
  const pin = module.inside.find(({ name }) => `${module.name}.${name}` === terminal);
  return pin?.input?.kind === 'levels' && pin.input.of !== undefined;
}
