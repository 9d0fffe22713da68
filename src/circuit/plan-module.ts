/** What stands behind the pins of a module, as elements. */
import type { Toleranced } from '../quantity/quantity.ts';
import { whichOf } from '../quantity/value-at.ts';
import {
  endsOf,
  type ModulePart,
  type ModulePin,
  type PullEnd,
  type PullTo,
  type Reference,
  type Span,
} from './circuit.ts';
import { GROUND } from './netlist.ts';
import {
  type Draw,
  fixedElement,
  type MakeElement,
  type PartEffect,
  type Plan,
  plainResistor,
} from './plan.ts';

/** A module's output has its own divider and discharge resistor; it keeps a dead output at 0 V. Common practice, no source. */
const BLEED_OHMS = 100_000;
/** A battery-fed output that is low loses across its worn switch what is missing of this. Common practice, no source. */
const WORN_SWITCH_VOLTS = 12;
/** Two pins of a module on the same copper. */
const JOINT_OHMS = 0.002;
/** A way that this car does not have, beside the one that it has: a hundred million times a meter's resistance. */
const UNDRAWN_OHMS = 1e15;
/** An output that this car does not have wants so far below battery negative that it never gives a current. */
const UNDRAWN_VOLTS = -1000;

/** Adds the plugged module; without power its outputs and rails are at 0 V. */
export function addModule(
  plan: Plan,
  module: ModulePart,
  powered: boolean,
  own: PartEffect | null,
): void {
  const inside = (pin: string): number => plan.node(`${module.name}.${pin}.pin`);
  const hurt = (mode: PartEffect['mode'], pin: string) => own?.mode === mode && own.at === pin;
  for (const pin of module.inside) {
    const at = inside(pin.name);
    const key = `${module.name}.${pin.name}`;
    const { reference, pull, ground } = pin;
    if (pin.joinedTo !== null) {
      const twin = inside(pin.joinedTo);
      plan.makers.push(fixedElement({ kind: 'resistor', a: at, b: twin, ohms: JOINT_OHMS }));
    }
    if (reference) {
      plan.makers.push(fixedElement({ kind: 'resistor', a: at, b: GROUND, ohms: BLEED_OHMS }));
      if (powered && !hurt('reference-dead', pin.name)) {
        const low = hurt('reference-low', pin.name) ? own!.size : null;
        addReference(plan, { key, at, reference, low });
      }
    }
    if (pull && !hurt('pull-missing', pin.name))
      addPull(plan, { module: module.name, key, at, pull, powered, inside });
    if (ground && !hurt('ground-open', pin.name))
      plan.makers.push(
        groundPath(at, `${key}.ground`, ground, `${key}.ground-volts`, powered && pin.groundVolts),
      );
  }
}

/** From a ground to battery negative: its resistance, and what other consumers drop on the same way, if that is known. */
export function groundPath(
  at: number,
  ohmsKey: string,
  ohms: Toleranced,
  voltsKey: string,
  volts: Toleranced | false | undefined,
): MakeElement {
  if (!volts) return plainResistor(at, GROUND, ohmsKey, ohms);
  return (draw) => ({
    kind: 'emf',
    plus: at,
    minus: GROUND,
    volts: draw.value(voltsKey, volts),
    ohms: draw.value(ohmsKey, ohms),
  });
}

/** A regulated output: of a voltage, behind the battery, or one of these for each way that the circuit leaves open. */
function addReference(
  plan: Plan,
  {
    key,
    at,
    reference,
    low,
  }: {
    readonly key: string;
    readonly at: number;
    readonly reference: Reference;
    /** Size of a weak output, as a share of what it should be; null for a good one. */
    readonly low: Span | null;
  },
): void {
  const { volts, series, limit } = reference;
  const feed = feedChoice(reference);
  // Made once: a draw looks values up by them.
  const feedKey = `${key}.feed`;
  const voltsKey = `${key}.volts`;
  const seriesKey = `${key}.series`;
  const limitKey = `${key}.limit`;
  const ways = feed ? [volts, 'battery' as const] : [volts];
  ways.forEach((way, index) => {
    const from = way === 'battery' ? plan.node('battery.positive') : GROUND;
    plan.makers.push((draw) => {
      const drawn = feed === null || draw.value(feedKey, feed) === index;
      const full = way === 'battery' ? 0 : draw.value(voltsKey, way);
      const whole = way === 'battery' ? WORN_SWITCH_VOLTS : full;
      const left = low ? full - whole * (1 - draw.size(low)) : full;
      return {
        kind: 'regulator',
        from,
        out: at,
        volts: drawn ? left : UNDRAWN_VOLTS,
        ohms: draw.value(seriesKey, series),
        limitAmps: draw.value(limitKey, limit),
      };
    });
  });
}

/** Whether an output gives its voltage (0) or follows the battery (1); null where that is no question. */
export function feedChoice(reference: Reference): Toleranced | null {
  const { batteryChance } = reference;
  if (batteryChance === undefined) return null;
  return once(choices, reference, () => whichOf([1 - batteryChance, batteryChance]));
}

/** The resistor behind a pin, to each end that it may have. */
function addPull(
  plan: Plan,
  {
    module,
    key,
    at,
    pull: { to, ohms },
    powered,
    inside,
  }: {
    readonly module: string;
    readonly key: string;
    readonly at: number;
    readonly pull: NonNullable<ModulePin['pull']>;
    readonly powered: boolean;
    readonly inside: (pin: string) => number;
  },
): void {
  const ends = endsOf(to);
  const choice = to.kind === 'one-of' ? pullChoice(to) : null;
  const toKey = `${key}.pull-to`;
  const pullKey = `${key}.pull`;
  ends.forEach((end, index) => {
    const resistance = (draw: Draw) =>
      choice === null || draw.value(toKey, choice) === index
        ? draw.value(pullKey, ohms)
        : UNDRAWN_OHMS;
    if (end.kind === 'volts') {
      const bias = end.as === undefined ? `${key}.bias` : `${module}.${end.as}.bias`;
      plan.makers.push((draw) => ({
        kind: 'emf',
        plus: at,
        minus: GROUND,
        volts: powered ? draw.value(bias, end.volts) : 0,
        ohms: resistance(draw),
      }));
      return;
    }
    const rail = railOf(end, plan, powered, inside);
    plan.makers.push(
      choice === null
        ? plainResistor(at, rail, pullKey, ohms)
        : (draw) => ({ kind: 'resistor', a: at, b: rail, ohms: resistance(draw) }),
    );
  });
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

function railOf(
  end: Exclude<PullEnd, { kind: 'volts' }>,
  plan: Plan,
  powered: boolean,
  inside: (pin: string) => number,
): number {
  if (end.kind === 'pin') return inside(end.pin);
  return end.kind === 'battery' && powered ? plan.node('battery.positive') : GROUND;
}
