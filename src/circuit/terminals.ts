/** The places of a circuit where a lead can go: connectors, and what they and their pins are called. */
import type { Connector, Part, Terminal, Wire } from './circuit.ts';
import { spaced } from './part-faults.ts';

/** A connector for each part, with the pins that a wire ends at. */
export function connectorsOf(parts: readonly Part[], wires: readonly Wire[]): Connector[] {
  return parts.map((part) => ({
    part: part.name,
    words: connectorWords(part),
    pins: part.pins.filter((pin) =>
      wires.some((wire) => [wire.from, wire.to].includes(`${part.name}.${pin}`)),
    ),
    unplugs: part.kind !== 'ground-point',
  }));
}

/** Every place for a lead: battery posts, each connector from behind, each part's own pins. */
export function terminalsOf(connectors: readonly Connector[], parts: readonly Part[]): Terminal[] {
  const posts: Terminal[] = (['positive', 'negative'] as const).map((pin) => ({
    id: `battery.${pin}`,
    part: 'battery',
    pin,
    side: 'post',
    words: `battery ${pin}`,
  }));
  const others = connectors.flatMap(({ part, pins }) =>
    pins.flatMap((pin): Terminal[] => {
      const words = `${spaced(pin)} at the ${parts.find((one) => one.name === part)!.words}`;
      return [
        { id: `${part}.${pin}`, part, pin, side: 'harness', words },
        {
          id: `${part}.${pin}.pin`,
          part,
          pin,
          side: 'part',
          words: `${words}, the part's own pin`,
        },
      ];
    }),
  );
  return [...posts, ...others];
}

function connectorWords(part: Part): string {
  if (part.kind === 'fuse' || part.kind === 'relay') return `the socket of the ${part.words}`;
  if (part.kind === 'ground-point') return `the ${part.words}`;
  return `the connector of the ${part.words}`;
}
