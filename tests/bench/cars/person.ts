/** Who reads the instruments: exactly within what a meter can, or with a slip now and then. */
import { LOOKS, type Test } from '../../../src/circuit/test.ts';
import { plugsOf } from './drawing.ts';
import { between, oneOf, type Random } from './seeded.ts';
import type { Shows, Vehicle } from './vehicle.ts';

export type PersonName = 'exact' | 'slipping';

/** What is typed or chosen. */
export type Said =
  /** `text` as the display has it, `plain` without a prefix. */
  | { readonly kind: 'reading'; readonly text: string; readonly plain: string }
  | { readonly kind: 'look'; readonly look: string };

export interface SaidAnswer {
  readonly said: Said;
  readonly slipped: boolean;
}

const OVER_LIMIT: Said = { kind: 'reading', text: 'OL', plain: 'OL' };
/** One in so many readings is a slip. */
const SLIP_SHARE = 1 / 50;
/** A slip is made again so often when it is asked about. */
const AGAIN_SHARE = 0.5;
/** A workshop meter: 6000 counts, 0.5 % and 3 counts in volts, 1 % and 5 counts in ohms. */
const COUNTS = 6000;
const VOLT_RANGES = [0.6, 6, 60, 600];
const OHM_RANGES = [600, 6e3, 60e3, 600e3, 6e6, 60e6];

export class Person {
  private readonly random: Random;
  private slips: boolean;
  /** This meter's own error, -1 to 1 of what it may have. */
  private readonly voltsOff: number;
  private readonly ohmsOff: number;

  constructor(random: Random, name: PersonName) {
    this.random = random;
    this.slips = name === 'slipping';
    this.voltsOff = between(random, -1, 1);
    this.ohmsOff = between(random, -1, 1);
  }

  /** From now on reads rightly. */
  steady(): void {
    this.slips = false;
  }

  /** Does a test and says what it showed. `again` is asked when the program doubts the last answer. */
  async does(vehicle: Vehicle, test: Test, present: boolean, again = false): Promise<SaidAnswer> {
    if (!this.isSlip(again))
      return { said: this.said(await vehicle.shows(test, present)), slipped: false };
    return { said: await this.slip(vehicle, test, present), slipped: true };
  }

  /** Looks at a thing and says how it is. */
  sees(look: 'sound' | 'faulty', again: boolean): SaidAnswer {
    if (!this.isSlip(again)) return { said: { kind: 'look', look }, slipped: false };
    return { said: { kind: 'look', look: look === 'sound' ? 'faulty' : 'sound' }, slipped: true };
  }

  private isSlip(again: boolean): boolean {
    return this.slips && this.random() < (again ? AGAIN_SHARE : SLIP_SHARE);
  }

  /** A number as this meter shows it. */
  read(value: number, unit: 'V' | 'ohm'): Said {
    if (!Number.isFinite(value)) return OVER_LIMIT;
    const ranges = unit === 'V' ? VOLT_RANGES : OHM_RANGES;
    const range = ranges.find((one) => Math.abs(value) < one) ?? ranges.at(-1) ?? 600;
    const count = range / COUNTS;
    const [share, counts, off] = unit === 'V' ? [0.005, 3, this.voltsOff] : [0.01, 5, this.ohmsOff];
    const shown =
      value * (1 + share * off) + count * Math.round(between(this.random, -counts, counts));
    const kept = Math.round((unit === 'ohm' ? Math.max(0, shown) : shown) / count) * count;
    const text =
      unit === 'V'
        ? range === 0.6
          ? `${(kept * 1000).toFixed(1)} mV`
          : `${kept.toFixed(digits(count))} V`
        : range <= 600
          ? `${kept.toFixed(1)} ohm`
          : range <= 600e3
            ? `${(kept / 1e3).toFixed(digits(count / 1e3))} kohm`
            : `${(kept / 1e6).toFixed(digits(count / 1e6))} Mohm`;
    return { kind: 'reading', text, plain: `${kept.toFixed(digits(count))} ${unit}` };
  }

  private said(shows: Shows): Said {
    if (shows.kind === 'look') return { kind: 'look', look: shows.look };
    return this.read(shows.value, shows.unit);
  }

  private async slip(vehicle: Vehicle, test: Test, present: boolean): Promise<Said> {
    const { probe } = test;
    if (probe.kind !== 'volts' && probe.kind !== 'ohms') {
      const right = await vehicle.shows(test, present);
      const looks: readonly string[] = LOOKS[probe.kind];
      return {
        kind: 'look',
        look: oneOf(
          this.random,
          looks.filter((look) => right.kind !== 'look' || look !== right.look),
        ),
      };
    }
    const kind = oneOf(this.random, ['pin-beside', 'millivolts', 'no-touch']);
    if (kind === 'no-touch') return probe.kind === 'ohms' ? OVER_LIMIT : this.read(0, 'V');
    if (kind === 'millivolts' && probe.kind === 'volts') {
      const right = await vehicle.shows(test, present);
      const value = right.kind === 'number' ? right.value : 0;
      return this.read(value / 1000, 'V');
    }
    const plus = besideOf(vehicle, probe.plus, this.random);
    return this.said(await vehicle.shows({ ...test, probe: { ...probe, plus } }, present));
  }
}

/** Another pin of the same plug, on the same side. */
function besideOf({ car }: Vehicle, terminal: string, random: Random): string {
  const [part = '', pin = '', side] = terminal.split('.');
  const pins = plugsOf(car.drawing).find((one) => one.part === part)?.pins ?? [];
  const others = pins.filter((one) => one !== pin);
  if (others.length === 0) return terminal;
  const other = oneOf(random, others);
  return side ? `${part}.${other}.${side}` : `${part}.${other}`;
}

/** Places behind the point of a display that counts in `count`. */
function digits(count: number): number {
  return Math.max(0, Math.round(-Math.log10(count)));
}
