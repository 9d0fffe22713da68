/**
 * Which cars stand for a fault: the first points of the low-discrepancy sequence whose healthy car works and whose
 * module notices the fault. Rejection keeps what is left even over the cars that come to the shop.
 */
import { HEALTHY } from './circuit.ts';

/** So many points are tried for each car that is wanted, and so many at least. */
const TRIES_EACH = 32;
const TRIES_MIN = 256;

/** Says which points stand for a fault. */
export class CarPicker {
  private readonly works: (index: number) => boolean;
  private readonly complains: (faultId: string, index: number) => boolean;
  private readonly working: boolean[] = [];
  private readonly picked = new Map<string, { readonly found: number[]; tried: number }>();

  constructor(
    works: (index: number) => boolean,
    complains: (faultId: string, index: number) => boolean,
  ) {
    this.works = works;
    this.complains = complains;
  }

  /**
   * Number in the sequence of car `sample` of a fault, `healthy` for none; -1 of -1. Where too few points are right, those
   * there are come again; where none is, those of the healthy circuit; where that never works, the sequence itself. The
   * answer does not depend on what was asked before.
   */
  indexOf(faultId: string, sample: number): number {
    if (sample < 0) return -1;
    let list = this.picked.get(faultId);
    if (!list) {
      list = { found: [], tried: 0 };
      this.picked.set(faultId, list);
    }
    const limit = Math.max(TRIES_MIN, TRIES_EACH * (sample + 1));
    while (list.found.length <= sample && list.tried < limit) {
      if (this.isRight(faultId, list.tried)) list.found.push(list.tried);
      list.tried += 1;
    }
    if (sample < list.found.length && list.found[sample]! < limit) return list.found[sample]!;
    const within = list.found.filter((index) => index < limit);
    if (within.length > 0) return within[sample % within.length]!;
    return faultId === HEALTHY ? sample : this.indexOf(HEALTHY, sample);
  }

  private isRight(faultId: string, index: number): boolean {
    this.working[index] ??= this.works(index);
    return this.working[index] && (faultId === HEALTHY || this.complains(faultId, index));
  }
}
