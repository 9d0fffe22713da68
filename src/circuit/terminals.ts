/** The places of a circuit where a lead can go: connectors, and what they and their pins are called. */
import type { Connector, JointPart, Part, Terminal, Wire } from './circuit.ts';
import { spaced } from './part-faults.ts';

/** A connector for each part, with the pins that a wire ends at. */
export function connectorsOf(parts: readonly Part[], wires: readonly Wire[]): Connector[] {
  return parts.map((part) => ({
    part: part.name,
    words: connectorWords(part),
    pins: part.pins.filter((pin) =>
      wires.some((wire) => [wire.from, wire.to].includes(`${part.name}.${pin}`)),
    ),
    unplugs: part.kind !== 'ground-point' && !(part.kind === 'joint' && part.splice),
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
      const of = parts.find((one) => one.name === part)!;
      if (of.kind === 'joint') return jointTerminals(of, pin);
      const words = `${spaced(pin)} at the ${of.words}`;
      return [
        { id: `${part}.${pin}`, part, pin, side: 'harness', words },
        {
          id: `${part}.${pin}.pin`,
          part,
          pin,
          side: 'part',
          words: `${words}, on the part's own pin`,
        },
      ];
    }),
  );
  return [...posts, ...others];
}

/** Both sides of a joint are harness, and can be reached while it is closed. */
function jointTerminals({ name, words }: JointPart, pin: string): Terminal[] {
  const at = `${spaced(pin)} at the ${words}`;
  const one = { part: name, pin, side: 'harness' as const };
  return [
    { ...one, id: `${name}.${pin}`, words: `${at}, the sensor's side` },
    { ...one, id: `${name}.${pin}.pin`, words: `${at}, the far side` },
  ];
}

function connectorWords(part: Part): string {
  if (part.kind === 'fuse' || part.kind === 'relay') return `the socket of the ${part.words}`;
  if (part.kind === 'ground-point' || part.kind === 'joint') return `the ${part.words}`;
  return `the connector of the ${part.words}`;
}
