/** By which outcome each car of a fault leaves a step: cars are bits of a number, and each is read once. */
import type { Model } from '../circuit/model.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { outcomeOf } from './walk-faults.ts';
import type { TreePlace } from './way-tree.ts';

/** Cars a fault on ways on which a step could not be done: each a bit of a number. */
export const CARS_BESIDE = 32;

/** The cars that leave a step by one outcome, and where it leads. */
export interface Exit {
  readonly name: string;
  readonly to: TreePlace;
  cars: number;
}

interface Exits {
  /** Cars that were read. */
  known: number;
  readonly all: Exit[];
}

/** Of one tree. Kept while a fault is walked; those of a healthy circuit for longer. */
export class CarExits {
  private readonly model: Model;
  /** By fault, then by the number of the place. */
  private readonly kept = new Map<string, Exits[]>();

  constructor(model: Model) {
    this.model = model;
  }

  get cars(): number {
    return Math.min(CARS_BESIDE, this.model.samples);
  }

  forget(fault: string): void {
    if (fault !== HEALTHY) this.kept.delete(fault);
  }

  /** The outcomes by which `wanted` cars leave a place that is read; others may leave by them as well. */
  of(fault: string, place: TreePlace, wanted: number): readonly Exit[] {
    let ofFault = this.kept.get(fault);
    if (!ofFault) {
      ofFault = [];
      this.kept.set(fault, ofFault);
    }
    const exits = ofFault[place.number] ?? { known: 0, all: [] };
    ofFault[place.number] = exits;
    if ((wanted & ~exits.known) !== 0) this.read(exits, fault, place, wanted);
    return exits.all;
  }

  private read(exits: Exits, fault: string, { read, ways }: TreePlace, wanted: number): void {
    const { step, test } = read!;
    for (let sample = 0; sample < this.cars; sample += 1) {
      const bit = 1 << sample;
      if ((wanted & bit) === 0 || (exits.known & bit) !== 0) continue;
      exits.known |= bit;
      const name = outcomeOf(step, this.model.shows(fault, test, sample));
      const way = name === null ? undefined : ways.find((one) => one.name === name);
      if (name === null || !way) continue;
      const exit = exits.all.find((one) => one.name === name);
      if (exit) exit.cars |= bit;
      else exits.all.push({ name, to: way.to, cars: bit });
    }
  }
}
