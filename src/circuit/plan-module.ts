/** What stands behind the pins of a module, as elements. */
import type { Toleranced } from '../quantity/quantity.ts';
import {
  type ModulePart,
  type ModulePin,
  type PullEnd,
  pullEnds,
  type Reference,
  type Span,
} from './circuit.ts';
import { GROUND } from './netlist.ts';
import { feedChoice, pullChoice, TWIN_RESISTOR } from './open-values.ts';
import {
  type Draw,
  fixedElement,
  type MakeElement,
  type PartEffect,
  type Plan,
  type PlanValue,
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
/** What an input without a resistor still leads to ground by itself. Common practice, no source. */
const INPUT_LEAK_OHMS = 20e6;
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
  const offset = powered && ownOffset(module);
  for (const pin of module.inside) {
    const at = inside(pin.name);
    const key = `${module.name}.${pin.name}`;
    const { reference, pull, ground, driver } = pin;
    if (driver && powered && !hurt('driver-dead', pin.name))
      plan.makers.push(plainResistor(at, GROUND, plan.value(`${key}.driver`, driver)));
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
      addPull(plan, { module: module.name, key, at, pull, offset, powered, inside });
    if (ground && !hurt('ground-open', pin.name)) {
      const ohms = plan.value(`${key}.ground`, ground);
      plan.makers.push(groundPath(plan, at, ohms, powered && offsetAt(key, pin.groundVolts)));
    }
  }
}

/** How far a ground stands above battery negative; nothing where that is not known. */
type Offset = readonly [key: string, volts: Toleranced] | false | undefined;

function offsetAt(key: string, volts: Toleranced | undefined): Offset {
  return volts && [`${key}.ground-volts`, volts];
}

/** Of the ground that resistors in a module lead to: its own, else that of its first ground with one. */
function ownOffset({ name, inside, groundVolts }: ModulePart): Offset {
  const pin = inside.find((one) => one.groundVolts);
  return offsetAt(name, groundVolts) ?? (pin && offsetAt(`${name}.${pin.name}`, pin.groundVolts));
}

/** From a ground to battery negative: its resistance, and what other consumers drop on the same way, if that is known. */
export function groundPath(plan: Plan, at: number, ohms: PlanValue, offset: Offset): MakeElement {
  if (!offset) return plainResistor(at, GROUND, ohms);
  const volts = plan.value(...offset);
  return (draw) => ({
    kind: 'emf',
    plus: at,
    minus: GROUND,
    volts: draw.value(volts),
    ohms: draw.value(ohms),
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
  const { volts } = reference;
  const choice = feedChoice(reference);
  const feed = choice && plan.value(`${key}.feed`, choice);
  const series = plan.value(`${key}.series`, reference.series);
  const limit = plan.value(`${key}.limit`, reference.limit);
  const ways = choice ? [volts, 'battery' as const] : [volts];
  ways.forEach((way, index) => {
    const from = way === 'battery' ? plan.node('battery.positive') : GROUND;
    const given = way === 'battery' ? null : plan.value(`${key}.volts`, way);
    plan.makers.push((draw) => {
      const drawn = feed === null || draw.value(feed) === index;
      const full = given === null ? 0 : draw.value(given);
      const whole = given === null ? WORN_SWITCH_VOLTS : full;
      const left = low ? full - whole * (1 - draw.size(low)) : full;
      return {
        kind: 'regulator',
        from,
        out: at,
        volts: drawn ? left : UNDRAWN_VOLTS,
        ohms: draw.value(series),
        limitAmps: draw.value(limit),
      };
    });
  });
}

/** The resistor behind a pin, to each end that it may have. */
function addPull(
  plan: Plan,
  {
    module,
    key,
    at,
    pull: { to, ohms, ohmsAs, alike },
    offset,
    powered,
    inside,
  }: {
    readonly module: string;
    readonly key: string;
    readonly at: number;
    readonly pull: NonNullable<ModulePin['pull']>;
    /** Of the ground that it leads to. */
    readonly offset: Offset;
    readonly powered: boolean;
    readonly inside: (pin: string) => number;
  },
): void {
  const ends = pullEnds(to);
  const chooses = alike === undefined ? key : `${module}.${alike}`;
  const choice = to.kind === 'one-of' ? plan.value(`${chooses}.pull-to`, pullChoice(to)) : null;
  const pull = plan.value(ohmsAs === undefined ? `${key}.pull` : `${module}.${ohmsAs}.pull`, ohms);
  const twin = ohmsAs === undefined ? null : plan.value(`${key}.twin`, TWIN_RESISTOR);
  const whole = (draw: Draw) => draw.value(pull) * (twin === null ? 1 : draw.value(twin));
  ends.forEach((end, index) => {
    const resistance = (draw: Draw) => {
      if (choice !== null && draw.value(choice) !== index) return UNDRAWN_OHMS;
      return end.kind === 'nothing' ? INPUT_LEAK_OHMS : whole(draw);
    };
    const behind =
      end.kind === 'volts'
        ? ([end.as === undefined ? `${key}.bias` : `${module}.${end.as}.bias`, end.volts] as const)
        : (end.kind === 'ground' || end.kind === 'nothing') && offset;
    if (behind) {
      const volts = plan.value(...behind);
      plan.makers.push((draw) => ({
        kind: 'emf',
        plus: at,
        minus: GROUND,
        volts: powered ? draw.value(volts) : 0,
        ohms: resistance(draw),
      }));
      return;
    }
    const rail = railOf(end, plan, powered, inside);
    plan.makers.push(
      choice === null && twin === null && end.kind !== 'nothing'
        ? plainResistor(at, rail, pull)
        : (draw) => ({ kind: 'resistor', a: at, b: rail, ohms: resistance(draw) }),
    );
  });
}

function railOf(
  end: PullEnd,
  plan: Plan,
  powered: boolean,
  inside: (pin: string) => number,
): number {
  if (end.kind === 'pin') return inside(end.pin);
  return end.kind === 'battery' && powered ? plan.node('battery.positive') : GROUND;
}
