/**
 * A test as it is made again after the repair. An author's limits are good on the way through the tree where the step
 * stands: those of a track that starts at its top, say, where the fault held the signal up. The repaired car may be of
 * the other kind, and a sound one of that kind reads elsewhere. So where sound cars leave the author's limits, good is
 * what those of them read that agree with the tests passed before.
 */
import { HEALTHY } from '../circuit/circuit.ts';
import { type Model, summarised } from '../circuit/model.ts';
import type { Shown } from '../circuit/test.ts';
import { rangeOf } from '../procedure/expected-range.ts';
import {
  expectedEnds,
  type MeasureStep,
  outcomeOfValue,
  type Step,
  stepOf,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { Retest, RetestRecorded } from './events.ts';
import type { Session } from './session.ts';
import { modelOfCar } from './step-here.ts';

/**
 * The step as it is asked now after the repair, or as it was when `event` answered it. Nothing is computed before a
 * test has passed: the first frame of a session at rest waits for no model.
 */
export function stepAgain<S extends Step>(session: Session, step: S, event: Retest | null): S {
  if (step.kind !== 'measure' || step.expected?.from !== 'author') return step;
  const test = testOf(step);
  const passed = passedBefore(session, step.id, event);
  const model = test && passed.length > 0 ? modelOfCar(session) : null;
  if (!test || !model) return step;
  const read = soundCars(session, model, passed).map((car) => model.shows(HEALTHY, test, car));
  const [first] = read;
  if (!first || read.every((shown) => isGood(step, shown))) return step;
  const expected = rangeOf(model.meter, summarised(first, read));
  return expected === null ? step : { ...step, expected };
}

/** The last answer to each other test after the repair, before `event`, as far as it passed. */
function passedBefore({ retests }: Session, id: string, event: Retest | null): RetestRecorded[] {
  const before = event === null ? retests : retests.slice(0, retests.indexOf(event));
  const last = new Map(before.map((one) => [one.step, one]));
  return [...last.values()].flatMap((one) =>
    one.type === 'retest-recorded' && one.passed && one.step !== id ? [one] : [],
  );
}

/** The cars whose sound circuit leaves each passed test by the outcome it had. */
function soundCars({ opened }: Session, model: Model, passed: readonly RetestRecorded[]): number[] {
  const cars = Array.from({ length: model.samples }, (_, car) => car);
  return passed.reduce((left, { step: id, outcome }) => {
    const step = opened.procedure && stepOf(opened.procedure, id);
    const test = step && testOf(step);
    if (!test || step.kind === 'ask') return left;
    return left.filter((car) => outcomeShown(step, model.shows(HEALTHY, test, car)) === outcome);
  }, cars);
}

function outcomeShown(step: Step, shown: Shown): string | undefined {
  if (step.kind === 'measure')
    return shown.kind === 'number' ? outcomeOfValue(step, shown.value)?.name : undefined;
  if (step.kind !== 'look' || shown.kind !== 'look') return undefined;
  return step.outcomes.find(({ looks }) => looks.includes(shown.look))?.name;
}

function isGood({ expected }: MeasureStep, shown: Shown): boolean {
  if (expected === null || shown.kind !== 'number') return false;
  const { low, high } = expectedEnds(expected);
  return shown.value >= low && shown.value <= high;
}
