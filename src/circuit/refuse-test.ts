/**
 * Why a test must not, or cannot, be done. Filament lamps on a module, a plain lead from a module's pin to a battery post:
 * common practice, no source. What an instrument refuses by itself stands in its own file; what a bridge does to the
 * voltages is computed (`overload.ts`).
 */
import { nearestName } from '../source/nearest-name.ts';
import { type Circuit, moduleOf, sensorOf } from './circuit.ts';
import { instrumentOf } from './instruments.ts';
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
  const { joinsAs, refusal } = instrumentOf(probe);
  const own = refusal(circuit, setup, probe);
  if (own !== null) return own;
  if (joinsAs === null || plus === undefined || minus === undefined)
    return overloadOf(circuit, setup);
  const joint: Bridge = { from: plus, to: minus, through: joinsAs };
  return (
    badBridge(circuit, setup, joint) ??
    overloadOf(circuit, { ...setup, bridges: [...setup.bridges, joint] })
  );
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
