/** A capture in hand, measured: the one channel that is judged, against what the circuit says of the signal. */
import type { SignalKnown } from '../circuit/expected-signal.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import { safeText } from '../source/safe-text.ts';
import { type Capture, captureSeconds } from '../waveform/capture.ts';
import { envelopeOf } from '../waveform/envelope.ts';
import type { Finding } from '../waveform/finding.ts';
import { judgeChannel } from '../waveform/judge-channel.ts';
import { type ChannelMeasures, measureChannel } from '../waveform/measure-channel.ts';
import { measureCapture } from '../waveform/measure-phase.ts';
import { type PatternLook, patternLook } from '../waveform/pattern-look.ts';
import { spanLeastOf } from '../waveform/plot-range.ts';
import { tellingView } from '../waveform/telling-view.ts';
import { capturedFindingWords, capturedPhaseWords } from './capture-words.ts';
import type { CaptureAgainst, CaptureMeasured, StepCapture } from './events.ts';
import { keptFinding, keptNumber, keptPhase } from './kept-finding.ts';

/** A capture file that was read, with its name and hash. */
export interface CaptureGiven {
  /** The file's name without its folder. */
  readonly name: string;
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly sha256: string;
  readonly from: StepCapture['from'];
  readonly capture: Capture;
  /** The file of the other channels of the same crank, which are in `capture` already. */
  readonly second?: StepCapture['second'];
}

/** What a capture is held against besides the circuit. */
export type AgainstGiven =
  | { readonly kind: 'stated'; readonly typed: string }
  | { readonly kind: 'good'; readonly given: CaptureGiven };

/** A capture as the session keeps it, with what was found in its judged channel. */
export interface MeasuredCapture {
  readonly capture: StepCapture;
  /** What was found, a sentence or a line each. */
  readonly lines: readonly string[];
  readonly measures: ChannelMeasures;
  readonly findings: readonly Finding[];
  readonly known: SignalKnown | null;
}

/** Edges that a small picture shows apart. */
const EDGES_DRAWN = 40;
const NAME_SIGNS_MAX = 120;

/** Measures channel number `channel`, from 0; null when there is no such channel. `known` is what the circuit says of the signal. */
export function measureGiven(
  given: CaptureGiven,
  known: SignalKnown | null,
  channel: number,
): MeasuredCapture | null {
  const { channels, rateHz } = given.capture;
  const judged = channels[channel];
  if (!judged) return null;
  const found = measureCapture(
    given.capture,
    channels.map((_, at) => (at === channel ? (known?.measure ?? {}) : {})),
  );
  const asItLooks = found.channels[channel]!;
  const measures =
    known?.isTravel && asItLooks.kind !== 'steady'
      ? measureChannel(judged, rateHz, { ...known.measure, kind: 'sweep' })
      : asItLooks;
  const findings =
    measures.kind === 'steady' && isQuiet(known)
      ? []
      : judgeChannel(measures, known?.expected ?? {});
  const measured = measuredOf(measures, known);
  const several = channels.length > 1;
  const phases = found.phases.map(keptPhase);
  const capture: StepCapture = {
    name: shortName(given.name),
    sha256: given.sha256,
    from: given.from,
    ...(several ? { channel: channel + 1 } : {}),
    measures: measured,
    findings: findings.map(keptFinding),
    ...(phases.length > 0 ? { phases } : {}),
    channels: plotted(given.capture, measures),
    ...(given.second ? { second: { ...given.second, name: shortName(given.second.name) } } : {}),
  };
  const lines = [
    `${capture.name}: ${capturedWords(measured)}`,
    ...(several
      ? [`Judged channel: ${channel + 1} of ${channels.length}, ${shortName(judged.name)}`]
      : []),
    ...(findings.length === 0 ? ['Nothing wrong with this signal.'] : []),
    ...capturedFindingWords(capture),
    ...capturedPhaseWords(capture),
  ];
  return { capture, lines, measures, findings, known };
}

/** What a capture is held against, as an event keeps it; null where that capture has no channel. */
export function measureAgainst(
  against: AgainstGiven,
  known: SignalKnown | null,
  channel: number,
): CaptureAgainst | null {
  if (against.kind === 'stated') return against;
  const { given } = against;
  const at = channel < given.capture.channels.length ? channel : 0;
  const measured = measureGiven(given, known, at);
  if (!measured) return null;
  const { findings: _findings, second: _second, ...good } = measured.capture;
  return { kind: 'good', ...good };
}

/** Nothing changes here in a healthy circuit either, so a flat line is nothing against it. */
export function isQuiet(known: SignalKnown | null): boolean {
  return known !== null && known.levels.high - known.levels.low < known.flat.swing;
}

/** How the signal looks in the words of a procedure; null where a flat line has no voltage. */
export function lookOf({ measures, findings, known }: MeasuredCapture): PatternLook | null {
  if (measures.kind === 'steady' && measures.unit !== 'V') return null;
  const { levels, coil } = measures;
  const swing = coil?.slow.peakToPeak ?? levels.amplitude;
  const sweep = measures.sweep ? measures.sweep.most - measures.sweep.least : swing;
  const isFlat = measures.unit === 'V' && known !== null && sweep < known.flat.swing;
  return patternLook(isFlat ? { ...measures, kind: 'steady' } : measures, findings, known?.flat);
}

function measuredOf(measures: ChannelMeasures, known: SignalKnown | null): CaptureMeasured {
  const { kind, levels, pulses, wheel } = measures;
  const [low, high] =
    kind === 'steady'
      ? [levels.mean, levels.mean]
      : kind === 'switched'
        ? [levels.low, levels.high]
        : [levels.least, levels.most];
  const wheelRpm = wheel?.rpm?.mean ?? null;
  return {
    kind,
    unit: measures.unit,
    samples: measures.samples,
    seconds: keptNumber(measures.samples * measures.sampleSeconds),
    low: keptNumber(low),
    high: keptNumber(high),
    mean: keptNumber(levels.mean),
    ac: keptNumber(levels.deviation),
    hertz: maybe(pulses.regularHertz ?? pulses.hertz),
    duty: maybe(kind === 'switched' && pulses.duty !== null ? pulses.duty * 100 : null),
    rpm: maybe(wheelRpm === null ? null : wheelRpm / (known?.ratio ?? 1)),
  };
}

function maybe(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : keptNumber(value);
}

/** Names come from files and disks: made harmless, and no longer than is of use. */
function shortName(name: string): string {
  return [...safeText(name)].slice(0, NAME_SIGNS_MAX).join('');
}

function plotted(capture: Capture, measures: ChannelMeasures): StepCapture['channels'] {
  const seconds = captureSeconds(capture);
  const view = tellingView({ channels: [measures], seconds }, EDGES_DRAWN);
  return capture.channels.map((channel) =>
    envelopeOf({ ...channel, name: shortName(channel.name) }, capture.rateHz, view),
  );
}

/** The least that the axis of each kept channel covers in a picture: only the judged one's kind is known. */
export function spansLeastOf({
  channels,
  channel = 1,
  measures,
}: Pick<StepCapture, 'channels' | 'channel' | 'measures'>): number[] {
  return channels.map(({ unit }, at) =>
    spanLeastOf(unit, at === channel - 1 ? measures.kind : null),
  );
}

/** `switched, 0.12 and 4.97 V, 193.3 Hz, duty 50 %, 200 rpm`. */
export function capturedWords(measured: CaptureMeasured): string {
  const { kind, low, high, hertz, duty, rpm } = measured;
  const unit: Unit = measured.unit;
  const show = (value: number, of: Unit = unit) =>
    formatQuantity({ value, unit: of }, { digits: 4 });
  return [
    SIGNAL_KIND_WORDS[kind],
    kind === 'steady' ? show(low) : `${show(low)} and ${show(high)}`,
    ...(hertz === null ? [] : [show(hertz, 'Hz')]),
    ...(duty === null ? [] : [`duty ${show(duty, '%')}`]),
    ...(rpm === null ? [] : [show(rpm, 'rpm')]),
  ].join(', ');
}

/** The kinds of signal in words. */
export const SIGNAL_KIND_WORDS: Readonly<Record<CaptureMeasured['kind'], string>> = {
  steady: 'a flat line',
  switched: 'switched',
  alternating: 'alternating',
  sweep: 'a sweep',
};
