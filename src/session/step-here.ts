/**
 * A step as it is for this car: where the procedure's limits come from the circuit, and values of it are known, they
 * come from the circuit that is known now. What an author wrote stays.
 *
 * Screens look at steps, and the first frame must not wait for the circuit's model: so what makes models is handed in
 * by `session-model.ts`, which everything that decides or opens a session imports.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import type { Meter } from '../circuit/test.ts';
import { computedRange } from '../procedure/expected-range.ts';
import type { ExpectedRange, LookStep, MeasureStep, Step } from '../procedure/procedure.ts';
import type { SessionEvent } from './events.ts';
import { circuitOf, circuitThen, type KnownCar } from './known-circuit.ts';

type ModelFor = (circuit: Circuit, meter: Meter) => Model;
let maker: ModelFor | null = null;

/** Sets the function that makes circuit models, once, before the first session is opened. */
export function handInModels(modelFor: ModelFor): void {
  maker = modelFor;
}

function modelFor(circuit: Circuit, meter: Meter): Model {
  if (!maker) throw new Error('step-here: no session is open without what makes its models');
  return maker(circuit, meter);
}

/** The model of this car as far as it is known now; `model`, which the session began with, while no value was set. */
export function modelHere(session: KnownCar, model: Model): Model {
  const circuit = session.values.length === 0 ? null : circuitOf(session);
  return circuit === null ? model : modelFor(circuit, session.opened.meter);
}

/** The model of this car as far as it is known now; null without a circuit. */
export function modelOfCar(session: KnownCar): Model | null {
  const circuit = circuitOf(session);
  return circuit && modelFor(circuit, session.opened.meter);
}

/** The step as it is asked now. */
export function stepHere(session: KnownCar, step: Step): Step {
  return stepFor(session, step, circuitOf(session));
}

/** The step as it was when `event` happened. */
export function stepThen(session: KnownCar, step: Step, event: SessionEvent): Step {
  return stepFor(session, step, circuitThen(session, event));
}

const made = new WeakMap<Step, WeakMap<Circuit, Step>>();

function stepFor({ opened }: KnownCar, step: Step, circuit: Circuit | null): Step {
  if (circuit === null || circuit === opened.circuit) return step;
  const all = made.get(step) ?? new WeakMap<Circuit, Step>();
  made.set(step, all);
  const found = all.get(circuit) ?? stepWith(step, () => modelFor(circuit, opened.meter));
  all.set(circuit, found);
  return found;
}

/** The step with what the circuit of another model says: its limits and looks. What an author wrote stays. */
export function stepWith(step: Step, model: () => Model): Step {
  if (step.kind === 'look') return lookFor(step, model);
  return step.kind === 'measure' ? measureFor(step, model) : step;
}

type ModelOf = () => Model;

function lookFor(step: LookStep, model: ModelOf): LookStep {
  const { setup, probe } = step;
  const expected = model().expected({ setup, probe });
  if (expected.kind !== 'looks') return step;
  const looks = expected.looks.filter(({ chance }) => chance > 0).map(({ look }) => look);
  return looks.length === 0 ? step : { ...step, expected: looks };
}

function measureFor(step: MeasureStep, model: ModelOf): MeasureStep {
  const { setup, probe, expected } = step;
  if (probe === null || expected?.from !== 'circuit') return step;
  const range = computedRange(model(), { setup, probe });
  return range === null
    ? step
    : { ...step, expected: range, outcomes: moved(step, expected, range) };
}

/** Limits that were those of the old range are those of the new one, as long as each outcome still has its place. */
function moved(
  { outcomes }: MeasureStep,
  from: ExpectedRange,
  to: ExpectedRange,
): MeasureStep['outcomes'] {
  if ((from.low === null) !== (to.low === null) || (from.high === null) !== (to.high === null))
    return outcomes;
  const limit = (value: number | null) =>
    value === null ? null : value === from.low ? to.low : value === from.high ? to.high : value;
  const changed = outcomes.map((one) => ({ ...one, from: limit(one.from), to: limit(one.to) }));
  const isWhole = changed.every((one) => one.from === null || one.to === null || one.from < one.to);
  return isWhole ? changed : outcomes;
}
