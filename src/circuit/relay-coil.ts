/** When a relay's contact is closed: with the key, or, where its coil is described, while current flows there. */
import { type Circuit, effectsOf, type Fault, moduleOf, type RelayPart } from './circuit.ts';
import { metalOf } from './metal-of.ts';
import type { Setup, TerminalId } from './test.ts';

/** What was found of each circuit in each setup: every circuit that is compiled asks. */
const found = new WeakMap<Circuit, WeakMap<Setup, Map<RelayPart, boolean>>>();

const drivers = new WeakMap<Circuit, readonly TerminalId[]>();

/** Of a healthy circuit. */
export function isRelayClosed(circuit: Circuit, setup: Setup, relay: RelayPart): boolean {
  if (!relay.coil) return setup.state !== 'key-off';
  const setups = found.get(circuit) ?? new WeakMap<Setup, Map<RelayPart, boolean>>();
  found.set(circuit, setups);
  const relays = setups.get(setup) ?? new Map<RelayPart, boolean>();
  setups.set(setup, relays);
  const known = relays.get(relay);
  if (known !== undefined) return known;
  const made = carriesCurrent(circuit, setup, relay);
  relays.set(relay, made);
  return made;
}

function carriesCurrent(circuit: Circuit, setup: Setup, relay: RelayPart): boolean {
  const plus = metalOf(circuit, setup, `${relay.name}.86.pin`);
  const minus = metalOf(circuit, setup, `${relay.name}.85.pin`);
  const isSwitched = driverTerminals(circuit).some((terminal) => minus.has(`${terminal}.pin`));
  const isDriven =
    isSwitched && setup.state !== 'key-off' && !setup.unplugged.includes(moduleOf(circuit).name);
  return plus.has('battery.positive') && (minus.has('battery.negative') || isDriven);
}

/** Whether a fault sits where a relay's coil gets its current, so that the coil has to be asked. */
export function reachesCoil(circuit: Circuit, fault: Fault | null, relay: RelayPart): boolean {
  if (!relay.coil) return false;
  const places = [`${relay.name}.85`, `${relay.name}.86`, ...driverTerminals(circuit)];
  return effectsOf(fault).some((effect) => {
    if ('terminal' in effect) return places.includes(effect.terminal);
    if (effect.kind === 'part') return effect.mode === 'driver-dead' || effect.mode === 'coil-open';
    if (!('wire' in effect)) return false;
    const other =
      effect.kind === 'wire-short' && typeof effect.to === 'object' ? effect.to.wire : '';
    return circuit.wires.some(
      ({ name, from, to }) =>
        [effect.wire, other].includes(name) && (places.includes(from) || places.includes(to)),
    );
  });
}

/** The module's switches to ground; every fault asks for each relay. */
function driverTerminals(circuit: Circuit): readonly TerminalId[] {
  const known = drivers.get(circuit);
  if (known) return known;
  const { name, inside } = moduleOf(circuit);
  const made = inside.flatMap((pin) => (pin.driver ? [`${name}.${pin.name}`] : []));
  drivers.set(circuit, made);
  return made;
}
