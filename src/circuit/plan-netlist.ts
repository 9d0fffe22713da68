/**
 * From circuit, fault and setup to a netlist.
 *
 * The plan holds nodes and, for each element, how to make it from one draw of the toleranced values. A plan is
 * made once for a fault and a setup; its elements are then made anew for each sample.
 */
import type { Toleranced } from '../quantity/quantity.ts';
import { valuesOf } from './car-quantities.ts';
import {
  type Circuit,
  type FaultEffect,
  isSensor,
  type ModulePart,
  type Part,
  type SensorPart,
  type Wire,
} from './circuit.ts';
import type { Warmth } from './copper-warmth.ts';
import { type Element, GROUND } from './netlist.ts';
import { BRIDGE_RESISTOR } from './open-values.ts';
import { type Draw, fixedElement, type PartEffect, type Plan, plainResistor } from './plan.ts';
import { addModule, groundPath } from './plan-module.ts';
import { isRelayClosed } from './relay-coil.ts';
import type { Adding } from './sensor-kind.ts';
import { sensorKindOf } from './sensors.ts';
import { type SoundContact, type SoundMakers, soundMaker, soundMakersOf } from './sound-makers.ts';
import type { Setup, TerminalId } from './test.ts';

/** A plain lead with two clips. */
const LEAD_OHMS = 0.05;
/**
 * The netlist of the circuit with these faults in one setup, without any instrument. Of two faults in the same wire,
 * contact or part only the first is seen; pairs of that kind are not made. `open` are the fuses that have blown and the
 * relays that a fault keeps from closing.
 */
export function planNetlist(
  circuit: Circuit,
  setup: Setup,
  effects: readonly FaultEffect[],
  open: readonly string[] = [],
): Plan {
  const plan = emptyPlan(circuit);
  addBattery(plan, circuit, setup);
  const sound = soundMakersOf(circuit);
  const { warmth } = sound;
  for (const wire of circuit.wires)
    addWire(
      plan,
      withSwappedEnds(wire, effects),
      sound,
      effects.find((one) => isOfWire(one, wire.name)),
    );
  for (const part of circuit.parts) {
    const plugged = !setup.unplugged.includes(part.name);
    for (const contact of sound.contacts.get(part)!) {
      const { terminal } = contact;
      const worse = effects.find((one) => 'terminal' in one && one.terminal === terminal);
      addContact(plan, contact, plugged, worse);
    }
    const spare = isSensor(part) && setup.sensor === 'spare';
    const hurt = effects.find((one) => one.kind === 'part' && one.part === part.name);
    const own = hurt?.kind === 'part' && !(spare && hurt.mode !== 'leads-swapped') ? hurt : null;
    if (part.kind === 'module') {
      if (plugged) addModule(plan, part, setup.state !== 'key-off', own);
    } else if (isSensor(part)) {
      const isLifted = losesGround(circuit, part, effects);
      addSensor({ plan, setup, warmth, isLifted }, part, own, spare);
    } else addPlainPart({ plan, circuit, setup }, part, own, open.includes(part.name));
  }
  return plan;
}

/**
 * Adds the sensor as elements at its own pins, whole or with its own failure, fitted or a good spare. `own` is its failure,
 * of which a spare has none. What it gives hangs on kind, wheel and speed more than on the piece, so that a spare gives
 * what the sensor of this car gave before it failed. Common practice, no source.
 */
function addSensor(
  {
    plan,
    setup,
    warmth,
    isLifted,
  }: Pick<Adding<SensorPart>, 'plan' | 'setup' | 'isLifted'> & { readonly warmth: Warmth },
  sensor: SensorPart,
  own: PartEffect | null,
  spare: boolean,
): void {
  sensorKindOf(sensor).add({
    ...{ sensor, plan, setup, own, isLifted },
    pin: (name: string): number => plan.node(`${sensor.name}.${name}.pin`),
    reader: (name: string, of: Toleranced) => {
      const value = plan.value(`${sensor.name}.${name}`, of);
      return (draw: Pick<Draw, 'value'>): number => draw.value(value);
    },
    warmth: spare ? () => 1 : warmth,
  });
}

/** Whether a fault opens the way from the sensor to its ground, or puts another wire in its place. */
function losesGround(
  { wires }: Circuit,
  { name }: SensorPart,
  effects: readonly FaultEffect[],
): boolean {
  const isGround = (at: (wire: Wire) => boolean) =>
    wires.some((wire) => wire.role === 'ground' && at(wire));
  return effects.some((effect) => {
    if (effect.kind === 'wires-swapped') return effect.terminals.includes(`${name}.ground`);
    if (effect.kind === 'wire-open') return isGround((wire) => wire.name === effect.wire);
    if (effect.kind !== 'contact-open') return false;
    return isGround(({ from, to }) => from === effect.terminal || to === effect.terminal);
  });
}

/** Where the wire ends once two of them have changed places in a plug. */
function withSwappedEnds(wire: Wire, effects: readonly FaultEffect[]): Wire {
  const swap = effects.find((one) => one.kind === 'wires-swapped');
  if (swap?.kind !== 'wires-swapped') return wire;
  const [a, b] = swap.terminals;
  const placed = (end: TerminalId): TerminalId => (end === a ? b : end === b ? a : end);
  if (placed(wire.from) === wire.from && placed(wire.to) === wire.to) return wire;
  return { ...wire, from: placed(wire.from), to: placed(wire.to) };
}

function isOfWire(effect: FaultEffect, name: string): boolean {
  if (!('wire' in effect)) return false;
  if (effect.wire === name) return true;
  return effect.kind === 'wire-short' && typeof effect.to === 'object' && effect.to.wire === name;
}

/** Clips the bridges of a setup into a plan. The light and the lamp come from `instruments.ts`. */
export function addBridges(
  plan: Plan,
  setup: Setup,
  instrument: (through: 'test-light' | 'lamp', a: number, b: number) => Element,
): void {
  for (const { from, to, through } of setup.bridges) {
    const a = plan.node(from);
    const b = plan.node(to);
    if (a === b) continue;
    if (through === 'test-light' || through === 'lamp') {
      // A light glows whichever way it is clipped: its red end goes to the higher side.
      plan.makers.push(fixedElement(instrument(through, a, b)));
      if (through === 'test-light') plan.makers.push(fixedElement(instrument(through, b, a)));
    } else {
      if (through === 'lead')
        plan.makers.push(fixedElement({ kind: 'resistor', a, b, ohms: LEAD_OHMS }));
      else {
        const times = Math.max(LEAD_OHMS, through.ohms);
        plan.makers.push(
          plainResistor(a, b, plan.value('bridge.resistor', BRIDGE_RESISTOR), { times }),
        );
      }
    }
  }
}

function emptyPlan(circuit: Circuit): Plan {
  const nodes = ['battery.negative'];
  const known = new Map<string, number>([['battery.negative', GROUND]]);
  const node = (name: string): number => {
    const found = known.get(name);
    if (found !== undefined) return found;
    known.set(name, nodes.length);
    nodes.push(name);
    return nodes.length - 1;
  };
  const find = (name: string) => known.get(name);
  return { nodes, makers: [], node, find, value: valuesOf(circuit) };
}

function addBattery(plan: Plan, circuit: Circuit, setup: Setup): void {
  const { battery } = circuit;
  const plus = plan.node('battery.positive');
  const state = setup.state === 'running' || setup.state === 'cranking' ? setup.state : 'rest';
  const volts = plan.value(`battery.${state}`, battery[state]);
  const ohms = plan.value('battery.ohms', battery.ohms);
  plan.makers.push((draw) => ({
    kind: 'emf',
    plus,
    minus: GROUND,
    volts: draw.value(volts),
    ohms: draw.value(ohms),
  }));
}

/** `effect` is of this wire, or of another that is shorted to it. */
function addWire(
  plan: Plan,
  wire: Wire,
  { warmth, wires }: SoundMakers,
  effect: FaultEffect | undefined,
): void {
  const { name } = wire;
  const a = plan.node(wire.from);
  const b = plan.node(wire.to);
  if (effect?.kind === 'wire-open') return;
  const sound = wires.get(name)!;
  const copper = sound.value;
  if (effect?.kind !== 'wire-short') {
    plan.makers.push(
      effect?.kind === 'wire-resistive'
        ? plainResistor(a, b, copper, { more: effect.ohms, warmth })
        : soundMaker(sound, a, b, warmth),
    );
    return;
  }
  const middle = plan.node(`wire.${name}.middle`);
  plan.makers.push(
    plainResistor(a, middle, copper, { times: 0.5, warmth }),
    plainResistor(middle, b, copper, { times: 0.5, warmth }),
  );
  if (effect.wire !== name) return;
  const other = plan.node(
    typeof effect.to === 'object' ? `wire.${effect.to.wire}.middle` : effect.to,
  );
  plan.makers.push((draw) => ({
    kind: 'resistor',
    a: middle,
    b: other,
    ohms: draw.size(effect.ohms),
  }));
}

function addContact(
  plan: Plan,
  contact: SoundContact,
  plugged: boolean,
  effect: FaultEffect | undefined,
): void {
  const a = plan.node(contact.terminal);
  const b = plan.node(contact.pin);
  if (!plugged || effect?.kind === 'contact-open') return;
  plan.makers.push(
    effect?.kind === 'contact-resistive'
      ? plainResistor(a, b, contact.value, { more: effect.ohms })
      : soundMaker(contact, a, b, null),
  );
}

function addPlainPart(
  {
    plan,
    circuit,
    setup,
  }: { readonly plan: Plan; readonly circuit: Circuit; readonly setup: Setup },
  part: Exclude<Part, ModulePart | SensorPart>,
  own: PartEffect | null,
  isOpen: boolean,
): void {
  // Its contacts are all there is of it.
  if (part.kind === 'joint') return;
  const pin = (name: string): number => plan.node(`${part.name}.${name}.pin`);
  const ohms = plan.value(`${part.name}.ohms`, part.ohms);
  if (part.kind === 'relay') {
    const { coil } = part;
    if (coil && own?.mode !== 'coil-open')
      plan.makers.push(
        plainResistor(pin('86'), pin('85'), plan.value(`${part.name}.coil`, coil.ohms)),
      );
    if (!isRelayClosed(circuit, setup, part)) return;
  }
  if (isOpen || own?.mode === 'blown' || own?.mode === 'contact-open') return;
  if (part.kind === 'ground-point') {
    const volts = setup.state !== 'key-off' && part.volts;
    plan.makers.push(groundPath(plan, pin('eyelet'), ohms, volts && [`${part.name}.volts`, volts]));
    return;
  }
  const [a, b] = [pin(part.pins[0]!), pin(part.pins[1]!)];
  if (own?.mode === 'shorted' && part.kind === 'neighbour') {
    plan.makers.push(plainResistor(a, b, plan.value(`${part.name}.shorted`, part.shorted)));
    return;
  }
  const more = own?.mode === 'contact-resistive' ? own.size : null;
  plan.makers.push(plainResistor(a, b, ohms, { more }));
}
