/** The part of a capture in which its pulses can be made out: all of it, or as much around the first gap as fits. */
import type { TimeView } from './align-view.ts';
import type { CaptureMeasures } from './measure-phase.ts';

/** A view of at most `edgesMost` edges of the densest channel. */
export function tellingView(
  measures: Pick<CaptureMeasures, 'channels' | 'seconds'>,
  edgesMost: number,
): TimeView {
  const densest = measures.channels.reduce((a, b) =>
    b.edges.times.length > a.edges.times.length ? b : a,
  );
  const { times } = densest.edges;
  if (times.length <= edgesMost) return { from: 0, to: measures.seconds };
  const gap = densest.wheel?.starts[0] ?? times[edgesMost >> 1]!;
  const after = times.findIndex((time) => time >= gap);
  const first = Math.max(0, Math.min(times.length - 1 - edgesMost, after - (edgesMost >> 1)));
  return { from: times[first]!, to: times[first + edgesMost]! };
}
