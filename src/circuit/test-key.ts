/** The same test is the same test, in whatever order its keys were read: a session's file sorts them. */
import type { Probe, Setup, Test } from './test.ts';

/** A text that is equal for equal tests and for no others. */
export function testKey({ setup, probe, wiggle }: Test): string {
  const { state, target } = setup;
  const unplugged = [...new Set(setup.unplugged)].sort();
  const moved = wiggle ? ['wiggle'] : [];
  return JSON.stringify([
    state,
    unplugged,
    arrangementKey(setup),
    target,
    probe.kind,
    ...placesOf(probe),
    ...moved,
  ]);
}

/** The same for what is clipped on and which sensor is plugged in; empty for no clips and the vehicle's own sensor. */
export function arrangementKey({ bridges, sensor }: Setup): string {
  if (bridges.length === 0 && sensor === 'fitted') return '';
  const clips = bridges.map(({ from, to, through }) => [
    from,
    to,
    typeof through === 'object' ? through.ohms : through,
  ]);
  return JSON.stringify([clips, sensor]);
}

function placesOf(probe: Probe): string[] {
  if (probe.kind === 'inspect') return [probe.of];
  return probe.kind === 'counts' ? [probe.input] : [probe.plus, probe.minus];
}
