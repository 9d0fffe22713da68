/** Measures as plain data for programs: SI units, no typed arrays, edges only counted. */
import type { Finding } from './judge-channel.ts';
import type { CaptureMeasures } from './measure-phase.ts';

/** JSON-ready; `findings` by channel number. */
export function measuresJson(
  measures: CaptureMeasures,
  findings: readonly (readonly Finding[])[],
): Record<string, unknown> {
  return {
    rateHz: measures.rateHz,
    seconds: measures.seconds,
    channels: measures.channels.map((channel, at) => {
      const { edges, wheel, ...rest } = channel;
      return {
        ...rest,
        edges: edges.times.length,
        wheel: wheel && { ...wheel, starts: Array.from(wheel.starts) },
        findings: findings[at] ?? [],
      };
    }),
    phases: measures.phases,
  };
}
