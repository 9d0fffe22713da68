/** What one test shows on many cars, kept in numbers: thousands of tests and suspects are, for a whole session or class. */
import type { MeterUnit, Shown } from '../circuit/test.ts';
import type { Way } from './fact.ts';

/** The ways of many cars as plain numbers, car by car. */
export class KeptWays {
  /** Places of the values that the test depends on; null while nobody has looked. */
  felt: readonly number[] | null = null;
  /** How many ways each car has; the same for all. */
  private each = 0;
  /** By car and way: a number, or the place of a look in `looks`. */
  private readonly values: number[] = [];
  private readonly shares: number[] = [];
  private readonly looks: Extract<Shown, { kind: 'look' }>[] = [];
  private unit: MeterUnit | null = null;

  get count(): number {
    return this.each === 0 ? 0 : this.values.length / this.each;
  }

  /** Takes in one more car; throws where it has more or fewer ways than those before it. */
  add(ways: readonly Way[]): void {
    if (this.each === 0) this.each = ways.length;
    if (ways.length !== this.each || ways.length === 0)
      throw new Error(`kept-ways: ${ways.length} ways instead of ${this.each}`);
    for (const { shown, share } of ways) {
      this.shares.push(share);
      this.values.push(shown.kind === 'look' ? this.placeOf(shown) : shown.value);
      if (shown.kind === 'number') this.unit = shown.unit;
    }
  }

  /** Of a car by its number. */
  of(car: number): Way[] {
    return Array.from({ length: this.each }, (_, way) => {
      const at = car * this.each + way;
      const value = this.values[at]!;
      const { unit } = this;
      const shown: Shown = unit === null ? this.looks[value]! : { kind: 'number', value, unit };
      return { shown, share: this.shares[at]! };
    });
  }

  private placeOf(shown: Extract<Shown, { kind: 'look' }>): number {
    const at = this.looks.findIndex(({ look }) => look === shown.look);
    return at < 0 ? this.looks.push(shown) - 1 : at;
  }
}
