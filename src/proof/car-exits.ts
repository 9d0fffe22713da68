/** By which outcome each car of a fault leaves a step: cars are bits of a number, and each is read once. */
import type { Model } from '../circuit/model.ts';
import type { LookStep, MeasureStep } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { outcomeOf } from './walk-faults.ts';

/** Cars a fault on ways on which a step could not be done: each a bit of a number. */
export const CARS_BESIDE = 32;

/** Kept while a fault is walked; those of a healthy circuit for longer. */
export class CarExits {
  private readonly model: Model;
  private readonly kept = new Map<string, Map<string, Exits>>();

  constructor(model: Model) {
    this.model = model;
  }

  get cars(): number {
    return Math.min(CARS_BESIDE, this.model.samples);
  }

  forget(fault: string): void {
    if (fault !== HEALTHY) this.kept.delete(fault);
  }

  of(fault: string, step: MeasureStep | LookStep, wanted: number): Exits {
    const exits = this.kept.get(fault)?.get(step.id) ?? this.newExits(fault, step.id);
    if ((wanted & ~exits.known) === 0) return exits;
    const test = testOf(step)!;
    for (let sample = 0; sample < this.cars; sample += 1) {
      const bit = 1 << sample;
      if ((wanted & bit) === 0 || (exits.known & bit) !== 0) continue;
      exits.known |= bit;
      const outcome = outcomeOf(step, this.model.shows(fault, test, sample));
      if (outcome === null) continue;
      exits.byOutcome.set(outcome, (exits.byOutcome.get(outcome) ?? 0) | bit);
    }
    return exits;
  }

  private newExits(fault: string, step: string): Exits {
    const ofFault = this.kept.get(fault) ?? new Map<string, Exits>();
    this.kept.set(fault, ofFault);
    const exits = { known: 0, byOutcome: new Map<string, number>() };
    ofFault.set(step, exits);
    return exits;
  }
}

interface Exits {
  /** Cars that were read. */
  known: number;
  readonly byOutcome: Map<string, number>;
}
