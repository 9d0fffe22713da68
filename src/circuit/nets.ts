/** What is joined to what by metal: wires, closed contacts, fuses and relays, clipped leads. */
import { type Circuit, type ModuleInput, moduleOf } from './circuit.ts';
import { metalOf } from './metal-of.ts';
import { isRelayClosed } from './relay-coil.ts';
import type { Setup, TerminalId } from './test.ts';

/** All terminals on the same metal as `terminal` in this setup, itself included. A healthy circuit is meant. */
export function joinedTo(circuit: Circuit, setup: Setup, terminal: TerminalId): Set<TerminalId> {
  const closed = circuit.parts.filter(
    (part) => part.kind === 'relay' && isRelayClosed(circuit, setup, part),
  );
  return metalOf(circuit, setup, terminal, closed);
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
