/**
 * Limits and the instrument that reads them. The proof walks with exact readings; a meter shows them with its
 * uncertainty, and the next car shows values between those that were walked.
 */

import { functionOf } from '../circuit/meter-units.ts';
import { unitShownBy } from '../circuit/shown-by.ts';
import type { Meter, MeterFunction, Shown } from '../circuit/test.ts';
import {
  type MeasureStep,
  outcomeOfValue,
  type RangeOutcome,
  stepOf,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { formatReadings } from '../quantity/format-quantity.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { CARS_BESIDE } from './car-exits.ts';
import type { Coming } from './fault-reach.ts';
import { provedFault } from './lost-cars.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed } from './proof-words.ts';
import { outcomeLocation } from './source-location.ts';
import { walkFault } from './walk-faults.ts';

/**
 * Of the cars of a fault that come to a step, so many read so near a limit that the meter may show them on its other
 * side, where they end wrongly. Less is where two faults meet, as some must. Our choice.
 */
const FINE_SHARE_MIN = 0.2;
const FINE_CARS_MIN = 3;
/** What reads less than this in order is a wire, a contact or a fuse: it carries, whatever the car. Our choice. */
const CARRIES_OHMS = 10;
/** More than a sound wire by so many limits of the meter is seen by it. Our choice. */
const SEEN_LIMITS = 10;

/** A reading that a limit sends the wrong way, by fault. */
interface Misled {
  readonly code: 'limit-too-fine' | 'limit-too-far';
  readonly step: MeasureStep;
  /** Where it is sent. */
  readonly outcome: RangeOutcome;
  readonly faults: Map<string, { readonly cars: number; readonly of: number }>;
  readonly values: number[];
}

/** Findings about limits that the meter cannot tell, or that let a bad wire pass. `comings`: which cars come to which step. */
export function limitIssues(facts: ProofFacts, comings: readonly Coming[]): Issue[] {
  const found = new Map<string, Misled>();
  const passed = new Set<string>();
  for (const coming of comings) {
    const step = stepOf(facts.linked.procedure, coming.step);
    if (step.kind !== 'measure' || testOf(step) === null) continue;
    const at = new StepLimits(facts, step);
    tooFine(at, coming, found);
    if (step.unit === 'ohm') tooFar(at, coming, found, passed);
  }
  return [...found.values()].map((one) => issueOf(facts, one));
}

/** What one step shows, and where it leads. */
class StepLimits {
  readonly facts: ProofFacts;
  readonly step: MeasureStep;

  constructor(facts: ProofFacts, step: MeasureStep) {
    this.facts = facts;
    this.step = step;
  }

  /** The number shown, in the car of `carOf`. */
  value(fault: string, sample: number, carOf = fault): number {
    const shown: Shown = this.facts.model.shows(fault, testOf(this.step)!, sample, carOf);
    return shown.kind === 'number' ? shown.value : Number.NaN;
  }

  outcome(value: number): RangeOutcome | null {
    return outcomeOfValue(this.step, value);
  }

  /** By how much the meter may be off at this reading. */
  limit(value: number): number {
    return meterUncertainty(accuracyOf(this.step, this.facts.model.meter), value).limit;
  }

  /** Cars that end wrongly when they leave by this outcome. */
  lost(fault: string, { go }: RangeOutcome, samples: readonly number[]): number[] {
    const { linked, model, judge } = this.facts;
    const ways = walkFault(linked.procedure, model, fault, { from: go, samples });
    const wrong = ways
      .flatMap(judge.judge)
      .filter(({ verdict }) => verdict !== 'right' && verdict !== 'inseparable');
    return [...new Set(wrong.flatMap((way) => way.samples))];
  }

  tell(
    found: Map<string, Misled>,
    code: Misled['code'],
    outcome: RangeOutcome,
    [fault, samples, of]: readonly [string, readonly number[], number],
  ): void {
    const key = `${code} ${this.step.id} ${outcome.name}`;
    const one: Misled = found.get(key) ?? {
      code,
      step: this.step,
      outcome,
      faults: new Map(),
      values: [],
    };
    found.set(key, one);
    one.faults.set(fault, { cars: samples.length, of });
    one.values.push(...samples.map((sample) => this.value(fault, sample)));
  }
}

/** Cars whose reading is nearer to a limit than the meter can tell, and that end wrongly on its other side. */
function tooFine(at: StepLimits, { fault, samples }: Coming, found: Map<string, Misled>): void {
  for (const outcome of at.step.outcomes) {
    const near = samples.filter((sample) => {
      const value = at.value(fault, sample);
      if (!Number.isFinite(value) || at.outcome(value) === outcome) return false;
      return [outcome.from, outcome.to].some(
        (edge) => edge !== null && Math.abs(edge - value) < at.limit(value),
      );
    });
    if (near.length < Math.max(FINE_CARS_MIN, FINE_SHARE_MIN * samples.length)) continue;
    const lost = at.lost(fault, outcome, near);
    if (lost.length < Math.max(FINE_CARS_MIN, FINE_SHARE_MIN * samples.length)) continue;
    at.tell(found, 'limit-too-fine', outcome, [fault, lost, samples.length]);
  }
}

/**
 * A fault comes here, is seen by its reading and ends rightly. Other faults with the same repair that read clearly more
 * than a sound wire, in whatever car, must not pass as one: what comes here is what the walk let through, and the limit
 * stands for the next car as well.
 */
function tooFar(
  at: StepLimits,
  { fault, samples: [first] }: Coming,
  found: Map<string, Misled>,
  done: Set<string>,
): void {
  const { model } = at.facts;
  const sound = at.value(HEALTHY, first!, fault);
  const good = at.outcome(sound);
  const bad = at.outcome(at.value(fault, first!));
  if (fault === HEALTHY || !(sound < CARRIES_OHMS) || !good || !bad || good === bad) return;
  if (at.lost(fault, bad, [first!]).length > 0) return;
  const repair = model.circuit.faults.find(({ id }) => id === fault)!.repair;
  const cars = Array.from({ length: Math.min(CARS_BESIDE, model.samples) }, (_, car) => car);
  for (const { id } of model.circuit.faults.filter((one) => one.repair === repair)) {
    if (done.has(`${at.step.id} ${id}`)) continue;
    done.add(`${at.step.id} ${id}`);
    const passing = cars.filter((car) => {
      const value = at.value(id, car);
      const whole = at.value(HEALTHY, car, id);
      return at.outcome(value) === good && value - whole > SEEN_LIMITS * at.limit(whole);
    });
    const lost = passing.length < FINE_CARS_MIN ? [] : at.lost(id, good, passing);
    if (lost.length >= FINE_CARS_MIN)
      at.tell(found, 'limit-too-far', good, [id, lost, cars.length]);
  }
}

/** Of the meter at the leads of a step; none without leads is looked at here. */
function accuracyOf({ probe }: MeasureStep, meter: Meter): MeterFunction {
  return functionOf(meter, unitShownBy(probe!)!);
}

function issueOf(
  { linked, model }: ProofFacts,
  { code, step, outcome, faults, values }: Misled,
): Issue {
  const names = listed(
    [...faults].map(([fault, { cars, of }]) => `${provedFault(fault)} (${cars} of ${of} cars)`),
  );
  const reads = formatReadings(Math.min(...values), Math.max(...values), step.unit);
  const { name } = model.meter;
  const accuracy = accuracyOf(step, model.meter);
  const off = Math.max(...values.map((value) => meterUncertainty(accuracy, value).limit));
  const common = {
    severity: 'warning' as const,
    at: outcomeLocation(linked, step.id, outcome.name),
  };
  return code === 'limit-too-fine'
    ? {
        ...common,
        code,
        words: `${names} at "${step.id}" read ${reads}, closer to a limit of "${outcome.name}" than a meter can resolve, and end wrongly if it shows them on the other side`,
        fix: `a ${name} can be off by ${formatReadings(off, off, step.unit)} here: move the limit away from the reading`,
      }
    : {
        ...common,
        code,
        words: `"${outcome.name}" of "${step.id}" also holds ${names} at ${reads}, where a good wire reads far less`,
        fix: 'tighten the limit towards what a good wire, contact or fuse reads',
      };
}
