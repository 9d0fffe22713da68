/** Whether a hand, a lead or a clip must come to the connector of a part. */
import { type Circuit, partName, sensorOf } from './circuit.ts';
import { leads } from './refuse-test.ts';
import type { Probe, Setup } from './test.ts';

/** How things stand, and what looks where; null where nothing is read. */
export interface SetupAndProbe {
  readonly setup: Setup;
  readonly probe: Probe | null;
}

/**
 * Whether it must: for a lead or the end of a bridge at one of its terminals, to take it off, to plug another sensor in, or
 * to look at it. Live data are read at the tester's own plug.
 */
export function touchesConnector(
  circuit: Circuit,
  { setup, probe }: SetupAndProbe,
  part: string,
): boolean {
  if (setup.unplugged.includes(part)) return true;
  if (setup.sensor === 'spare' && part === sensorOf(circuit).name) return true;
  if (probe?.kind === 'inspect' && probe.of === `connector.${part}`) return true;
  const laid = probe === null || probe.kind === 'counts' ? [] : leads(probe);
  const clipped = setup.bridges.flatMap(({ from, to }) => [from, to]);
  return [...laid, ...clipped].some((terminal) => partName(terminal) === part);
}

/** The parts whose connectors it needs, in the circuit's order. */
export function touchedConnectors(circuit: Circuit, arranged: SetupAndProbe): string[] {
  return circuit.connectors.flatMap(({ part }) =>
    touchesConnector(circuit, arranged, part) ? [part] : [],
  );
}
