/** A measured capture as text for the terminal. */
import { safeText } from '../../source/safe-text.ts';
import { alignView, type TimeView } from '../../waveform/align-view.ts';
import type { Capture } from '../../waveform/capture.ts';
import type { Difference } from '../../waveform/compare-captures.ts';
import { describeCapture, markedLevels } from '../../waveform/describe-measures.ts';
import type { Finding } from '../../waveform/finding.ts';
import { findingWords } from '../../waveform/finding-words.ts';
import type { CaptureMeasures } from '../../waveform/measure-phase.ts';
import { spanLeastOf } from '../../waveform/plot-range.ts';
import { plotText } from '../../waveform/plot-text.ts';

/** What a report shows beside the capture and its measures. */
export interface CaptureReport {
  readonly findings: readonly (readonly Finding[])[];
  readonly differences: readonly Difference[] | null;
  readonly good: { readonly capture: Capture; readonly measures: CaptureMeasures } | null;
  readonly width: number;
  readonly ascii: boolean;
  readonly view: TimeView;
}

/** Drawings, measures, judgement and differences as lines for the terminal. */
export function captureLines(
  capture: Capture,
  measures: CaptureMeasures,
  given: CaptureReport,
): string[] {
  const { width, ascii, view, good } = given;
  const lines: string[] = [];
  const draw = (of: Capture, by: CaptureMeasures, at: number, part: TimeView, name: string) => {
    const measured = by.channels[at];
    const channel = of.channels[at];
    if (!measured || !channel) return;
    const drawn = plotText(
      { ...channel, name: name + channel.name },
      {
        width,
        ascii,
        rateHz: of.rateHz,
        startSeconds: of.startSeconds,
        ...part,
        levels: markedLevels(measured),
        spanLeast: spanLeastOf(measured.unit, measured.kind),
        marks: edgesWithin(measured.edges.times, part) <= width / 2 ? measured.edges.times : [],
      },
    );
    lines.push(...drawn, '');
  };
  const goodView = good && alignView(view, measures, good.measures);
  for (const at of capture.channels.keys()) {
    draw(capture, measures, at, view, '');
    if (good && goodView) draw(good.capture, good.measures, at, goodView, 'good capture, ');
  }
  if (view.from > 0 || view.to < measures.seconds)
    lines.push('Only part of it is drawn; --from and --to show the rest.', '');
  lines.push(...describeCapture(measures, { ascii }));
  const words = given.findings.flatMap((findings, at) =>
    findings.map((finding) => findingWords(finding, capture.channels[at]?.name ?? '')),
  );
  lines.push(
    '',
    'Judgement',
    ...(words.length > 0 ? words : ['nothing wrong with these signals']).map((it) => `  ${it}`),
  );
  if (given.differences) {
    const differ = given.differences.map((it) => it.words);
    lines.push(
      '',
      'Against the good capture',
      ...(differ.length > 0 ? differ : ['no difference worth mentioning']).map((it) => `  ${it}`),
    );
  }
  return lines.map((line) => safeText(line));
}

function edgesWithin(times: Float64Array, { from, to }: TimeView): number {
  return times.reduce((count, time) => count + (time >= from && time < to ? 1 : 0), 0);
}
