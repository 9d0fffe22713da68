/** The small picture of a capture as lines of characters: the channel that was judged first. */
import type { StepCapture } from '../../session/events.ts';
import { spansLeastOf } from '../../session/measure-capture.ts';
import { captureOfEnvelopes } from '../../waveform/envelope.ts';
import { plotText } from '../../waveform/plot-text.ts';

const ROWS = 6;

/** What is needed to draw a capture: envelopes of its channels, the judged one, its measures. */
export type PlottedCapture = Pick<StepCapture, 'channels' | 'channel' | 'measures'>;

/** Lines of `width` columns, channels parted by an empty one. */
export function capturePlot(capture: PlottedCapture, width: number, ascii: boolean): string[] {
  const { rateHz, startSeconds, channels } = captureOfEnvelopes(capture.channels);
  const spans = spansLeastOf(capture);
  const judged = (capture.channel ?? 1) - 1;
  const order = [...channels.keys()].sort((a, b) => Number(b === judged) - Number(a === judged));
  return order.flatMap((at, place) => [
    ...(place === 0 ? [] : ['']),
    ...plotText(channels[at]!, {
      width,
      rows: ROWS,
      ascii,
      rateHz,
      startSeconds,
      spanLeast: spans[at]!,
    }),
  ]);
}
