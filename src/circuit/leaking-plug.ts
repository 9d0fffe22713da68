/**
 * Water or green growth between two pins of a sensor's connector: current leaks from one to the other. The wires are whole, and
 * so is each contact.
 */
import { type Circuit, type Fault, isSensor, type Span } from './circuit.ts';
import { spaced, theWords } from './part-faults.ts';

/** From a film that conducts well to one that hardly does. Common practice, no source. */
const LEAK_OHMS: Span = { low: 2_000, high: 200_000 };
/** Beside an open contact of the same plug. Common practice, no source. */
const LEAKING = 0.4;

/** One for every two pins of the sensor's connector that lie beside each other, in the order of the file. */
export function leakingPlug(circuit: Omit<Circuit, 'faults'>): Fault[] {
  const sensor = circuit.parts.find(isSensor)!;
  const { name } = sensor;
  const connector = circuit.connectors.find(({ part }) => part === name)!;
  const wireAt = (pin: string) =>
    circuit.wires.find(({ from, to }) => from === `${name}.${pin}` || to === `${name}.${pin}`);
  return connector.pins.slice(1).flatMap((second, at): Fault[] => {
    const first = connector.pins[at]!;
    const [wire, other] = [wireAt(first), wireAt(second)];
    if (!wire || !other) return [];
    return [
      {
        id: `contact.${name}.${first}.leaks-to-${second}`,
        words: `the connector of ${theWords(sensor)} leaks from ${spaced(first)} to ${spaced(second)}`,
        repair: `connector.${name}`,
        repairWords: `Clean, refit or replace the terminals at ${connector.words}.`,
        weight: LEAKING,
        subject: [`contact.${name}.${first}`, `contact.${name}.${second}`, `connector.${name}`],
        class: 'connector',
        visibleChance: 0.8,
        effect: { kind: 'wire-short', wire: wire.name, to: { wire: other.name }, ohms: LEAK_OHMS },
      },
    ];
  });
}
