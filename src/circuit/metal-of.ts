/** What is joined by metal where it is known which relays are closed. */
import type { Circuit, Part } from './circuit.ts';
import type { Setup, TerminalId } from './test.ts';

/** Two places with nothing but metal, or some other part, between them. */
export type MetalLink = readonly [TerminalId, TerminalId];

/** All terminals on the same metal as `terminal`, itself included, with these relays closed and no others. */
export function metalOf(
  circuit: Circuit,
  setup: Setup,
  terminal: TerminalId,
  closed: readonly Part[] = [],
): Set<TerminalId> {
  return reachedFrom(terminal, metalLinks(circuit, setup, closed));
}

/** All terminals that links lead to, itself included; what is among `ends` leads no further. */
export function reachedFrom(
  terminal: TerminalId,
  links: readonly MetalLink[],
  ends: ReadonlySet<TerminalId> = new Set(),
): Set<TerminalId> {
  const beside = new Map<TerminalId, TerminalId[]>();
  const link = (from: TerminalId, to: TerminalId): void => {
    const known = beside.get(from);
    if (known) known.push(to);
    else beside.set(from, [to]);
  };
  for (const [a, b] of links) {
    link(a, b);
    link(b, a);
  }
  const found = new Set<TerminalId>([terminal]);
  for (const here of found)
    if (!ends.has(here)) for (const next of beside.get(here) ?? []) found.add(next);
  return found;
}

/** What metal joins in this setup, with these relays closed and no others. */
export function metalLinks(circuit: Circuit, setup: Setup, closed: readonly Part[]): MetalLink[] {
  const links: MetalLink[] = circuit.wires.map((wire) => [wire.from, wire.to]);
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
  return links;
}
