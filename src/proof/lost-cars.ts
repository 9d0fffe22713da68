/** How many cars of each fault a finding is about, with the value that tells them from the cars that end rightly. */
import type { Model } from '../circuit/model.ts';
import type { LostCars } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { type BreakingValue, breakingValue } from './breaking-value.ts';
import { type CarValues, carValues } from './car-values.ts';
import { breakingWords, carsWords, LISTED_MAX } from './proof-words.ts';
import type { TreeWay } from './walk-faults.ts';

/** So few cars have some value of their own by luck alone. */
const TELLING_MIN = 3;
const TOO_FEW = 'too few to say which value it is';

/** A fault and its cars that a finding is about. */
export interface FaultCars {
  readonly fault: string;
  /** Numbers of the samples, each once. */
  readonly samples: readonly number[];
  /** Part of the fault, 0 to 1: less than that of the samples where a question has several answers. */
  readonly share: number;
}

/** A fault, the number of its cars and what breaks them. */
interface LostOfFault {
  readonly cars: LostCars;
  readonly value: BreakingValue | null;
}

/** Tells the lost cars of findings of one tree; keeps what it has looked up of the cars. */
export class CarTeller {
  private readonly model: Model;
  private readonly ways: readonly (TreeWay & { readonly verdict: string })[];
  private readonly values = new Map<string, readonly CarValues[]>();

  constructor(model: Model, ways: readonly (TreeWay & { readonly verdict: string })[]) {
    this.model = model;
    this.ways = ways;
  }

  /** Numbers and value of the lost cars of one fault beside those that end rightly. */
  cars({ fault, samples, share }: FaultCars): LostOfFault {
    const lost = new Set(samples);
    const right = new Set<number>();
    for (const way of this.ways)
      if (way.fault === fault && (way.verdict === 'right' || way.verdict === 'inseparable'))
        for (const sample of way.samples) if (!lost.has(sample)) right.add(sample);
    return this.beside({ fault, samples, share }, [...right]);
  }

  /** The same beside other cars. */
  beside({ fault, samples, share }: FaultCars, right: readonly number[]): LostOfFault {
    const value = right.length === 0 ? null : breakingValue(this.valuesOf(fault), samples, right);
    const of = this.model.samples;
    return {
      cars: { fault, wrong: samples.length, of, share, value: value && plain(value) },
      value,
    };
  }

  private valuesOf(fault: string): readonly CarValues[] {
    const known = this.values.get(fault) ?? carValues(this.model, fault);
    this.values.set(fault, known);
    return known;
  }
}

/** One line for each fault of which something is left to say: its value, or that it was not named in the words. */
export function carNotes(all: readonly LostOfFault[]): string[] {
  return all.flatMap(({ cars, value }, index) => {
    const isWhole = cars.wrong === cars.of;
    if (isWhole && (index < LISTED_MAX - 1 || all.length <= LISTED_MAX)) return [];
    const head = `${provedFault(cars.fault)}: ${carsWords(cars)}`;
    if (isWhole) return [head];
    if (value) return [`${head}; ${breakingWords(value)}`];
    return [
      `${head}; ${cars.wrong < TELLING_MIN ? TOO_FEW : 'no single value of the car explains them'}`,
    ];
  });
}

/** How a fault is named in a finding. */
export function provedFault(fault: string): string {
  return fault === HEALTHY ? 'a healthy circuit' : fault;
}

function plain({ isMostly: _, ...value }: BreakingValue): NonNullable<LostCars['value']> {
  return value;
}
