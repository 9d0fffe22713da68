/**
 * Whether the numbers of a circuit that was stored, and not loaded, are such as the loader lets through. Signs
 * and how many there may be of each thing are in the schema of the events.
 */
import type { Unit } from '../quantity/quantity.ts';
import type { Circuit, ModuleInput, Target, Wire } from './circuit.ts';
import { withinReason } from './within-reason.ts';

/** A value that is none. */
export interface ValueFlaw {
  /** Its path in the circuit. */
  readonly at: string;
  /** Why, as the rest of a sentence that begins with what holds the circuit; without a full stop. */
  readonly words: string;
}

const UNREASONABLE = "has a value that is not found in a vehicle's sensor circuit";
const UPSIDE_DOWN = 'has a range whose low end lies above its high end';
/** The shortest and thickest wire that a circuit file may have, of copper. */
const WIRE_OHMS_MIN = 1e-8;

/** The first such value, or null. */
export function valueFlaw(circuit: Circuit): ValueFlaw | null {
  const { battery, parts, wires, target, faults, celsius } = circuit;
  return (
    rangeFlaw({ battery, parts, faults }, '', null) ??
    (isPlain(celsius, 'degC') ? null : { at: 'celsius', words: UNREASONABLE }) ??
    firstOf(wires, (wire) =>
      isWire(wire) ? null : { at: `wires, "${wire.name}"`, words: UNREASONABLE },
    ) ??
    firstOf(parts, (part) => {
      const at = `parts, "${part.name}"`;
      if (part.kind === 'fuse' && !isPlain(part.amps, 'A')) return { at, words: UNREASONABLE };
      if (part.kind !== 'module') return null;
      return firstOf(
        part.inside,
        ({ name, input }) => input && inputFlaw(input, `${at}, "${name}"`),
      );
    }) ??
    (target && !isTarget(target)
      ? { at: 'target', words: 'has a wheel that there is not' }
      : null) ??
    (faults.length > 0 && faults.every(({ weight }) => weight === 0)
      ? { at: 'faults', words: 'has no fault of any weight' }
      : null)
  );
}

/** Ranges, wherever they stand, in the unit that the name nearest above them asks for. */
function rangeFlaw(value: object, at: string, due: Unit | null): ValueFlaw | null {
  const low: unknown = Reflect.get(value, 'low');
  const high: unknown = Reflect.get(value, 'high');
  if (typeof low === 'number' && typeof high === 'number') {
    const nominal: unknown = Reflect.get(value, 'nominal') ?? low;
    if (!(typeof nominal === 'number' && low <= nominal && nominal <= high))
      return { at, words: UPSIDE_DOWN };
    const unit: unknown = Reflect.get(value, 'unit') ?? due;
    if (due === null || unit !== due)
      return { at, words: 'has a value in a unit that is not its own' };
    return withinReason({ low, high, unit: due }) ? null : { at, words: UNREASONABLE };
  }
  return firstOf(Object.entries(value), ([key, inner]) => {
    if (typeof inner !== 'object' || inner === null) return null;
    const inside = at === '' ? key : `${at}.${key}`;
    return rangeFlaw(inner, inside, Object.hasOwn(UNIT_OF, key) ? UNIT_OF[key]! : due);
  });
}

/** The unit of each value by its name. `size` is in ohms or a share, which is no smaller. */
const UNIT_OF: Readonly<Record<string, Unit>> = {
  ...{ rest: 'V', cranking: 'V', running: 'V', byHand: 'V', volts: 'V', minimum: 'V' },
  ...{ ohms: 'ohm', series: 'ohm', on: 'ohm', off: 'ohm', wiper: 'ohm', reverse: 'ohm' },
  ...{ shorted: 'ohm', ground: 'ohm', size: 'ohm' },
  ...{ draws: 'A', limit: 'A', low: 'A', high: 'A' },
  ...{ closed: '1', open: '1', duty: '1', groundVolts: 'V', copper: 'ohm' },
};

function isPlain(value: number, unit: Unit): boolean {
  return withinReason({ low: value, high: value, unit });
}

/** Its resistance was worked out from the rest when the circuit was loaded. */
function isWire({ ohms, sizeSquareMetres, lengthMetres }: Wire): boolean {
  if (!isPlain(sizeSquareMetres, 'm2') || !isPlain(lengthMetres, 'm')) return false;
  return ohms >= WIRE_OHMS_MIN && isPlain(Math.max(1, ohms), 'ohm');
}

function inputFlaw(input: ModuleInput, at: string): ValueFlaw | null {
  const levels = input.kind === 'swing' ? [input.swing] : [input.lowBelow, input.highAbove];
  const unit = input.kind === 'levels' && input.of ? LEVEL_UNITS[input.of] : 'V';
  if (!levels.every((one) => isPlain(one, unit))) return { at, words: UNREASONABLE };
  return input.kind === 'swing' || input.lowBelow < input.highAbove ? null : { at, words: LEVELS };
}
const LEVEL_UNITS = { 'pull-amps': 'A', 'pull-supply': '1' } as const;
const LEVELS = 'has an input whose low level does not lie under its high level';

function isTarget({ teeth, missing }: Target): boolean {
  return teeth === null || missing < teeth;
}

/** The first flaw of the list. */
function firstOf<T>(all: readonly T[], flawOf: (one: T) => ValueFlaw | null): ValueFlaw | null {
  for (const one of all) {
    const flaw = flawOf(one);
    if (flaw) return flaw;
  }
  return null;
}
