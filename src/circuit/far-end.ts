/** Where a wire of the sensor ends at the module, seen through the joints on its way: splices, fuses, relays. */
import { type Circuit, moduleOf, partName, type Wire } from './circuit.ts';
import type { TerminalId } from './test.ts';

/**
 * The module's terminal that a signal wire leads to from `end`, its end away from the sensor: one with an input, else any.
 * `end` itself for other wires, whose joints are places to measure at, and where nothing of the module is found.
 */
export function farEnd(circuit: Circuit, wire: Wire, end: TerminalId): TerminalId {
  const module = moduleOf(circuit);
  if (wire.role !== 'signal' || partName(end) === module.name) return end;
  const seen = new Set<TerminalId>([end]);
  const found: TerminalId[] = [];
  for (const at of seen) {
    if (partName(at) === module.name) {
      found.push(at);
      continue;
    }
    for (const next of [...alongWires(circuit, wire, at), ...throughPart(circuit, at)])
      seen.add(next);
  }
  const hasInput = (id: TerminalId) =>
    module.inside.some(({ name, input }) => input !== null && `${module.name}.${name}` === id);
  return found.find(hasInput) ?? found[0] ?? end;
}

function alongWires({ wires }: Circuit, from: Wire, at: TerminalId): TerminalId[] {
  return wires.flatMap((one) => {
    if (one === from || one.role !== 'signal') return [];
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
