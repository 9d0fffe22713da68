/**
 * Two wires of the sensor exchanged at its plug, which is how a repaired plug comes back: rare, and dear to search for.
 * A coil with its two wires exchanged is in `part-faults.ts`, since its polarity is all that changes.
 */
import { type Circuit, type Fault, isSensor } from './circuit.ts';
import { spaced, theWords } from './part-faults.ts';

/** Share of the connectors' weight that all exchanges of a sensor have together. Common practice, no source. */
const SWAPPED = 0.3;

/** Every two wires of a sensor's connector; none of a coil. */
export function swappedWires(circuit: Omit<Circuit, 'faults'>): Fault[] {
  const sensor = circuit.parts.find(isSensor)!;
  if (sensor.kind === 'reluctor') return [];
  const { name } = sensor;
  const the = theWords(sensor);
  const { pins } = circuit.connectors.find(({ part }) => part === name)!;
  const pairs = pins.flatMap((first, at) =>
    pins.slice(at + 1).map((second): readonly [string, string] => [first, second]),
  );
  const isOnly = pairs.length === 1;
  return pairs.map(([first, second]) => ({
    id: isOnly ? `${name}.leads-swapped` : `${name}.${first}.swapped-with-${second}`,
    words: isOnly
      ? `the two wires of ${the} are swapped`
      : `the ${spaced(first)} and ${spaced(second)} wires are swapped at the connector of ${the}`,
    repair: 'leads.swap',
    repairWords: isOnly
      ? `Swap the two wires of ${the} back.`
      : `Put the swapped wires at the connector of ${the} back into their own places.`,
    weight: SWAPPED / pairs.length,
    subject: [name, `connector.${name}`],
    class: 'connector',
    visibleChance: 0.6,
    effect: { kind: 'wires-swapped', terminals: [`${name}.${first}`, `${name}.${second}`] },
  }));
}
