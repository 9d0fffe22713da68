/** The same test is the same test, in whatever order its keys were read: a session's file sorts them. */
import type { Probe, Test } from './test.ts';

/** A text that is equal for equal tests and for no others. */
export function testKey({ setup, probe }: Test): string {
  const { state, unplugged, bridges, sensor, target } = setup;
  const clips = bridges.map(({ from, to, through }) => [
    from,
    to,
    typeof through === 'object' ? through.ohms : through,
  ]);
  return JSON.stringify([state, unplugged, clips, sensor, target, probe.kind, ...placesOf(probe)]);
}

function placesOf(probe: Probe): string[] {
  if (probe.kind === 'inspect') return [probe.of];
  return probe.kind === 'counts' ? [probe.input] : [probe.plus, probe.minus];
}
