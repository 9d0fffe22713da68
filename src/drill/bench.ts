/**
 * The simulated vehicle: a circuit with one fault in it that answers any test.
 *
 * Its readings come from the solver with the tolerances of one sample and the error of a real meter: a fixed,
 * seeded part of the meter's stated accuracy, rounded to the steps of its range. Same seed, same test, same answer.
 */

import { LOOK_WORDS } from '../circuit/look-words.ts';
import { functionOf, METER_UNITS } from '../circuit/meter-units.ts';
import type { Model } from '../circuit/model.ts';
import type { MeterUnit, Shown, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import type { Job } from '../procedure/job.ts';
import {
  type AskOutcome,
  concludedAt,
  type Procedure,
  type Step,
  WAKING,
  wokenBy,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import { codeAnswer } from '../session/code-answer.ts';
import type { TakenReading, VehicleAnswer } from '../session/driver.ts';
import type { SessionVehicle } from '../session/events.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';

/** A vehicle with one fault, ready to be measured. */
export interface Bench {
  readonly fault: string;
  readonly seed: number;
  readonly shows: (test: Test) => Shown;
  /** The answer to a step of a procedure; null for a number that the circuit knows nothing of. */
  readonly answers: (step: Step) => VehicleAnswer | null;
}

/** A real meter mostly reads well within its stated accuracy; half of it is used (an assumption). */
const SHARE_OF_ACCURACY = 0.5;

/**
 * A vehicle with `fault` (an id of the circuit, or `healthy`). `carOf` says whose car it is: that of its own fault, or
 * that of a fault which is mended or just not there.
 */
export function createBench(model: Model, fault: string, seed: number, carOf = fault): Bench {
  const sample = seed % model.samples;
  const shows = (test: Test): Shown =>
    withMeterError(model, model.shows(fault, test, sample, carOf), noise(seed, test));
  return { fault, seed, shows, answers: (step) => answerTo(model, step, shows) };
}

/**
 * A vehicle whose `fault` comes and goes: a test that leaves the harness alone reads like a healthy one; eyes, and who moves
 * the harness while reading, find the fault. A step of `procedure` that moves the harness or warms the sensor ends where a
 * conclusion stands for it.
 */
export function createWakingBench(
  model: Model,
  procedure: Procedure | null,
  fault: string,
  seed: number,
): Bench {
  const healthy = createBench(model, HEALTHY, seed, fault);
  const there = createBench(model, fault, seed);
  const shows = ({ wiggle, ...still }: Test): Shown =>
    (wiggle || still.probe.kind === 'inspect' ? there : healthy).shows(still);
  // A last question, which wire it was, only comes where the fault was woken.
  const isOfWoken = (step: Extract<Step, { kind: 'ask' }>) =>
    WAKING.includes(step.family) || (procedure && concludedAt(procedure, step.id).length > 0);
  const answers = (step: Step): VehicleAnswer | null => {
    if (step.kind !== 'ask' || !isOfWoken(step)) return answerTo(model, step, shows);
    const woken = step.outcomes.find(
      (outcome) => procedure && wokenBy(procedure, outcome).includes(fault),
    );
    return woken ? outcomeAnswer(woken) : healthy.answers(step);
  };
  return { fault, seed, shows, answers };
}

/** The simulated vehicle of a session: with a fault that stays, or one that comes and goes. */
export function benchFor(
  model: Model,
  procedure: Procedure | null,
  { fault, seed, intermittent }: Omit<Extract<SessionVehicle, { kind: 'bench' }>, 'kind'>,
): Bench {
  return intermittent
    ? createWakingBench(model, procedure, fault, seed)
    : createBench(model, fault, seed);
}

/** Answers to the steps of a job: what the trouble code says is what the job sheet has. */
export function answersFor(bench: Bench, job: Job): Bench['answers'] {
  return (step) => {
    const said = codeAnswer(step, job)?.outcome;
    return said ? outcomeAnswer(said) : bench.answers(step);
  };
}

/** What a display shows of it, in words and as the number that stands there; a look is what it is. */
export function displayed<S extends Shown>(model: Model, shown: S): { words: string; shown: S } {
  if (shown.kind === 'look') return { words: LOOK_WORDS[shown.look], shown };
  const { typed, value } = displayReading(model, shown.value, shown.unit);
  return { words: typed, shown: { ...shown, value } };
}

function answerTo(model: Model, step: Step, shows: (test: Test) => Shown): VehicleAnswer | null {
  if (step.kind === 'conclude') return null;
  if (step.kind === 'act') return { words: 'done', answer: { kind: 'done' } };
  if (step.kind === 'ask') {
    // Without a usual answer only the person knows: the simulated vehicle has nothing to say.
    const usual = step.outcomes.find(({ name }) => name === step.usual);
    return usual ? outcomeAnswer(usual) : null;
  }
  if (step.probe === null) return null;
  const shown = shows(testOf(step)!);
  if (shown.kind === 'number') return readingAnswer(model, shown);
  const { words } = displayed(model, shown);
  if (step.kind !== 'look') return null;
  const outcome = step.outcomes.find(({ looks }) => looks.includes(shown.look));
  return outcome
    ? { words, answer: { kind: 'outcome', outcome: outcome.name, look: shown.look } }
    : null;
}

/** A number that the simulated vehicle shows, as the answer to what asked for it. */
export function readingAnswer(
  model: Model,
  { value, unit }: Extract<Shown, { kind: 'number' }>,
): VehicleAnswer {
  const reading = displayReading(model, value, unit);
  return { words: reading.typed, answer: { kind: 'reading', ...reading } };
}

function outcomeAnswer({ name, words }: AskOutcome): VehicleAnswer {
  return { words, answer: { kind: 'outcome', outcome: name, look: null } };
}

function withMeterError(model: Model, shown: Shown, error: number): Shown {
  if (shown.kind === 'look' || !Number.isFinite(shown.value)) return shown;
  const { limit } = meterUncertainty(functionOf(model.meter, shown.unit), shown.value);
  const moved = shown.value + error * SHARE_OF_ACCURACY * limit;
  return { ...shown, value: METER_UNITS[shown.unit].isSigned ? moved : Math.max(0, moved) };
}

/** The value as the meter's display has it: the range it would choose, with its steps. */
function displayReading(model: Model, value: number, unit: MeterUnit): TakenReading {
  if (!Number.isFinite(value)) return { typed: 'OL', value: Number.POSITIVE_INFINITY };
  const { ranges, counts } = functionOf(model.meter, unit);
  const range = ranges.find((full) => Math.abs(value) <= full) ?? ranges[ranges.length - 1]!;
  const [scale, prefix, power] =
    range >= 1e6
      ? [1e6, 'M', 6]
      : range >= 1e3
        ? [1e3, 'k', 3]
        : range < 1
          ? [1e-3, 'm', -3]
          : [1, '', 0];
  const steps = Math.max(0, Math.round(-Math.log10(range / counts / scale)));
  const text = (value / scale).toFixed(steps);
  const digits = Number(text) === 0 ? text.replace('-', '') : text;
  return { typed: `${digits} ${prefix}${unit}`, value: Number(`${digits}e${power}`) };
}

/** An even number from -1 to 1 from the seed and the test: FNV-1a over its text, then one mixing round. */
function noise(seed: number, test: Test): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const letter of testKey(test)) {
    hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  hash ^= hash >>> 12;
  return ((hash >>> 0) / 0xffffffff) * 2 - 1;
}
