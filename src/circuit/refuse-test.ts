/**
 * Why a test must not, or cannot, be done. Ohms on a live circuit or across electronics, filament lamps on a module, a
 * plain lead from a module's pin to a battery post: common practice, no source. What a bridge does to the voltages is
 * computed (`overload.ts`).
 */
import { nearestName } from '../source/nearest-name.ts';
import { type Circuit, moduleOf, type Part, sensorOf } from './circuit.ts';
import { joinedTo } from './nets.ts';
import { overloadOf } from './overload.ts';
import type { Bridge, Probe, Setup, TerminalId, Test } from './test.ts';
import type { TestRefusal } from './test-refusal.ts';

/** A smaller resistor at a module's pin is nearly a plain lead: 100 ohm draws 0.13 A from 12.6 V. */
const LEAST_OHMS_AT_MODULE = 100;

/** The first reason found, or null when the test can be done. */
export function refuseTest(circuit: Circuit, test: Test): TestRefusal | null {
  const { setup, probe } = test;
  for (const name of setup.unplugged) {
    const known = circuit.connectors.filter((one) => one.unplugs).map((one) => one.part);
    if (!known.includes(name))
      return { code: 'no-connector', name, near: nearestName(name, known) };
  }
  for (const terminal of [
    ...leads(probe),
    ...setup.bridges.flatMap(({ from, to }) => [from, to]),
  ]) {
    const reason = unreachable(circuit, setup, terminal);
    if (reason !== null) return reason;
  }
  const [plus, minus] = leads(probe);
  if (plus !== undefined && plus === minus) return { code: 'same-terminal', terminal: plus };
  if (setup.sensor === 'spare' && setup.unplugged.includes(sensorOf(circuit).name))
    return { code: 'spare-unplugged' };
  if (
    (setup.state === 'cranking' || setup.state === 'running') &&
    setup.target === 'still' &&
    circuit.target &&
    circuit.target.turns > 0
  )
    return { code: 'wheel-turns', at: circuit.target.at, state: setup.state };
  for (const bridge of setup.bridges) {
    const reason = badBridge(circuit, setup, bridge);
    if (reason !== null) return reason;
  }
  return badProbe(circuit, setup, probe) ?? overloadOf(circuit, withInstrument(setup, probe));
}

/** A light or a lamp between the leads joins them as a bridge does. */
function withInstrument(setup: Setup, probe: Probe): Setup {
  if (probe.kind !== 'light' && probe.kind !== 'lamp') return setup;
  return { ...setup, bridges: [...setup.bridges, asBridge(probe)] };
}

function asBridge({ kind, plus, minus }: Extract<Probe, { kind: 'light' | 'lamp' }>): Bridge {
  return { from: plus, to: minus, through: kind === 'light' ? 'test-light' : 'lamp' };
}

/** Terminals of the leads of a probe, red first. */
export function leads(probe: Probe): TerminalId[] {
  if (probe.kind === 'inspect') return [];
  return probe.kind === 'counts' ? [probe.input] : [probe.plus, probe.minus];
}

function unreachable(circuit: Circuit, setup: Setup, id: TerminalId): TestRefusal | null {
  const terminal = circuit.terminals.find((one) => one.id === id);
  if (!terminal) {
    const known = circuit.terminals.map((one) => one.id);
    return { code: 'no-terminal', terminal: id, near: nearestName(id, known) };
  }
  if (terminal.side !== 'part') return null;
  if (!setup.unplugged.includes(terminal.part))
    return { code: 'inside-connector', terminal: id, part: terminal.part };
  if (circuit.parts.some((part) => part.name === terminal.part && part.kind === 'module'))
    return { code: 'module-pin', terminal: id };
  return null;
}

function badBridge(circuit: Circuit, setup: Setup, bridge: Bridge): TestRefusal | null {
  if (bridge.from === bridge.to) return { code: 'bridge-same-terminal', terminal: bridge.from };
  const others = { ...setup, bridges: setup.bridges.filter((one) => one !== bridge) };
  const ends = [
    joinedTo(circuit, others, bridge.from),
    joinedTo(circuit, others, bridge.to),
  ] as const;
  const { through } = bridge;
  for (const [near, far] of [ends, [ends[1], ends[0]] as const]) {
    const pin = modulePin(circuit, near);
    if (pin === null) continue;
    const { terminal } = pin;
    if (through === 'lamp') return { code: 'lamp-on-module', terminal };
    if (typeof through === 'object' && through.ohms < LEAST_OHMS_AT_MODULE)
      return {
        code: 'few-ohms-on-module',
        terminal,
        ohms: through.ohms,
        leastOhms: LEAST_OHMS_AT_MODULE,
      };
    if (far.has('battery.positive') && typeof through !== 'object') {
      if (!pin.ground) return { code: 'battery-on-module', terminal, is: pin.is };
      return through === 'lead' ? { code: 'short-circuit' } : null;
    }
    if (far.has('battery.negative') && through === 'lead' && !pin.ground)
      return { code: 'module-to-ground', terminal };
    const other = modulePin(circuit, far);
    if (
      through === 'lead' &&
      other !== null &&
      other.terminal !== terminal &&
      !(pin.ground && other.ground)
    )
      return { code: 'pins-joined', terminals: [terminal, other.terminal] };
  }
  if (ends[0].has('battery.positive') && ends[1].has('battery.negative') && through === 'lead')
    return { code: 'short-circuit' };
  return null;
}

/** The plugged module's pin on this metal, and what it is to the module. Grounds yield to others. */
function modulePin(
  circuit: Circuit,
  net: ReadonlySet<TerminalId>,
): { terminal: TerminalId; is: 'reference' | 'input' | 'pin'; ground: boolean } | null {
  const module = moduleOf(circuit);
  const pins = module.inside.filter((pin) => net.has(`${module.name}.${pin.name}.pin`));
  const pin = pins.find((one) => !one.ground) ?? pins[0];
  if (!pin) return null;
  const grounded = net.has('battery.negative');
  const is = pin.reference ? 'reference' : pin.input ? 'input' : 'pin';
  return { terminal: `${module.name}.${pin.name}`, is, ground: grounded || pin.ground !== null };
}

function badProbe(circuit: Circuit, setup: Setup, probe: Probe): TestRefusal | null {
  switch (probe.kind) {
    case 'volts':
      return null;
    case 'ohms':
      return badOhms(circuit, setup, [probe.plus, probe.minus]);
    case 'light':
    case 'lamp':
      return badBridge(circuit, setup, asBridge(probe));
    case 'pattern':
    case 'timing':
      if (probe.kind === 'timing' && circuit.target === null) return { code: 'nothing-turns' };
      return setup.target === 'still' ? { code: 'target-still' } : null;
    case 'counts': {
      const module = moduleOf(circuit);
      const input = module.inside.find((pin) => `${module.name}.${pin.name}` === probe.input);
      if (!input?.input) return { code: 'no-input', terminal: probe.input };
      if (setup.unplugged.includes(module.name)) return { code: 'module-unplugged' };
      return setup.state === 'key-off' ? { code: 'module-off' } : null;
    }
    case 'inspect':
      return badInspection(circuit, probe.of);
  }
}

function badOhms(
  circuit: Circuit,
  setup: Setup,
  terminals: readonly TerminalId[],
): TestRefusal | null {
  if (setup.state !== 'key-off') return { code: 'ohms-with-key', state: setup.state };
  for (const terminal of terminals) {
    const net = joinedTo(circuit, setup, terminal);
    if (net.has('battery.positive')) return { code: 'ohms-on-battery', terminal };
    const grounded = net.has('battery.negative');
    for (const part of circuit.parts) {
      if (!hasElectronics(part)) continue;
      const pin = part.pins.find((one) => net.has(`${part.name}.${one}.pin`));
      if (pin === undefined) continue;
      if (setup.unplugged.includes(part.name))
        return { code: 'ohms-across-electronics', terminal, part: part.name };
      // A ground point or a battery post is not made live by what else is grounded there.
      if (grounded && part.kind !== 'module') continue;
      if (grounded && terminal.startsWith('battery.')) continue;
      return { code: 'ohms-on-electronics', terminal, part: part.name };
    }
  }
  return null;
}

/**
 * Ohms are for copper and carbon: coils, tracks, wires, contacts and fuses. Of a part with electronics in it they say
 * nothing, and the ohmmeter's own voltage can damage it. A neighbour is described by its ohms alone and counts as a load.
 */
function hasElectronics({ kind }: Part): boolean {
  switch (kind) {
    case 'module':
    case 'hall-switch':
    case 'current-switch':
      return true;
    case 'reluctor':
    case 'potentiometer':
    case 'fuse':
    case 'relay':
    case 'ground-point':
    case 'neighbour':
    case 'joint':
      return false;
  }
}

function badInspection(circuit: Circuit, of: string): TestRefusal | null {
  const known = inspectable(circuit);
  if (known.includes(of)) return null;
  return { code: 'nothing-to-inspect', of, near: nearestName(of, known) };
}

/** Names of all things that eyes and fingers can be sent to. */
export function inspectable(circuit: Circuit): string[] {
  return [
    ...circuit.parts.map((part) => part.name),
    ...circuit.connectors.map((connector) => `connector.${connector.part}`),
    ...circuit.connectors.flatMap((connector) =>
      connector.pins.map((pin) => `contact.${connector.part}.${pin}`),
    ),
    ...new Set(circuit.wires.flatMap(({ name, of = name }) => [`wire.${of}`, `wire.${name}`])),
    'harness',
    ...(circuit.target ? ['target', 'target.seat', 'target.ring'] : []),
    ...(circuit.target?.ring ? ['target.turning'] : []),
  ];
}
