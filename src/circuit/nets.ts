/** What is joined to what by metal: wires, closed contacts, fuses and relays, clipped leads. */
import { type Circuit, type ModuleInput, moduleOf, type Part } from './circuit.ts';
import { isRelayClosed } from './relay-coil.ts';
import type { Setup, TerminalId } from './test.ts';

/** All terminals on the same metal as `terminal` in this setup, itself included. A healthy circuit is meant. */
export function joinedTo(circuit: Circuit, setup: Setup, terminal: TerminalId): Set<TerminalId> {
  const closed = circuit.parts.filter(
    (part) => part.kind === 'relay' && isRelayClosed(circuit, setup, part),
  );
  return metalOf(circuit, setup, terminal, closed);
}

/** The same with these relays closed and no others. */
export function metalOf(
  circuit: Circuit,
  setup: Setup,
  terminal: TerminalId,
  closed: readonly Part[] = [],
): Set<TerminalId> {
  const links: (readonly [string, string])[] = circuit.wires.map(
    (wire) => [wire.from, wire.to] as const,
  );
  for (const part of circuit.parts) {
    if (!setup.unplugged.includes(part.name))
      for (const pin of part.pins) links.push([`${part.name}.${pin}`, `${part.name}.${pin}.pin`]);
    if (part.kind === 'fuse' || closed.includes(part))
      links.push([`${part.name}.${part.pins[0]}.pin`, `${part.name}.${part.pins[1]}.pin`]);
    if (part.kind === 'ground-point') links.push([`${part.name}.eyelet.pin`, 'battery.negative']);
    if (part.kind === 'module')
      for (const pin of part.inside) {
        if (pin.joinedTo !== null)
          links.push([`${part.name}.${pin.name}.pin`, `${part.name}.${pin.joinedTo}.pin`]);
        if (pin.ground && !setup.unplugged.includes(part.name))
          links.push([`${part.name}.${pin.name}.pin`, 'battery.negative']);
      }
  }
  for (const bridge of setup.bridges)
    if (bridge.through === 'lead') links.push([bridge.from, bridge.to]);
  const found = new Set<TerminalId>([terminal]);
  const open = [terminal];
  while (open.length > 0) {
    const here = open.pop()!;
    for (const [a, b] of links) {
      const next = a === here ? b : b === here ? a : null;
      if (next !== null && !found.has(next)) {
        found.add(next);
        open.push(next);
      }
    }
  }
  return found;
}

/** The module's input on the same metal as `terminal`, and where it is; null where none is. */
export function inputOn(
  circuit: Circuit,
  setup: Setup,
  terminal: TerminalId,
): { readonly terminal: TerminalId; readonly input: ModuleInput } | null {
  const net = joinedTo(circuit, setup, terminal);
  const module = moduleOf(circuit);
  for (const { name, input } of module.inside)
    if (input !== null && net.has(`${module.name}.${name}.pin`))
      return { terminal: `${module.name}.${name}`, input };
  return null;
}
