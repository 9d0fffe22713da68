/**
 * Why a test must not, or cannot, be done. Ohms on a live circuit, filament lamps on a module, battery voltage on a
 * reference or an input, a plain lead from a module's pin to a battery post: common practice, no source.
 */
import { nearestName } from '../source/nearest-name.ts';
import { type Circuit, moduleOf, sensorOf } from './circuit.ts';
import { joinedTo } from './nets.ts';
import type { Bridge, Probe, Setup, TerminalId, Test } from './test.ts';

/** A resistor of at least this may join a module's input and battery positive. */
const SAFE_INJECTION_OHMS = 1000;
/** A smaller resistor at a module's pin is nearly a plain lead: 100 ohm draws 0.13 A from 12.6 V. */
const LEAST_OHMS_AT_MODULE = 100;

/** The reason in one sentence without a full stop, or null when the test can be done. */
export function refuseTest(circuit: Circuit, test: Test): string | null {
  const { setup, probe } = test;
  for (const name of setup.unplugged) {
    const known = circuit.connectors.filter((one) => one.unplugs).map((one) => one.part);
    if (!known.includes(name))
      return `there is no connector "${name}" to unplug${didYouMean(name, known)}`;
  }
  for (const terminal of [
    ...leads(probe),
    ...setup.bridges.flatMap(({ from, to }) => [from, to]),
  ]) {
    const reason = unreachable(circuit, setup, terminal);
    if (reason !== null) return reason;
  }
  if (probe.kind !== 'inspect' && probe.kind !== 'counts' && leads(probe)[0] === leads(probe)[1])
    return 'both leads are at the same terminal';
  if (setup.sensor === 'spare' && setup.unplugged.includes(sensorOf(circuit).name))
    return 'a spare sensor that is not plugged in shows nothing';
  if (
    (setup.state === 'cranking' || setup.state === 'running') &&
    setup.target === 'still' &&
    circuit.target &&
    circuit.target.turns > 0
  )
    return `the wheel at the ${circuit.target.at} cannot stand still with the engine ${setup.state}`;
  for (const bridge of setup.bridges) {
    const reason = badBridge(circuit, setup, bridge);
    if (reason !== null) return reason;
  }
  return badProbe(circuit, setup, probe);
}

/** Terminals of the leads of a probe, red first. */
export function leads(probe: Probe): TerminalId[] {
  if (probe.kind === 'inspect') return [];
  return probe.kind === 'counts' ? [probe.input] : [probe.plus, probe.minus];
}

function didYouMean(typed: string, known: readonly string[]): string {
  const near = nearestName(typed, known);
  return near === null ? '' : `; did you mean "${near}"?`;
}

function unreachable(circuit: Circuit, setup: Setup, id: TerminalId): string | null {
  const terminal = circuit.terminals.find((one) => one.id === id);
  if (!terminal)
    return `there is no terminal "${id}"${didYouMean(
      id,
      circuit.terminals.map((one) => one.id),
    )}`;
  if (terminal.side !== 'part') return null;
  if (!setup.unplugged.includes(terminal.part))
    return `"${id}" is inside the connector and is only reached with "${terminal.part}" unplugged`;
  if (circuit.parts.some((part) => part.name === terminal.part && part.kind === 'module'))
    return `"${id}" is a pin of a module without supply; nothing is to be measured there`;
  return null;
}

function badBridge(circuit: Circuit, setup: Setup, bridge: Bridge): string | null {
  if (bridge.from === bridge.to) return `both ends of the bridge are at "${bridge.from}"`;
  const others = { ...setup, bridges: setup.bridges.filter((one) => one !== bridge) };
  const ends = [
    joinedTo(circuit, others, bridge.from),
    joinedTo(circuit, others, bridge.to),
  ] as const;
  const { through } = bridge;
  const soft = typeof through === 'object' && through.ohms >= SAFE_INJECTION_OHMS;
  for (const [near, far] of [ends, [ends[1], ends[0]] as const]) {
    const pin = modulePin(circuit, near);
    if (pin === null) continue;
    if (through === 'lamp')
      return `a filament lamp draws too much for "${pin.terminal}" of the module; take the LED light`;
    if (typeof through === 'object' && through.ohms < LEAST_OHMS_AT_MODULE)
      return `${through.ohms} ohm may draw too much for "${pin.terminal}" of the module; take ${LEAST_OHMS_AT_MODULE} ohm or more`;
    if (far.has('battery.positive') && !soft)
      return pin.ground
        ? through === 'lead'
          ? 'a plain lead from battery positive to a ground is a short circuit'
          : null
        : `battery voltage must not reach "${pin.terminal}", ${pin.what} of the module`;
    if (far.has('battery.negative') && through === 'lead' && !pin.ground)
      return `"${pin.terminal}" may only be pulled to ground through an LED light or a resistor`;
    const other = modulePin(circuit, far);
    if (
      through === 'lead' &&
      other !== null &&
      other.terminal !== pin.terminal &&
      !(pin.ground && other.ground)
    )
      return `a plain lead must not join "${pin.terminal}" and "${other.terminal}"`;
  }
  if (ends[0].has('battery.positive') && ends[1].has('battery.negative') && through === 'lead')
    return 'a plain lead from battery positive to ground is a short circuit';
  return null;
}

/** The plugged module's pin on this metal, and what it is to the module. Grounds yield to others. */
function modulePin(
  circuit: Circuit,
  net: ReadonlySet<TerminalId>,
): { terminal: TerminalId; what: string; ground: boolean } | null {
  const module = moduleOf(circuit);
  const pins = module.inside.filter((pin) => net.has(`${module.name}.${pin.name}.pin`));
  const pin = pins.find((one) => !one.ground) ?? pins[0];
  if (!pin) return null;
  const grounded = net.has('battery.negative');
  const what = pin.reference
    ? 'a reference'
    : pin.input
      ? 'an input'
      : pin.ground
        ? 'a ground'
        : 'a pin';
  return { terminal: `${module.name}.${pin.name}`, what, ground: grounded || pin.ground !== null };
}

function badProbe(circuit: Circuit, setup: Setup, probe: Probe): string | null {
  switch (probe.kind) {
    case 'volts':
      return null;
    case 'ohms':
      return badOhms(circuit, setup, [probe.plus, probe.minus]);
    case 'light':
    case 'lamp': {
      const through = probe.kind === 'light' ? 'test-light' : 'lamp';
      return badBridge(circuit, setup, { from: probe.plus, to: probe.minus, through });
    }
    case 'pattern':
    case 'timing':
      if (probe.kind === 'timing' && circuit.target === null)
        return 'nothing turns here, so there is no position to compare';
      return setup.target === 'still'
        ? 'nothing passes the sensor, so there is no pattern to see'
        : null;
    case 'counts': {
      const module = moduleOf(circuit);
      const input = module.inside.find((pin) => `${module.name}.${pin.name}` === probe.input);
      if (!input?.input) return `"${probe.input}" is no input of the module`;
      if (setup.unplugged.includes(module.name))
        return 'the module has no supply with its connector off';
      return setup.state === 'key-off' ? 'the module shows no data with the key off' : null;
    }
    case 'inspect':
      return badInspection(circuit, probe.of);
  }
}

function badOhms(circuit: Circuit, setup: Setup, terminals: readonly TerminalId[]): string | null {
  if (setup.state !== 'key-off') return 'resistance is only measured with the key off';
  for (const terminal of terminals) {
    const net = joinedTo(circuit, setup, terminal);
    if (net.has('battery.positive'))
      return `"${terminal}" carries battery voltage even with the key off`;
    const grounded = net.has('battery.negative');
    for (const part of circuit.parts) {
      const active =
        part.kind === 'module' || part.kind === 'hall-switch' || part.kind === 'current-switch';
      if (!active || setup.unplugged.includes(part.name)) continue;
      const pin = part.pins.find((one) => net.has(`${part.name}.${one}.pin`));
      if (pin === undefined) continue;
      // A ground point or a battery post is not made live by what else is grounded there.
      if (grounded && part.kind !== 'module') continue;
      if (grounded && terminal.startsWith('battery.')) continue;
      return `unplug "${part.name}" first: resistance is measured with nothing electronic in the circuit`;
    }
  }
  return null;
}

function badInspection(circuit: Circuit, of: string): string | null {
  const known = inspectable(circuit);
  return known.includes(of) ? null : `there is no "${of}" to look at${didYouMean(of, known)}`;
}

/** Names of all things that eyes and fingers can be sent to. */
export function inspectable(circuit: Circuit): string[] {
  return [
    ...circuit.parts.map((part) => part.name),
    ...circuit.connectors.map((connector) => `connector.${connector.part}`),
    ...circuit.connectors.flatMap((connector) =>
      connector.pins.map((pin) => `contact.${connector.part}.${pin}`),
    ),
    ...circuit.wires.map((wire) => `wire.${wire.name}`),
    'harness',
    ...(circuit.target ? ['target'] : []),
  ];
}
