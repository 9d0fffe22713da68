/**
 * From circuit, fault and setup to a netlist.
 *
 * The plan holds nodes and, for each element, how to make it from one draw of the toleranced values. A plan is
 * made once for a fault and a setup; its elements are then made anew for each sample.
 */
import type { Toleranced } from '../quantity/quantity.ts';
import {
  type Circuit,
  type FaultEffect,
  isSensor,
  type ModulePart,
  type Part,
  type SensorPart,
  type Span,
} from './circuit.ts';
import { type Element, GROUND } from './netlist.ts';
import type { Setup, TerminalId } from './test.ts';

/** One sample: values within their tolerances, and what the sensor does at this instant. */
export interface Draw {
  /** The value of a toleranced quantity, by its key. */
  readonly value: (key: string, of: Toleranced) => number;
  /** The size of the fault. */
  readonly size: (of: Span) => number;
  /** The switched output is on. */
  readonly on: boolean;
  /** The coil's voltage as a share of its peak: -1, 0 or 1. */
  readonly swing: number;
  /** Travel of the wiper, 0 at rest and 1 fully moved. */
  readonly travel: number;
  /** The wiper stands on the worn spot, if there is one. */
  readonly onSpot: boolean;
}

export type MakeElement = (draw: Draw) => Element;

export interface Plan {
  readonly nodes: string[];
  readonly makers: MakeElement[];
  /** Number of the node of a terminal, splice or other name; made when it is new. */
  readonly node: (name: string) => number;
}

/** A good crimped contact. From memory of connector makers' data: some milliohm new, 20 after ageing. */
export const CONTACT: Toleranced = { nominal: 0.01, low: 0.005, high: 0.015, unit: 'ohm' };
/** Lengths in a harness are estimates, and strands differ. Common practice, no source. */
const WIRE_SPREAD = 0.15;
/** A module's output has its own divider and discharge resistor; it keeps a dead output at 0 V. Common practice, no source. */
export const BLEED_OHMS = 100_000;
/** Two pins of a module on the same copper. */
const JOINT_OHMS = 0.002;
/** A plain lead with two clips. */
const LEAD_OHMS = 0.05;

/** The netlist of the circuit with one fault (or null) in one setup, without any instrument. */
export function planNetlist(
  circuit: Circuit,
  setup: Setup,
  effect: FaultEffect | null,
  blown: readonly string[] = [],
): Plan {
  const plan = emptyPlan();
  addBattery(plan, circuit, setup);
  for (const wire of circuit.wires) addWire(plan, circuit, wire.name, effect);
  for (const part of circuit.parts) {
    const plugged = !setup.unplugged.includes(part.name);
    for (const pin of part.pins) addContact(plan, `${part.name}.${pin}`, plugged, effect);
    const spare = isSensor(part) && setup.sensor === 'spare';
    const own =
      effect?.kind === 'part' &&
      effect.part === part.name &&
      !(spare && effect.mode !== 'leads-swapped')
        ? effect
        : null;
    if (part.kind === 'module') {
      if (plugged) addModule(plan, part, setup.state !== 'key-off', own);
    } else if (isSensor(part)) addSensor(plan, part, setup, own, spare);
    else if (!blown.includes(part.name)) addPlainPart(plan, part, setup, own);
  }
  return plan;
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
      const element = instrument(through, a, b);
      plan.makers.push(() => element);
      if (through === 'test-light') {
        const backwards = instrument(through, b, a);
        plan.makers.push(() => backwards);
      }
    } else {
      const ohms = through === 'lead' ? LEAD_OHMS : Math.max(LEAD_OHMS, through.ohms);
      plan.makers.push(() => ({ kind: 'resistor', a, b, ohms }));
    }
  }
}

function emptyPlan(): Plan {
  const nodes = ['battery.negative'];
  const known = new Map<string, number>([['battery.negative', GROUND]]);
  const node = (name: string): number => {
    const found = known.get(name);
    if (found !== undefined) return found;
    known.set(name, nodes.length);
    nodes.push(name);
    return nodes.length - 1;
  };
  return { nodes, makers: [], node };
}

function addBattery(plan: Plan, circuit: Circuit, setup: Setup): void {
  const { battery } = circuit;
  const plus = plan.node('battery.positive');
  const state = setup.state === 'running' || setup.state === 'cranking' ? setup.state : 'rest';
  plan.makers.push((draw) => ({
    kind: 'emf',
    plus,
    minus: GROUND,
    volts: draw.value(`battery.${state}`, battery[state]),
    ohms: draw.value('battery.ohms', battery.ohms),
  }));
}

function addWire(plan: Plan, circuit: Circuit, name: string, effect: FaultEffect | null): void {
  const wire = circuit.wires.find((one) => one.name === name)!;
  const a = plan.node(wire.from);
  const b = plan.node(wire.to);
  const key = `wire.${name}`;
  const copper = {
    nominal: wire.ohms,
    low: (1 - WIRE_SPREAD) * wire.ohms,
    high: (1 + WIRE_SPREAD) * wire.ohms,
    unit: 'ohm' as const,
  };
  if (effect?.kind === 'wire-open' && effect.wire === name) return;
  if (effect?.kind === 'wire-resistive' && effect.wire === name) {
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a,
      b,
      ohms: draw.value(key, copper) + draw.size(effect.ohms),
    }));
    return;
  }
  const shorted =
    effect?.kind === 'wire-short' &&
    (effect.wire === name || (typeof effect.to === 'object' && effect.to.wire === name));
  if (!shorted) {
    plan.makers.push((draw) => ({ kind: 'resistor', a, b, ohms: draw.value(key, copper) }));
    return;
  }
  const middle = plan.node(`wire.${name}.middle`);
  plan.makers.push((draw) => ({
    kind: 'resistor',
    a,
    b: middle,
    ohms: draw.value(key, copper) / 2,
  }));
  plan.makers.push((draw) => ({
    kind: 'resistor',
    a: middle,
    b,
    ohms: draw.value(key, copper) / 2,
  }));
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
  terminal: TerminalId,
  plugged: boolean,
  effect: FaultEffect | null,
): void {
  const a = plan.node(terminal);
  const b = plan.node(`${terminal}.pin`);
  if (!plugged || (effect?.kind === 'contact-open' && effect.terminal === terminal)) return;
  const worse =
    effect?.kind === 'contact-resistive' && effect.terminal === terminal ? effect.ohms : null;
  const key = `contact.${terminal}`;
  plan.makers.push((draw) => ({
    kind: 'resistor',
    a,
    b,
    ohms: draw.value(key, CONTACT) + (worse ? draw.size(worse) : 0),
  }));
}

type PartEffect = Extract<FaultEffect, { kind: 'part' }>;

function addModule(plan: Plan, module: ModulePart, powered: boolean, own: PartEffect | null): void {
  const inside = (pin: string): number => plan.node(`${module.name}.${pin}.pin`);
  const hurt = (mode: PartEffect['mode'], pin: string) => own?.mode === mode && own.at === pin;
  for (const pin of module.inside) {
    const at = inside(pin.name);
    const key = `${module.name}.${pin.name}`;
    const { reference, pull, ground } = pin;
    if (pin.joinedTo !== null) {
      const twin = inside(pin.joinedTo);
      plan.makers.push(() => ({ kind: 'resistor', a: at, b: twin, ohms: JOINT_OHMS }));
    }
    if (reference) {
      plan.makers.push(() => ({ kind: 'resistor', a: at, b: GROUND, ohms: BLEED_OHMS }));
      if (powered && !hurt('reference-dead', pin.name)) {
        const share = hurt('reference-low', pin.name) ? own!.size : null;
        const { volts, series, limit } = reference;
        const from = volts === 'battery' ? plan.node('battery.positive') : GROUND;
        // A battery-fed output that is low has lost its voltage across a worn switch, about half of it.
        plan.makers.push((draw) => {
          const full = volts === 'battery' ? 0 : draw.value(`${key}.volts`, volts);
          const missing = volts === 'battery' ? -12 : -full;
          return {
            kind: 'regulator',
            from,
            out: at,
            volts: share ? full + missing * (1 - draw.size(share)) : full,
            ohms: draw.value(`${key}.series`, series),
            limitAmps: draw.value(`${key}.limit`, limit),
          };
        });
      }
    }
    if (pull && !hurt('pull-missing', pin.name)) {
      const { to, ohms } = pull;
      const resistance = (draw: Draw) => draw.value(`${key}.pull`, ohms);
      if (to.kind === 'volts')
        plan.makers.push((draw) => ({
          kind: 'emf',
          plus: at,
          minus: GROUND,
          volts: powered ? draw.value(`${key}.bias`, to.volts) : 0,
          ohms: resistance(draw),
        }));
      else {
        const rail =
          to.kind === 'pin'
            ? inside(to.pin)
            : to.kind === 'battery' && powered
              ? plan.node('battery.positive')
              : GROUND;
        plan.makers.push((draw) => ({ kind: 'resistor', a: at, b: rail, ohms: resistance(draw) }));
      }
    }
    if (ground && !hurt('ground-open', pin.name))
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: at,
        b: GROUND,
        ohms: draw.value(`${key}.ground`, ground),
      }));
  }
}

function addPlainPart(
  plan: Plan,
  part: Exclude<Part, ModulePart | SensorPart>,
  setup: Setup,
  own: PartEffect | null,
): void {
  const pin = (name: string): number => plan.node(`${part.name}.${name}.pin`);
  const key = `${part.name}.ohms`;
  if (own?.mode === 'blown' || own?.mode === 'contact-open') return;
  if (part.kind === 'relay' && setup.state === 'key-off') return;
  const [a, b] =
    part.kind === 'ground-point'
      ? [pin('eyelet'), GROUND]
      : [pin(part.pins[0]!), pin(part.pins[1]!)];
  plan.makers.push((draw) => {
    const healthy = draw.value(key, part.ohms);
    if (own?.mode === 'shorted' && part.kind === 'neighbour')
      return { kind: 'resistor', a, b, ohms: draw.value(`${part.name}.shorted`, part.shorted) };
    const extra = own?.mode === 'contact-resistive' ? draw.size(own.size) : 0;
    return { kind: 'resistor', a, b, ohms: healthy + extra };
  });
}

function addSensor(
  plan: Plan,
  sensor: SensorPart,
  setup: Setup,
  own: PartEffect | null,
  spare: boolean,
): void {
  const pin = (name: string): number => plan.node(`${sensor.name}.${name}.pin`);
  // A known-good spare is an average one.
  const read = (draw: Draw, name: string, of: Toleranced) =>
    spare ? of.nominal : draw.value(`${sensor.name}.${name}`, of);
  const mode = own?.mode;
  if (sensor.kind === 'hall-switch') {
    const feed = pin('feed');
    const out = pin('signal');
    const ground = pin('ground');
    if (mode === 'shorted')
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: feed,
        b: ground,
        ohms: draw.size(own!.size),
      }));
    if (mode === 'dead' || mode === 'shorted') {
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: out,
        b: ground,
        ohms: read(draw, 'off', sensor.off),
      }));
      return;
    }
    plan.makers.push((draw) => {
      const minVolts = read(draw, 'minimum', sensor.minimum);
      const amps = read(draw, 'draws', sensor.draws);
      return { kind: 'sink', a: feed, b: ground, amps, minVolts, reverseOhms: minVolts / amps };
    });
    plan.makers.push((draw) => {
      const off = 1 / read(draw, 'off', sensor.off);
      const onOhms = mode === 'weak-pull-down' ? draw.size(own!.size) : read(draw, 'on', sensor.on);
      const on = mode === 'stuck-low' || (draw.on && mode !== 'stuck-high');
      return {
        kind: 'gated-output',
        out,
        ground,
        feed,
        onSiemens: on ? 1 / onOhms : off,
        offSiemens: off,
        minVolts: read(draw, 'minimum', sensor.minimum),
        limitAmps: read(draw, 'limit', sensor.limit),
      };
    });
    return;
  }
  if (sensor.kind === 'current-switch') {
    if (mode === 'dead') return;
    const a = pin('feed');
    const b = pin('signal');
    if (mode === 'shorted') {
      plan.makers.push((draw) => ({ kind: 'resistor', a, b, ohms: draw.size(own!.size) }));
      return;
    }
    plan.makers.push((draw) => {
      const high = mode === 'stuck-high' || (draw.on && mode !== 'stuck-low');
      return {
        kind: 'sink',
        a,
        b,
        amps: read(draw, high ? 'high' : 'low', high ? sensor.high : sensor.low),
        minVolts: read(draw, 'minimum', sensor.minimum),
        reverseOhms: read(draw, 'reverse', sensor.reverse),
      };
    });
    return;
  }
  if (sensor.kind === 'reluctor') {
    if (mode === 'coil-open') return;
    const swapped = mode === 'leads-swapped';
    const plus = pin(swapped ? 'minus' : 'plus');
    const minus = pin(swapped ? 'plus' : 'minus');
    const speed =
      setup.target === 'still'
        ? null
        : setup.state === 'cranking' || setup.state === 'running'
          ? setup.state
          : 'byHand';
    plan.makers.push((draw) => {
      const turns = mode === 'shorted-turns' ? draw.size(own!.size) : 1;
      const ohms =
        read(draw, 'ohms', sensor.ohms) * turns +
        (mode === 'coil-resistive' ? draw.size(own!.size) : 0);
      const peak = speed === null ? 0 : read(draw, speed, sensor[speed]) * turns;
      return { kind: 'emf', plus, minus, volts: draw.swing * peak, ohms };
    });
    return;
  }
  for (const track of sensor.tracks) {
    const hurt = own !== null && own.at === track.name ? own : null;
    const feed = pin(track.feed);
    const ground = pin(track.ground);
    const signal = pin(track.signal);
    const wiper = plan.node(`${sensor.name}.${track.name}.wiper`);
    const position = (draw: Draw) => {
      const closed = read(draw, `${track.name}.closed`, track.closed);
      return closed + draw.travel * (read(draw, `${track.name}.open`, track.open) - closed);
    };
    const ohms = (draw: Draw) => read(draw, `${track.name}.ohms`, track.ohms);
    // A break in the track leaves the part of it that the wiper stands on; the other end keeps only surface leakage.
    const broken = hurt?.mode === 'track-open' ? hurt.size : null;
    const leak = 1e9;
    plan.makers.push((draw) => {
      const cut = broken !== null && position(draw) < draw.size(broken);
      return {
        kind: 'resistor',
        a: feed,
        b: wiper,
        ohms: cut ? leak : Math.max(1, ohms(draw) * (1 - position(draw))),
      };
    });
    plan.makers.push((draw) => {
      const cut = broken !== null && position(draw) >= draw.size(broken);
      return {
        kind: 'resistor',
        a: wiper,
        b: ground,
        ohms: cut ? leak : Math.max(1, ohms(draw) * position(draw)),
      };
    });
    if (hurt?.mode === 'wiper-open') continue;
    const worn = hurt?.mode === 'worn-spot';
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a: wiper,
      b: signal,
      ohms: worn && draw.onSpot ? leak : read(draw, `${track.name}.wiper`, track.wiper),
    }));
  }
}
