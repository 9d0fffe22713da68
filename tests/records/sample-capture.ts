/** A saved capture as a session keeps it; its curve is invented. */
import type { CaptureMeasured, StepCapture } from '../../src/session/events.ts';
import type { Envelope } from '../../src/waveform/envelope.ts';

/** A capture whose judged signal is of this kind, with these channels. */
export function captureWith(
  kind: CaptureMeasured['kind'],
  channels: readonly Pick<Envelope, 'unit' | 'points'>[],
): StepCapture {
  return {
    name: 'signal.csv',
    sha256: 'e'.repeat(64),
    from: 'file',
    measures: {
      kind,
      unit: 'V',
      samples: 100,
      seconds: 1,
      low: 0,
      high: 5,
      hertz: null,
      duty: null,
      rpm: null,
    },
    findings: [],
    channels: channels.map((channel) => ({ name: 'signal', from: 0, seconds: 1, ...channel })),
  };
}
