/** A capture as the answer of a step: measured, judged against the circuit, and put as the command a person confirms. */
import type { SignalKnown } from '../circuit/expected-signal.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Step } from '../procedure/procedure.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import { safeText } from '../source/safe-text.ts';
import { type Capture, captureSeconds } from '../waveform/capture.ts';
import { envelopeOf } from '../waveform/envelope.ts';
import { type Finding, judgeChannel } from '../waveform/judge-channel.ts';
import { type ChannelMeasures, measureChannel } from '../waveform/measure-channel.ts';
import { type PatternLook, patternLook } from '../waveform/pattern-look.ts';
import { tellingView } from '../waveform/telling-view.ts';
import type { Command } from './decide.ts';
import type { CaptureMeasured, StepCapture } from './events.ts';

/** A capture in hand. */
export interface CaptureGiven {
  /** The file's name without its folder. */
  readonly name: string;
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly sha256: string;
  readonly from: StepCapture['from'];
  readonly capture: Capture;
}

export type CaptureAnswer =
  /** What was found, in lines, and the command that takes it. */
  | {
      readonly ok: true;
      readonly command: Command;
      readonly capture: StepCapture;
      readonly lines: readonly string[];
    }
  | { readonly ok: false; readonly words: string; readonly fix: string };

/** Digits kept of what was measured: a reading typed with as many reads back as the same number. */
const DIGITS = 5;
/** Edges that a small picture shows apart. */
const EDGES_DRAWN = 40;
const NAME_SIGNS_MAX = 120;

/** Units of readings that a capture answers. */
const MEASURED = { Hz: 'hertz', '%': 'duty', rpm: 'rpm' } as const;

/** Whether a capture can answer this step. */
export function takesCapture(step: Step): boolean {
  if (step.kind === 'look') return step.probe.kind === 'pattern';
  return step.kind === 'measure' && step.probe === null && step.unit in MEASURED;
}

/** The number that a step of this unit takes from a capture, or null. */
export function capturedValue(unit: string, measured: CaptureMeasured): number | null {
  return unit in MEASURED ? measured[MEASURED[unit as keyof typeof MEASURED]] : null;
}

/** Measures the first channel for `step`; `known` is what the circuit says of the signal, or null. */
export function captureAnswer(
  step: Step,
  given: CaptureGiven,
  known: SignalKnown | null,
): CaptureAnswer {
  if ((step.kind !== 'look' && step.kind !== 'measure') || !takesCapture(step))
    return refuse('this step is not answered by a capture', 'answer it by hand');
  const [channel, ...others] = given.capture.channels;
  if (!channel) return refuse('this capture has no channel', 'export it again');
  const { rateHz } = given.capture;
  const found = measureChannel(channel, rateHz, known?.measure);
  const measures =
    known?.isTravel && found.kind !== 'steady'
      ? measureChannel(channel, rateHz, { ...known.measure, kind: 'sweep' })
      : found;
  const findings = judgeChannel(measures, known?.expected ?? {});
  const measured = measuredOf(measures, known);
  const notes =
    others.length === 0 ? [] : [`Only the first of ${others.length + 1} channels is judged.`];
  const words = [...findings.map((finding) => safeText(finding.words)), ...notes];
  const capture: StepCapture = {
    name: safeText(given.name).slice(0, NAME_SIGNS_MAX),
    sha256: given.sha256,
    from: given.from,
    measures: measured,
    words,
    channels: plotted(given.capture, measures),
  };
  const lines = [
    `${capture.name}: ${capturedWords(measured)}`,
    ...(findings.length === 0 ? ['Nothing against this signal.'] : []),
    ...words,
  ];
  if (findings.some(({ kind }) => kind === 'coarse'))
    return refuse(words[0]!, 'capture it anew, then measure that');
  return step.kind === 'measure'
    ? asReading(step.unit, capture, lines)
    : asLook(step, { measures, findings, known }, capture, lines);
}

function refuse(words: string, fix: string): CaptureAnswer {
  return { ok: false, words, fix };
}

function asReading(unit: string, capture: StepCapture, lines: readonly string[]): CaptureAnswer {
  const value = capturedValue(unit, capture.measures);
  if (value === null)
    return refuse(
      `this capture shows no ${unit === '%' ? 'duty' : unit === 'rpm' ? 'speed: no turn of the wheel can be made out' : 'frequency'}`,
      'capture a few turns with the target moving, or type the reading',
    );
  const typed = `${value} ${unit}`;
  return {
    ok: true,
    capture,
    lines: [...lines, `Reading: ${typed}`],
    command: { type: 'record-reading', typed, value, capture },
  };
}

interface Judged {
  readonly measures: ChannelMeasures;
  readonly findings: readonly Finding[];
  readonly known: SignalKnown | null;
}

function asLook(
  step: Extract<Step, { kind: 'look' }>,
  judged: Judged,
  capture: StepCapture,
  lines: readonly string[],
): CaptureAnswer {
  const look = lookOf(judged);
  if (look === null)
    return refuse(
      `${capture.name} is a flat line, and in ${UNIT_WORDS[judged.measures.unit]} it cannot be told whether it is high or low`,
      'capture it in volts, or choose by eye',
    );
  const outcome = step.outcomes.find(({ looks }) => looks.includes(look));
  if (!outcome)
    return refuse(
      `the capture shows "${LOOK_WORDS[look]}", which is none of this step's outcomes`,
      'choose by eye',
    );
  return {
    ok: true,
    capture,
    lines: [...lines, `Looks like: ${LOOK_WORDS[look]}`],
    command: { type: 'choose-outcome', outcome: outcome.name, look, capture },
  };
}

/** Null where a flat line has no voltage. */
function lookOf({ measures, findings, known }: Judged): PatternLook | null {
  if (measures.kind === 'steady' && measures.unit !== 'V') return null;
  const { levels, coil, kind } = measures;
  const swing =
    kind === 'switched' ? levels.amplitude : (coil?.slow.peakToPeak ?? levels.amplitude);
  const sweep = measures.sweep ? measures.sweep.most - measures.sweep.least : swing;
  const isFlat = measures.unit === 'V' && known !== null && sweep < known.flat.swing;
  return patternLook(isFlat ? { ...measures, kind: 'steady' } : measures, findings, known?.flat);
}

const UNIT_WORDS = { V: 'volts', A: 'amperes', '1': 'parts of full scale' } as const;

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
    seconds: rounded(measures.samples * measures.sampleSeconds),
    low: rounded(low),
    high: rounded(high),
    hertz: maybe(pulses.regularHertz ?? pulses.hertz),
    duty: maybe(kind === 'switched' && pulses.duty !== null ? pulses.duty * 100 : null),
    rpm: maybe(wheelRpm === null ? null : wheelRpm / (known?.ratio ?? 1)),
  };
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

function maybe(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : rounded(value);
}

function plotted(capture: Capture, measures: ChannelMeasures): StepCapture['channels'] {
  const seconds = captureSeconds(capture);
  const view = tellingView({ channels: [measures], seconds }, EDGES_DRAWN);
  return capture.channels.map((channel) =>
    envelopeOf({ ...channel, name: safeText(channel.name) }, capture.rateHz, view),
  );
}

/** `switched, 0.12 and 4.97 V, 193.3 Hz, duty 50 %, 200 rpm`. */
export function capturedWords(measured: CaptureMeasured): string {
  const { kind, low, high, hertz, duty, rpm } = measured;
  const unit: Unit = measured.unit;
  const show = (value: number, of: Unit = unit) =>
    formatQuantity({ value, unit: of }, { digits: 4 });
  return [
    KIND_WORDS[kind],
    kind === 'steady' ? show(low) : `${show(low)} and ${show(high)}`,
    ...(hertz === null ? [] : [show(hertz, 'Hz')]),
    ...(duty === null ? [] : [`duty ${show(duty, '%')}`]),
    ...(rpm === null ? [] : [show(rpm, 'rpm')]),
  ].join(', ');
}

const KIND_WORDS: Readonly<Record<CaptureMeasured['kind'], string>> = {
  steady: 'a flat line',
  switched: 'switched',
  alternating: 'alternating',
  sweep: 'a sweep',
};
