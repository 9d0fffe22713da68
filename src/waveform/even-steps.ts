/** Whether times, seen one by one, are evenly spaced: kept in a few numbers however many there are. */

/** Steps may differ from their mean by this share, and by the rounding of the last digit written. */
const STEP_SHARE = 0.5;
/** Rows whose times are looked at together for the digits they are written with. */
const STRETCH = 64;

/** Takes in the times of a file's rows, and says of the whole whether their steps are alike. */
export class EvenSteps {
  private count = 0;
  private first = 0;
  private firstRow = 0;
  private last = 0;
  private lastRow = 0;
  private least = Number.POSITIVE_INFINITY;
  private most = Number.NEGATIVE_INFINITY;
  private mostLine = 0;
  private leastLine = 0;
  /** Power of ten of a time's last digit: the coarsest of the stretches, each judged by its finest. */
  private power = Number.NEGATIVE_INFINITY;
  private stretchPower = Number.POSITIVE_INFINITY;

  /** Takes the time of row `row`, written with its last digit at `lastPower`, in line `line`. */
  add(time: number, lastPower: number, row: number, line: number): void {
    if (lastPower < this.stretchPower) this.stretchPower = lastPower;
    if (this.count % STRETCH === STRETCH - 1) this.closeStretch();
    if (this.count === 0) {
      this.first = time;
      this.firstRow = row;
    } else {
      const step = (time - this.last) / (row - this.lastRow);
      if (step < this.least) {
        this.least = step;
        this.leastLine = line;
      }
      if (step > this.most) {
        this.most = step;
        this.mostLine = line;
      }
    }
    this.last = time;
    this.lastRow = row;
    this.count += 1;
  }

  /** Time of the first row. */
  start(): number {
    return this.first - this.firstRow * this.mean();
  }

  /** Mean step, or null with the line where the steps differ most when they are not even. */
  step(): { readonly step: number } | { readonly step: null; readonly line: number } {
    if (!Number.isFinite(this.power)) this.closeStretch();
    const step = this.mean();
    const slack = STEP_SHARE * step + 2 * 10 ** this.power;
    if (!(step > 0) || this.least < step - slack) return { step: null, line: this.leastLine };
    return this.most > step + slack ? { step: null, line: this.mostLine } : { step };
  }

  private mean(): number {
    return this.count < 2 ? Number.NaN : (this.last - this.first) / (this.lastRow - this.firstRow);
  }

  private closeStretch(): void {
    if (Number.isFinite(this.stretchPower) && this.stretchPower > this.power)
      this.power = this.stretchPower;
    this.stretchPower = Number.POSITIVE_INFINITY;
  }
}
