/** What an output of a module gives in one car. */
import { valuesOf } from './car-quantities.ts';
import { type Circuit, moduleOf } from './circuit.ts';
import { feedChoice } from './open-values.ts';
import type { Draw } from './plan.ts';

/** What an output of the module gives; null where it follows the battery. */
export function referenceVolts(
  circuit: Circuit,
  name: string,
): (value: Draw['value']) => number | null {
  const module = moduleOf(circuit);
  const pin = module.inside.find((one) => one.name === name);
  if (!pin?.reference) return pin?.joinedTo ? referenceVolts(circuit, pin.joinedTo) : () => null;
  if (pin.reference.volts === 'battery') return () => null;
  const key = `${module.name}.${name}`;
  const drawn = valuesOf(circuit);
  const volts = drawn(`${key}.volts`, pin.reference.volts);
  const choice = feedChoice(pin.reference);
  if (choice === null) return (value) => value(volts);
  const feed = drawn(`${key}.feed`, choice);
  return (value) => (value(feed) === 1 ? null : value(volts));
}
