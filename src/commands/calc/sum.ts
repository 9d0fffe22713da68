/** What one of the small sums is, and how it reads its options. */
import { parseReading } from '../../quantity/parse-reading.ts';
import type { Unit } from '../../quantity/quantity.ts';
import { safeText } from '../../source/safe-text.ts';
import type { Arguments } from '../command.ts';

/** A table of words and values for people, and the same as data in SI units. */
export interface SumResult {
  readonly lines: readonly (readonly [label: string, value: string])[];
  readonly data: Readonly<Record<string, unknown>>;
  /** True when the sum is done and its outcome says that the input is wrong: a VIN that cannot be. */
  readonly wrong?: boolean;
}

/** One small sum with its help. */
export interface Sum {
  readonly summary: string;
  readonly usage: string;
  readonly run: (options: Options) => SumResult;
}

/** Used wrongly: caught once by the command, which says it and ends with code 2. */
export class WrongUse extends Error {}

/** Options of one call, read with their units as a person would type them. */
export class Options {
  private readonly args: Arguments;
  readonly ascii: boolean;

  constructor(args: Arguments, ascii: boolean) {
    this.args = args;
    this.ascii = ascii;
  }

  /** The words after the sum's name. */
  words(): readonly string[] {
    return this.args.positionals.slice(1);
  }

  /** The same as one: the code or the VIN. */
  word(what: string): string {
    const word = this.args.positionals.slice(1).join(' ');
    if (word === '') throw new WrongUse(`give ${what}`);
    return word;
  }

  flag(name: string): boolean {
    return this.args.values[name] === true;
  }

  text(name: string): string | undefined {
    const value = this.args.values[name];
    return typeof value === 'string' ? value : undefined;
  }

  /** The value of `--name` in the SI unit, or undefined when it was not given; `usual` decides between m and M. */
  maybe(name: string, unit: Unit, usual?: { low: number; high: number }): number | undefined {
    const typed = this.text(name);
    if (typed === undefined) return undefined;
    const parse = parseReading(typed, { unit, ...(usual && { usual }) });
    if (parse.status === 'read') return parse.quantity.value;
    const shown = safeText(typed);
    if (parse.status === 'unfinished') throw new WrongUse(`--${name} "${shown}" is not finished`);
    if (parse.status === 'refused') throw new WrongUse(`--${name} "${shown}": ${parse.words}`);
    const choices = parse.choices.map((choice) => choice.words).join(' or ');
    throw new WrongUse(`--${name} "${shown}": ${parse.words} ${choices}`);
  }

  /** The value of `--name`, which has to be there. */
  need(name: string, unit: Unit, usual?: { low: number; high: number }): number {
    const value = this.maybe(name, unit, usual);
    if (value === undefined) throw new WrongUse(`--${name} is missing`);
    return value;
  }

  /** As `need`, and above zero. */
  needAboveZero(name: string, unit: Unit): number {
    const value = this.need(name, unit);
    if (!(value > 0)) throw new WrongUse(`--${name} must be above zero`);
    return value;
  }

  /** A whole number, not below `least`. */
  whole(name: string, least: number, standard?: number): number {
    const value = this.maybe(name, '1') ?? standard;
    if (value === undefined) throw new WrongUse(`--${name} is missing`);
    if (!Number.isInteger(value) || value < least)
      throw new WrongUse(`--${name} must be a whole number from ${least}`);
    return value;
  }
}
