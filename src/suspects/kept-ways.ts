/** What one test shows on many cars, kept in numbers: thousands of tests and suspects are, for a whole session or class. */
import type { MeterUnit, Shown } from '../circuit/test.ts';
import type { Way } from './fact.ts';

/** The ways of many cars as plain numbers. */
export class KeptWays {
  /** Places of the values that the test depends on; null while nobody has looked. */
  felt: readonly number[] | null = null;
  /** By car: where its ways begin in `values`, and where they end. */
  private readonly starts: number[] = [];
  private readonly ends: number[] = [];
  /** A number, or the place of a look in `looks`. */
  private readonly values: number[] = [];
  private readonly shares: number[] = [];
  private readonly looks: Extract<Shown, { kind: 'look' }>[] = [];
  private unit: MeterUnit | null = null;

  /** Of a car by its number; worked out where it is not kept. */
  at(car: number, waysOf: (car: number) => readonly Way[]): readonly Way[] {
    const from = this.starts[car];
    if (from === undefined) {
      const ways = waysOf(car);
      this.keep(car, ways);
      return ways;
    }
    const { unit } = this;
    return Array.from({ length: this.ends[car]! - from }, (_, way) => {
      const value = this.values[from + way]!;
      const shown: Shown = unit === null ? this.looks[value]! : { kind: 'number', value, unit };
      return { shown, share: this.shares[from + way]! };
    });
  }

  private keep(car: number, ways: readonly Way[]): void {
    this.starts[car] = this.values.length;
    for (const { shown, share } of ways) {
      this.shares.push(share);
      this.values.push(shown.kind === 'look' ? this.placeOf(shown) : shown.value);
      if (shown.kind === 'number') this.unit = shown.unit;
    }
    this.ends[car] = this.values.length;
  }

  private placeOf(shown: Extract<Shown, { kind: 'look' }>): number {
    const at = this.looks.findIndex(({ look }) => look === shown.look);
    return at < 0 ? this.looks.push(shown) - 1 : at;
  }
}
