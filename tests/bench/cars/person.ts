/** Who reads the instruments: exactly within what a meter can, or with a slip now and then. */
import { isNumberProbe, looksShownBy } from '../../../src/circuit/shown-by.ts';
import { type MeterUnit, type Test, UNIT_OF } from '../../../src/circuit/test.ts';
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

/** A test that the program asks for, and from how many volts peak to peak on it calls waves full; null where it does not say. */
export interface Asked {
  readonly test: Test;
  readonly fullVolts: number | null;
}

/** A test in which a slip is made. */
interface Slipped {
  readonly test: Test;
  readonly present: boolean;
  /** What it would have shown. */
  readonly right: () => Promise<Shows>;
}

const OVER_LIMIT: Said = { kind: 'reading', text: 'OL', plain: 'OL' };
/** One in so many readings is a slip. */
const SLIP_SHARE = 1 / 50;
/** A slip is made again so often when it is asked about. */
const AGAIN_SHARE = 0.5;
/** A workshop meter: 6000 counts, 0.5 % and 3 counts in volts, 1 % and 5 counts in ohms, 1 % and 3 in milliamperes. */
const COUNTS = 6000;
interface MeterFunction {
  readonly ranges: readonly number[];
  readonly share: number;
  readonly counts: number;
  readonly isSigned: boolean;
  /** Which of the meter's own errors it has. */
  readonly off: 'volts' | 'ohms';
  readonly textOf: (kept: number, range: number, count: number) => string;
}
const METER: Readonly<Record<MeterUnit, MeterFunction>> = {
  V: {
    ...{ ranges: [0.6, 6, 60, 600], share: 0.005, counts: 3, isSigned: true, off: 'volts' },
    textOf: (kept, range, count) =>
      range === 0.6 ? `${(kept * 1000).toFixed(1)} mV` : `${kept.toFixed(digits(count))} V`,
  },
  ohm: {
    ...{ ranges: [600, 6e3, 60e3, 600e3, 6e6, 60e6], share: 0.01, counts: 5 },
    ...{ isSigned: false, off: 'ohms' },
    textOf: (kept, range, count) =>
      range <= 600
        ? `${kept.toFixed(1)} ohm`
        : range <= 600e3
          ? `${(kept / 1e3).toFixed(digits(count / 1e3))} kohm`
          : `${(kept / 1e6).toFixed(digits(count / 1e6))} Mohm`,
  },
  A: {
    ...{ ranges: [0.06, 0.4], share: 0.01, counts: 3, isSigned: true, off: 'ohms' },
    textOf: (kept, _, count) => `${(kept * 1000).toFixed(digits(count * 1000))} mA`,
  },
};

export class Person {
  private readonly random: Random;
  private slips: boolean;
  /** This meter's own error, -1 to 1 of what it may have. */
  private readonly off: Readonly<Record<MeterFunction['off'], number>>;

  constructor(random: Random, name: PersonName) {
    this.random = random;
    this.slips = name === 'slipping';
    this.off = { volts: between(random, -1, 1), ohms: between(random, -1, 1) };
  }

  /** From now on reads rightly. */
  steady(): void {
    this.slips = false;
  }

  /** Does a test and says what it showed. `again` is asked when the program doubts the last answer. */
  async does(
    vehicle: Vehicle,
    { test, fullVolts }: Asked,
    present: boolean,
    again = false,
  ): Promise<SaidAnswer> {
    const right = () => vehicle.shows(test, present, fullVolts);
    if (!this.isSlip(again)) return { said: this.said(await right()), slipped: false };
    return { said: await this.slip(vehicle, { test, present, right }), slipped: true };
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
  read(value: number, unit: MeterUnit): Said {
    if (!Number.isFinite(value)) return OVER_LIMIT;
    const { ranges, share, counts, isSigned, off, textOf } = METER[unit];
    const range = ranges.find((one) => Math.abs(value) < one) ?? ranges.at(-1) ?? 600;
    const count = range / COUNTS;
    const shown =
      value * (1 + share * this.off[off]) +
      count * Math.round(between(this.random, -counts, counts));
    const kept = Math.round((isSigned ? shown : Math.max(0, shown)) / count) * count;
    return {
      kind: 'reading',
      text: textOf(kept, range, count),
      plain: `${kept.toFixed(digits(count))} ${unit}`,
    };
  }

  private said(shows: Shows): Said {
    if (shows.kind === 'look') return { kind: 'look', look: shows.look };
    return this.read(shows.value, shows.unit);
  }

  private async slip(vehicle: Vehicle, { test, present, right: shown }: Slipped): Promise<Said> {
    const { probe } = test;
    if (!isNumberProbe(probe)) {
      const right = await shown();
      const looks = looksShownBy(probe);
      return {
        kind: 'look',
        look: oneOf(
          this.random,
          looks.filter((look) => right.kind !== 'look' || look !== right.look),
        ),
      };
    }
    const kind = oneOf(this.random, ['pin-beside', 'millivolts', 'no-touch']);
    if (kind === 'no-touch')
      return probe.kind === 'ohms' ? OVER_LIMIT : this.read(0, UNIT_OF[probe.kind]);
    // In series a lead is on the wrong pin for nobody: it is refused there.
    if ((kind === 'millivolts' && probe.kind === 'volts') || probe.kind === 'amps') {
      const right = await shown();
      const value = right.kind === 'number' ? right.value : 0;
      return this.read(value / 1000, UNIT_OF[probe.kind]);
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
