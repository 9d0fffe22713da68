/** Values that every car has and no circuit file need name, and the choices that a file leaves open, as values to draw. */
import type { Toleranced } from '../quantity/quantity.ts';
import { unknownBetween, whichOf } from '../quantity/value-at.ts';
import type { PullTo, Reference, Wire } from './circuit.ts';

/** A good crimped contact. From memory of connector makers' data: some milliohm new, 20 after ageing. */
export const CONTACT: Toleranced = unknownBetween(0.002, 0.02, 'ohm');
/** Lengths in a harness are estimates, and strands differ. Common practice, no source. */
export const WIRE_SPREAD = 0.15;
/** What a test resistor has of what its bands say; the same one in every test. Common practice, no source. */
export const BRIDGE_RESISTOR: Toleranced = { nominal: 1, low: 0.95, high: 1.05, unit: '1' };

/** What a module's resistor has of another of its kind that is built like it. Common practice, no source. */
export const TWIN_RESISTOR: Toleranced = { nominal: 1, low: 0.95, high: 1.05, unit: '1' };

/** Name of the value below. */
export const SUBSTRATE = 'substrate';
/** Whether a chip has a diode from its ground to its output: none (0) or one (1), as often. Common practice, no source. */
export const SUBSTRATE_DIODE: Toleranced = whichOf([0.5, 0.5]);

/** Insulation of this much and more is sound. Common practice, no source. */
export const SOUND_INSULATION_OHMS = 1e6;

/** Coldest and hottest copper that a car comes with, in degC. Common practice, no source. */
const COLDEST = -20;
const HOTTEST = 110;

const copper = new WeakMap<Wire, Toleranced>();

/** Resistance of a whole wire: over every length that is left open, or within the usual spread of a known one. */
export function copperOf(wire: Wire): Toleranced {
  const known = wire.copper ?? copper.get(wire);
  if (known) return known;
  const low = (1 - WIRE_SPREAD) * wire.ohms;
  const high = (1 + WIRE_SPREAD) * wire.ohms;
  const made = { nominal: wire.ohms, low, high, unit: 'ohm' } as const;
  copper.set(wire, made);
  return made;
}

/** Colder than the file says as often as hotter, each evenly. */
export function temperatureAround(celsius: number): Toleranced {
  const low = Math.min(COLDEST, celsius);
  const high = Math.max(HOTTEST, celsius);
  const between = (from: number, to: number): Toleranced => ({
    nominal: (from + to) / 2,
    low: from,
    high: to,
    unit: 'degC',
  });
  return {
    ...{ nominal: celsius, low, high, unit: 'degC' },
    oneOf: [
      { chance: 0.5, value: between(low, celsius) },
      { chance: 0.5, value: between(celsius, high) },
    ],
  };
}

/** Whether an output gives its voltage (0) or follows the battery (1); null where that is no question. */
export function feedChoice(reference: Reference): Toleranced | null {
  const { batteryChance } = reference;
  if (batteryChance === undefined) return null;
  return once(choices, reference, () => whichOf([1 - batteryChance, batteryChance]));
}

/** The number of the end that a resistor leads to. */
export function pullChoice(to: Extract<PullTo, { kind: 'one-of' }>): Toleranced {
  return once(choices, to, () => whichOf(to.ends.map(({ chance }) => chance)));
}

/** One object for each, so that a drawn value is found by it. */
const choices = new WeakMap<object, Toleranced>();

function once<Key extends object, Value extends object>(
  kept: WeakMap<Key, Value>,
  key: Key,
  make: () => Value,
): Value {
  const value = kept.get(key) ?? make();
  kept.set(key, value);
  return value;
}
