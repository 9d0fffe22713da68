/**
 * A procedure ready to be walked: names resolved, sub-procedures folded in, ranges as numbers, cautions attached.
 *
 * Everything here is plain JSON, because the first event of a session holds it whole: an old session reads the same
 * for ever, whatever becomes of the files.
 */
import type { Look, NumberProbe, Probe, Setup } from '../circuit/test.ts';
import type { CodeKind } from '../identify/describe-code.ts';

/** Test families, in the trade's words. */
const FAMILIES = [
  'reference',
  'ground',
  'signal',
  'injection',
  'bypass',
  'actuation',
  'continuity',
  'pattern',
  'neighbour',
  'wiggle',
  'comparison',
  'inspection',
  'interview',
] as const;
export type Family = (typeof FAMILIES)[number];
/** Questions of these families wake a fault that comes and goes: moving the harness, warming the sensor. */
export const WAKING: readonly Family[] = ['wiggle', 'actuation'];

/** A tree that can be walked: every name leads somewhere, every limit is a number. */
export interface Procedure {
  readonly name: string;
  readonly title: string;
  /** What it is for and what to have ready, for the person who chooses it. */
  readonly about: string;
  /** Name of the circuit it is about, or null for a procedure without one. */
  readonly circuit: string | null;
  /** Trouble codes it answers. */
  readonly codes: readonly string[];
  readonly start: string;
  /** In the order of the file; sub-procedures' steps stand behind the step that uses them, as `caller/inner`. */
  readonly steps: Readonly<Record<string, Step>>;
}

/** One step of a tree, told apart by its `kind`. */
export type Step = MeasureStep | LookStep | AskStep | ActStep | Conclusion;

interface StepBase {
  readonly id: string;
  /** A few words that name the step in lists. */
  readonly title: string;
  readonly family: Family;
  readonly setup: Setup;
  /** What to do, with `{terminal}` places still to be filled from the job. */
  readonly say: string;
  readonly why: string;
  /** Minutes of a practised person, all of this step's handling included. */
  readonly minutes: number;
  readonly cautions: readonly Caution[];
  /** Step for a person who cannot do this one. */
  readonly cannot: string | null;
}

/** A step that ends in a number. */
export interface MeasureStep extends StepBase {
  readonly kind: 'measure';
  /** Harness and connectors are moved for the reading too. */
  readonly wiggle?: true;
  /** What the circuit model is asked; null when the model knows nothing of this quantity. */
  readonly probe: Probe | null;
  readonly unit: MeasureUnit;
  /** Of a signal without a probe: the level of a capture that answers it. */
  readonly level?: CaptureLevel;
  readonly expected: ExpectedRange | null;
  readonly outcomes: readonly RangeOutcome[];
}
export const MEASURE_UNITS = ['V', 'ohm', 'A', 'Hz', 'rpm', '%', 's', 'deg'] as const;

/** Unit that a measured step can ask for. */
export type MeasureUnit = (typeof MEASURE_UNITS)[number];

/** A level of a captured signal: its two states, its mean, peak to peak, or its root mean square without the mean. */
export const CAPTURE_LEVELS = ['low', 'high', 'mean', 'swing', 'ac'] as const;
export type CaptureLevel = (typeof CAPTURE_LEVELS)[number];

/**
 * What a healthy circuit shows, in SI units of the step, and who says so. An end that is null is open; a meter's OL
 * is a `low` at the top of its ranges with an open `high`.
 */
export interface ExpectedRange {
  readonly low: number | null;
  readonly nominal: number | null;
  readonly high: number | null;
  readonly from: 'circuit' | 'author';
}

interface OutcomeBase {
  readonly name: string;
  /** What it means, in a few words. */
  readonly words: string;
  readonly go: string;
}
/** `from` counts, `to` does not; null is without end. OL is infinite and belongs to the outcome without upper end. */
export interface RangeOutcome extends OutcomeBase {
  readonly from: number | null;
  readonly to: number | null;
  /** Of a number that the circuit does not compute: the faults under which it can come out so; any when absent. */
  readonly under?: readonly string[];
}

/** A step that ends in a look: a light, a scope picture, the module's live data, eyes and fingers. */
export interface LookStep extends StepBase {
  readonly kind: 'look';
  /** As of a number. */
  readonly wiggle?: true;
  readonly probe: Exclude<Probe, NumberProbe>;
  /** Looks of the healthy circuit. */
  readonly expected: readonly Look[];
  readonly outcomes: readonly LookOutcome[];
}

/** A way on that some looks lead to. */
export interface LookOutcome extends OutcomeBase {
  readonly looks: readonly Look[];
}

/** A question that no instrument answers. `usual` is what a simulated vehicle answers when no code of the job does. */
export interface AskStep extends StepBase {
  readonly kind: 'ask';
  readonly usual: string | null;
  /** What instruments show while it is answered, one after the other; absent where nothing is watched. */
  readonly watched?: readonly Probe[];
  readonly outcomes: readonly AskOutcome[];
}

/** A way on that an answer of the person leads to. */
export interface AskOutcome extends OutcomeBase {
  /** Kinds of trouble code that answer it; absent when none does. */
  readonly codeKinds?: readonly CodeKind[];
  /** Faults under which it can be the answer; any, and a healthy circuit, when absent. */
  readonly under?: readonly string[];
}

/** Something to do, with nothing to read. */
export interface ActStep extends StepBase {
  readonly kind: 'act';
  readonly go: string;
}

/** An end of the tree: what is wrong there and what puts it right. */
export interface Conclusion {
  readonly id: string;
  readonly kind: 'conclude';
  readonly title: string;
  /** Fault ids it stands for; empty when no fault was found. */
  readonly faults: readonly string[];
  readonly say: string;
  readonly repair: string;
  /** What the customer should know, in plain words. */
  readonly customer: string;
  /** Sessions of early versions: what an author said to be good. Not shown any more. */
  readonly cleared?: string;
  /** Steps without which it does not stand; a name stands for all steps inside it as well. */
  readonly requires?: readonly string[];
  /** The conclusion in its place where one of them could not be done; there when `requires` is. */
  readonly otherwise?: string;
  /** Steps that must pass after the repair. */
  readonly retest: readonly string[];
}

/** Whether a conclusion requires a step, by its name or by that of what it is inside of. */
export function isRequired({ requires: names = [] }: Conclusion, step: string): boolean {
  return names.some((name) => step === name || step.startsWith(`${name}/`));
}

/** The conclusion that stands at `id`, given which ones lack a step that they require; `id` itself when it is none. */
export function standingConclusion(
  { steps }: Pick<Procedure, 'steps'>,
  id: string,
  lacks: (conclusion: Conclusion) => boolean,
): string {
  const passed = new Set<string>();
  let now = id;
  for (let step = steps[now]; step?.kind === 'conclude'; step = steps[now]) {
    if (step.otherwise === undefined || passed.has(now) || !lacks(step)) return now;
    passed.add(now);
    now = step.otherwise;
  }
  return now;
}

export const SIGNAL_WORDS = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const;

/** The word above a caution, by how badly somebody could be hurt. */
export type SignalWord = (typeof SIGNAL_WORDS)[number];

/** A caution as it stands before a prompt. */
export interface Caution {
  readonly id: string;
  readonly word: SignalWord;
  readonly say: string;
  readonly hazards: readonly Hazard[];
}
const HAZARDS = [
  'rotating-parts',
  'hot-parts',
  'exhaust-gas',
  'unexpected-start',
  'vehicle-secured',
  'energised-circuit',
  'battery',
  'high-voltage',
  'module-damage',
  'instrument-damage',
  'fuel',
  'airbag',
  'harness-damage',
  'engine-start',
  'ignition-voltage',
  'raw-fuel',
  'starter-heat',
  'engine-damage',
  'vehicle-moves',
  'traffic',
  // One that an author knows of; nothing asks for it.
  'other',
] as const;

/** What a caution warns of. */
export type Hazard = (typeof HAZARDS)[number];

/** True for steps that a person works on (all but conclusions). */
export function isTask(step: Step): step is MeasureStep | LookStep | AskStep | ActStep {
  return step.kind !== 'conclude';
}

/** The step of that name. Throws for a name that a checked procedure cannot hold. */
export function stepOf(procedure: Procedure, id: string): Step {
  const step = procedure.steps[id];
  if (!step) throw new Error(`procedure: no step "${id}" in a checked procedure`);
  return step;
}

/** The expected range with its open ends as infinities. */
export function expectedEnds(expected: Pick<ExpectedRange, 'low' | 'high'>): {
  readonly low: number;
  readonly high: number;
} {
  return {
    low: expected.low ?? Number.NEGATIVE_INFINITY,
    high: expected.high ?? Number.POSITIVE_INFINITY,
  };
}

/** The outcome a value falls into; null only for NaN. */
export function outcomeOfValue(step: MeasureStep, value: number): RangeOutcome | null {
  return (
    step.outcomes.find(
      ({ from, to }) => (from === null || value >= from) && (to === null || value < to),
    ) ?? null
  );
}

/**
 * The faults that a step concludes on: its own, or all those of a last question whose every answer concludes on some
 * (which wire it was). None for any other step.
 */
export function concludedAt({ steps }: Procedure, id: string): readonly string[] {
  const step = steps[id];
  if (step?.kind === 'conclude') return step.faults;
  if (step?.kind !== 'ask') return [];
  const ends = step.outcomes.map(({ go }) => steps[go]);
  return ends.every((end) => end?.kind === 'conclude' && end.faults.length > 0)
    ? [...new Set(ends.flatMap((end) => (end?.kind === 'conclude' ? end.faults : [])))]
    : [];
}

/** The faults of the step that an answer leads to, of which this answer can speak: all but those that do not show in its step. */
export function wokenBy(procedure: Procedure, { go, under }: AskOutcome): readonly string[] {
  return concludedAt(procedure, go).filter((fault) => under?.includes(fault) ?? true);
}
