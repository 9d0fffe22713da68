/** Measures as plain data for programs: SI units, no typed arrays, edges only counted. */
import type { Finding } from './finding.ts';
import { findingWords } from './finding-words.ts';
import type { CaptureMeasures } from './measure-phase.ts';

/** JSON-ready, with channels by their names; `findings` by channel number. */
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
        findings: (findings[at] ?? []).map((finding) => ({
          ...placed(finding),
          words: findingWords(finding, channel.name),
        })),
      };
    }),
    phases: measures.phases.map((phase) => ({
      ...phase,
      reference: measures.channels[phase.reference]!.name,
      channel: measures.channels[phase.channel]!.name,
    })),
  };
}

/** Every finding has its places in time, and lost contact is a drop-out, as programs have always read it. */
function placed(finding: Finding): Record<string, unknown> {
  if (finding.kind !== 'contact-lost') return { seconds: [], ...finding };
  return { ...finding, kind: 'drop-out', seconds: finding.places.map(({ at }) => at) };
}
