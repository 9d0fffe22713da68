/** A capture as an answer: of a step, of a test after the repair, of a test that no step asks for. Put as the command a person confirms. */
import type { SignalKnown } from '../circuit/expected-signal.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Look, Probe, Test } from '../circuit/test.ts';
import {
  type AskStep,
  type CaptureLevel,
  type MeasureStep,
  type Step,
  WAKING,
} from '../procedure/procedure.ts';
import { safeText } from '../source/safe-text.ts';
import { findDrops } from '../waveform/find-drops.ts';
import { STATED_FORM } from '../waveform/stated-edges.ts';
import { besideWords } from './against-words.ts';
import {
  againstWords,
  phaseOf,
  positionLook,
  positionShift,
  positionWords,
} from './capture-position.ts';
import { capturedFindingWords } from './capture-words.ts';
import type { Command } from './command.ts';
import type { CaptureAgainst, CaptureMeasured, ExpectedShown, StepCapture } from './events.ts';
import { keptDrops, keptNumber } from './kept-finding.ts';
import {
  type AgainstGiven,
  type CaptureGiven,
  lookOf,
  type MeasuredCapture,
  measureAgainst,
  measureGiven,
} from './measure-capture.ts';
import { againCommand, type RepeatableStep } from './retest.ts';
import { dropsWords } from './watched-words.ts';

/** Which question a capture is to answer: a step, a test after the repair, a test of one's own. */
export type CaptureAsk =
  | { readonly kind: 'step'; readonly step: Step }
  | { readonly kind: 'retest'; readonly step: RepeatableStep }
  | {
      readonly kind: 'test';
      readonly test: Test;
      readonly expected: ExpectedShown | null;
    };

/** Which channel was judged, and the answer that another one gives; only where there are several. */
export interface CaptureChannels {
  readonly names: readonly string[];
  /** From 0. */
  readonly judged: number;
  readonly judge: (channel: number) => CaptureAnswer;
}

/** What a capture can be taken as: an answer, a test of one's own, a test after the repair, or a round of moving. */
export type CaptureCommand = Extract<
  Command,
  {
    type: 'record-reading' | 'choose-outcome' | 'record-test' | 'record-retest' | 'watch-waking';
  }
>;

/** What a capture comes to as an answer, or why it answers nothing. */
export type CaptureAnswer =
  /** What was found, in lines, and the command that takes it. */
  | {
      readonly ok: true;
      readonly command: CaptureCommand;
      readonly capture: StepCapture;
      readonly lines: readonly string[];
      readonly channels?: CaptureChannels;
    }
  | {
      readonly ok: false;
      readonly words: string;
      readonly fix: string;
      /** What was measured all the same; absent where nothing was. */
      readonly lines?: readonly string[];
      readonly channels?: CaptureChannels;
    };

/** Units of readings that a capture answers whatever is probed. */
const MEASURED = { Hz: 'hertz', '%': 'duty', rpm: 'rpm' } as const;

/** Whether a capture can answer this step. */
export function takesCapture(step: Step): boolean {
  if (step.kind === 'ask') return watchedLeads(step) !== null;
  if (step.kind === 'look') return isPicture(step.probe);
  if (step.kind !== 'measure') return false;
  if (step.probe === null) return step.unit in MEASURED || step.level !== undefined;
  return testTakesCapture({ setup: step.setup, probe: step.probe });
}

/** Where a scope looks while something is moved or warmed at this step; null where nothing that it sees is watched. */
export function watchedLeads({
  family,
  watched = [],
}: AskStep): Extract<Probe, { kind: 'volts' | 'pattern' }> | null {
  if (!WAKING.includes(family)) return null;
  for (const probe of watched) if (probe.kind === 'pattern' || probe.kind === 'volts') return probe;
  return null;
}

/**
 * Whether a capture can answer this test: the picture of a signal, its position in the turn of another, or the volts of
 * one that moves, of which a meter shows the mean.
 */
export function testTakesCapture({ setup, probe }: Test): boolean {
  return isPicture(probe) || (probe.kind === 'volts' && setup.target === 'moving');
}

function isPicture({ kind }: Test['probe']): boolean {
  return kind === 'pattern' || kind === 'timing';
}

/** Whether a step or a test asks where a signal stands in the turn of another. */
export function asksPosition(ask: CaptureAsk): boolean {
  const probe = ask.kind === 'test' ? ask.test.probe : ask.step.kind === 'look' && ask.step.probe;
  return probe !== false && probe.kind === 'timing';
}

/** The number that a step takes from a capture, or null where the capture has none. */
export function capturedValue(step: Step, measured: CaptureMeasured): number | null {
  if (step.kind !== 'measure') return null;
  if (step.probe === null && step.unit in MEASURED)
    return measured[MEASURED[step.unit as keyof typeof MEASURED]];
  if (step.unit !== measured.unit) return null;
  return capturedLevel(step.level ?? 'mean', measured);
}

/** One level of a capture in its own unit; null in a capture of an earlier version that kept none such. */
export function capturedLevel(level: CaptureLevel, measured: CaptureMeasured): number | null {
  const { low, high, mean = null, ac = null } = measured;
  switch (level) {
    case 'low':
      return low;
    case 'high':
      return high;
    case 'swing':
      return Number((high - low).toPrecision(5));
    case 'mean':
      return mean;
    case 'ac':
      return ac;
  }
}

/**
 * Measures channel number `channel` as the answer of `ask`; `known` is what the circuit says of the signal, or null.
 * `against` is what it is held against besides.
 */
export function captureAnswer(
  ask: CaptureAsk,
  given: CaptureGiven,
  known: SignalKnown | null,
  channel = 0,
  against: AgainstGiven | null = null,
): CaptureAnswer {
  if (ask.kind === 'test' ? !testTakesCapture(ask.test) : !takesCapture(ask.step))
    return refuse("a capture can't answer this step", 'answer it by hand');
  const { channels } = given.capture;
  const bare = measureGiven(given, known, channel);
  const held = against && measureAgainst(against, known, channel);
  const found = bare && heldAgainst(bare, held);
  if (!found)
    return channels.length === 0
      ? refuse('this capture has no channel', 'export it again')
      : refuse(
          `this capture has no channel ${channel + 1}`,
          channels.length === 1 ? 'it has one channel' : `choose one from 1 to ${channels.length}`,
        );
  const answer =
    ask.kind !== 'test' && ask.step.kind === 'ask'
      ? asWatched(ask, found, channels[channel]!.samples)
      : answerOf(ask, found);
  if (channels.length < 2) return answer;
  const choice: CaptureChannels = {
    names: channels.map(({ name }) => safeText(name)),
    judged: channel,
    judge: (other) => captureAnswer(ask, given, known, other, against),
  };
  return { ...answer, channels: choice };
}

function refuse(words: string, fix: string, lines?: readonly string[]): CaptureAnswer {
  return { ok: false, words, fix, ...(lines ? { lines } : {}) };
}

function answerOf(ask: CaptureAsk, found: MeasuredCapture): CaptureAnswer {
  const { capture, findings } = found;
  if (findings.some(({ kind }) => kind === 'coarse'))
    return refuse(capturedFindingWords(capture)[0]!, 'capture it again, then measure that');
  if (asksPosition(ask)) return asPosition(ask, found);
  if (ask.kind === 'test')
    return ask.test.probe.kind === 'pattern' ? asLook(ask, found) : asReading(ask, null, found);
  const { step } = ask;
  return step.kind === 'measure' ? asReading(ask, step, found) : asLook(ask, found);
}

/** `step` is the one that asks for the number, or null for a test that no step asks for, which asks for the mean in volts. */
function asReading(
  ask: CaptureAsk,
  step: MeasureStep | null,
  { capture, lines }: MeasuredCapture,
): CaptureAnswer {
  const { measures } = capture;
  const unit = step?.unit ?? 'V';
  const value = step
    ? capturedValue(step, measures)
    : measures.unit === 'V'
      ? capturedLevel('mean', measures)
      : null;
  if (value === null)
    return refuse(MISSING[unit] ?? `this capture is not in ${unit}`, TRY[unit] ?? RETYPE);
  const typed = `${value} ${unit}`;
  const said = [
    ...lines,
    `${step?.level ? LEVEL_WORDS[step.level] : unit === 'V' ? LEVEL_WORDS.mean : 'Reading'}: ${typed}`,
  ];
  const shown = { kind: 'number', value, unit: 'V' } as const;
  return taken(
    ask,
    ask.kind === 'test'
      ? {
          type: 'record-test',
          test: ask.test,
          expected: ask.expected,
          typed,
          shown,
          capture,
        }
      : { type: 'record-reading', typed, value, capture },
    { capture, lines: said },
  );
}

/** The answer with its command, which is another one after a repair. */
function taken(
  ask: CaptureAsk,
  answer: CaptureCommand,
  { capture, lines }: Pick<MeasuredCapture, 'capture' | 'lines'>,
): CaptureAnswer {
  const command = ask.kind === 'retest' ? againCommand(ask.step, answer) : answer;
  return command
    ? { ok: true, capture, lines, command }
    : refuse('no outcome of this test covers what was measured', 'answer it by hand');
}

const RETYPE = 'export the capture with its unit, or type the reading';
const MISSING: Readonly<Record<string, string>> = {
  Hz: 'this capture shows no frequency',
  '%': 'this capture shows no duty',
  rpm: 'this capture shows no speed: no full turn of the wheel can be found',
  V: 'this capture is not in volts',
  A: 'this capture is not in amperes',
};
const MOVE = 'capture a few turns with the target moving, or type the reading';
const TRY: Readonly<Record<string, string>> = { Hz: MOVE, '%': MOVE, rpm: MOVE };

const LEVEL_WORDS: Readonly<Record<CaptureLevel, string>> = {
  low: 'Low level',
  high: 'High level',
  mean: 'Mean, as a meter shows it',
  swing: 'Peak to peak',
  ac: 'AC, without the mean',
};

/** With what is beside it: a picture is compared with a good one, and what is stated of edges says nothing of it. */
function heldAgainst(found: MeasuredCapture, held: CaptureAgainst | null): MeasuredCapture {
  if (!held) return found;
  const { capture, lines } = found;
  return {
    ...found,
    capture: { ...capture, against: held },
    lines: held.kind === 'good' ? [...lines, ...besideWords(capture, held)] : lines,
  };
}

/** What a long capture shows of a signal while something is moved: it answers no step, and is kept as a round. */
function asWatched(
  ask: Exclude<CaptureAsk, { kind: 'test' }>,
  { capture, measures, known, lines }: MeasuredCapture,
  samples: Float32Array,
): CaptureAnswer {
  const found = findDrops(samples, measures, known?.expected.wheel?.missing ?? 0);
  const drops = keptDrops(found);
  const { unit } = measures;
  const isLevel = unit !== '1';
  const command: CaptureCommand = {
    type: 'watch-waking',
    ...(ask.kind === 'retest' ? { step: ask.step.id } : {}),
    place: null,
    typed: '',
    unit: isLevel ? unit : null,
    least: isLevel ? drops.least : null,
    most: isLevel ? drops.most : null,
    drops: drops.count,
    minutes: keptNumber(capture.measures.seconds / 60),
    capture: { ...capture, drops },
  };
  const said = dropsWords(drops, unit);
  return { ok: true, capture: { ...capture, drops }, lines: [...lines, said], command };
}

/** Where the judged signal stands in the turn of the other one, or it of the judged one. */
function asPosition(ask: CaptureAsk, found: MeasuredCapture): CaptureAnswer {
  const { capture, lines } = found;
  if (lookOf(found)?.startsWith('flat')) return lookTaken(ask, 'no-signal', { capture, lines });
  if (capture.channels.length < 2)
    return refuse(
      'a position needs both signals of the same crank, and this capture has one channel',
      "save both channels, or name the other channel's file as well",
      lines,
    );
  if (!phaseOf(capture))
    return refuse(
      'no full turn of one signal can be found in the other',
      'capture both over at least three crankshaft turns, and check that both leads are connected',
      lines,
    );
  const { against } = capture;
  if (!against)
    return refuse(
      'nothing says where its edges should be',
      `give a known-good capture from the same type of engine, or the maker's edge positions: ${STATED_FORM}`,
      lines,
    );
  const shift = positionShift(capture, against);
  if (typeof shift !== 'number') return refuse(shift.problem, shift.fix, lines);
  const words = safeText(
    `${positionWords(capture, shift, against)} (against ${againstWords(against)})`,
  );
  return lookTaken(ask, positionLook(shift, against), {
    capture: { ...capture, shiftDegrees: shift },
    lines: [...lines, `Position: ${words}`],
  });
}

function asLook(ask: CaptureAsk, found: MeasuredCapture): CaptureAnswer {
  const { capture, measures, lines } = found;
  const look = lookOf(found);
  if (look === null)
    return refuse(
      `${capture.name} is a flat line, and in ${UNIT_WORDS[measures.unit]} there is no telling whether it is high or low`,
      'capture it in volts, or choose by eye',
    );
  return lookTaken(ask, look, { capture, lines });
}

/** A look as the answer, said in words behind what was measured. */
function lookTaken(
  ask: CaptureAsk,
  look: Look,
  { capture, lines }: Pick<MeasuredCapture, 'capture' | 'lines'>,
): CaptureAnswer {
  const said = [...lines, `Looks like: ${LOOK_WORDS[look]}`];
  if (ask.kind === 'test') {
    const shown = { kind: 'look', look } as const;
    const { test, expected } = ask;
    const typed = LOOK_WORDS[look];
    const command = { type: 'record-test', test, expected, typed, shown, capture } as const;
    return { ok: true, capture, lines: said, command };
  }
  const { step } = ask;
  const outcome =
    step.kind === 'look' ? step.outcomes.find(({ looks }) => looks.includes(look)) : undefined;
  if (!outcome)
    return refuse(
      `the capture shows "${LOOK_WORDS[look]}", which is not one of this step's outcomes`,
      'choose by eye',
    );
  const answer = { type: 'choose-outcome', outcome: outcome.name, look, capture } as const;
  return taken(ask, answer, { capture, lines: said });
}

const UNIT_WORDS = { V: 'volts', A: 'amperes', '1': 'parts of full scale' } as const;
