/** The small picture of a capture as lines of characters: the channel that was judged first. */
import type { StepCapture } from '../../session/events.ts';
import { captureOfEnvelopes } from '../../waveform/envelope.ts';
import { plotText } from '../../waveform/plot-text.ts';

const ROWS = 6;
/** What the picture of a flat line covers at least: a noise of millivolts is to look like one. */
const FLAT_SPAN = { V: 2, A: 0.02, '1': 0.1 } as const;

/** Lines of `width` columns, channels parted by an empty one. */
export function capturePlot(
  { channels, channel = 1, measures }: StepCapture,
  width: number,
  ascii: boolean,
): string[] {
  const first = channels.slice(channel - 1, channel);
  const others = channels.filter((_, at) => at !== channel - 1);
  const { rateHz, startSeconds, channels: drawn } = captureOfEnvelopes([...first, ...others]);
  const isFlat = measures.kind === 'steady';
  return drawn.flatMap((one, at) => [
    ...(at === 0 ? [] : ['']),
    ...plotText(one, {
      width,
      rows: ROWS,
      ascii,
      rateHz,
      startSeconds,
      ...(isFlat && at === 0 ? { spanLeast: FLAT_SPAN[one.unit] } : {}),
    }),
  ]);
}
