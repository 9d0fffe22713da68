/** Where a wire of the sensor ends at the module, seen through the joints on its way: splices, fuses, relays. */
import { type Circuit, moduleOf, partName, type Wire } from './circuit.ts';
import { otherEnd, wayFrom } from './joints.ts';
import type { TerminalId } from './test.ts';

/**
 * The module's terminal that a signal wire leads to from `end`, its end away from the sensor: one with an input, else any.
 * For other wires, and where nothing of the module is found, where it ends once it has passed the connectors and splices
 * of this car's harness: what a circuit file joins them at is a place to measure at.
 */
export function farEnd(circuit: Circuit, wire: Wire, end: TerminalId): TerminalId {
  const module = moduleOf(circuit);
  const { sections, end: last } = wayFrom(circuit, wire, otherEnd(wire, end));
  if (wire.role !== 'signal' || partName(last) === module.name) return last;
  const seen = new Set<TerminalId>([last]);
  const found: TerminalId[] = [];
  for (const at of seen) {
    if (partName(at) === module.name) {
      found.push(at);
      continue;
    }
    for (const next of [...alongWires(circuit, sections, at), ...throughPart(circuit, at)])
      seen.add(next);
  }
  const hasInput = (id: TerminalId) =>
    module.inside.some(({ name, input }) => input !== null && `${module.name}.${name}` === id);
  return found.find(hasInput) ?? found[0] ?? last;
}

function alongWires({ wires }: Circuit, from: readonly Wire[], at: TerminalId): TerminalId[] {
  return wires.flatMap((one) => {
    if (from.includes(one) || one.role !== 'signal') return [];
    return one.from === at ? [one.to] : one.to === at ? [one.from] : [];
  });
}

/** The other side of what only joins two wires. */
function throughPart({ parts }: Circuit, at: TerminalId): TerminalId[] {
  const part = parts.find((one) => one.name === partName(at));
  if (part?.kind !== 'fuse' && part?.kind !== 'relay') return [];
  const [first, second] = part.pins.map((pin) => `${part.name}.${pin}`);
  return at === first ? [second!] : at === second ? [first!] : [];
}
