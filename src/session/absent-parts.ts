/**
 * Neighbours that the circuit file describes and this car does not have, as far as it was told: once it is said what
 * shares the feed, those that are not named are no place for a lead, and their plugs are none to take off.
 */
import { type Circuit, partName } from '../circuit/circuit.ts';
import { leads } from '../circuit/refuse-test.ts';
import type { Test } from '../circuit/test.ts';
import { isOnlyOf } from '../circuit/with-neighbours.ts';
import type { Job } from '../procedure/job.ts';
import { isFeedTold } from './told.ts';

/** Their names; none before it is told what shares the feed. */
export function absentParts(circuit: Circuit, { shares }: Pick<Job, 'shares'>): readonly string[] {
  if (!isFeedTold(shares)) return [];
  return circuit.parts.flatMap((part) =>
    part.kind === 'neighbour' && part.told !== true ? [part.name] : [],
  );
}

/** Whether a test needs one of these parts: a lead, a clip or an eye on it, or its plug off. */
export function needsAny(
  { setup, probe }: Test,
  parts: readonly string[],
  circuit: Circuit,
): boolean {
  if (parts.length === 0) return false;
  const ends = [...leads(probe), ...setup.bridges.flatMap(({ from, to }) => [from, to])];
  return (
    setup.unplugged.some((name) => parts.includes(name)) ||
    (probe.kind === 'inspect' && isLookAt(probe.of, parts, circuit)) ||
    ends.some((end) => isOnlyOf(end, parts, circuit))
  );
}

/** Whether a thing that can be looked at is of one of these parts: it, its plug, or a wire to it. */
export function isLookAt(of: string, parts: readonly string[], circuit: Circuit): boolean {
  return seenAt(of, circuit).some((name) => parts.includes(name));
}

/** What is looked at: a plug is of its part, a wire of the parts at its ends. */
function seenAt(of: string, { wires }: Circuit): readonly string[] {
  const [kind = '', name = ''] = of.split('.');
  if (kind !== 'wire') return [kind, name];
  const wire = wires.find((one) => one.name === name);
  return wire ? [partName(wire.from), partName(wire.to)] : [];
}
