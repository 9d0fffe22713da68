/** What the bench is asked: `npm run bench cars -- --circuits hall-module-fed --runs 50 --modes tree,free`. */
import { parseArgs } from 'node:util';
import { DRAWINGS } from './drawing.ts';
import { MEANS, type MeansName } from './means.ts';
import type { PersonName } from './person.ts';
import type { Mode } from './run-car.ts';
import { STRATA } from './strata.ts';

export interface BenchOptions {
  readonly circuits: readonly string[];
  readonly strata: readonly string[];
  readonly modes: readonly Mode[];
  readonly persons: readonly PersonName[];
  readonly means: readonly MeansName[];
  /** Runs of a circuit, stratum, person and means, by mode. */
  readonly runs: Readonly<Record<Mode, number>>;
  /** Only the runs with these numbers, for a second look at them; all where it is empty. */
  readonly only: readonly number[];
  readonly weights: 'file' | 'even';
  /** Whether one repair can be told is asked in every so many-th run of a cell: it takes longer than the run itself. */
  readonly toldEvery: number;
  /** The cells of docs/cars.md in place of the ones above: see `cellsOf`. */
  readonly published: boolean;
  /** With them, every row of the exact person so many times along the tree; 0 for as shipped and all free only. */
  readonly rows: number;
  readonly workers: number;
  /** Puts the tables into docs/cars.md. */
  readonly write: boolean;
  /** Compares the vehicle with the program's model first. */
  readonly agreement: boolean;
}

const MODES = ['tree', 'free'] as const;
const PERSONS = ['exact', 'slipping'] as const;
const DEFAULT_RUNS = 10;
const FULL_RUNS = { tree: 1000, free: 300 };
/** Of as many runs in free order as along the tree. */
const FREE_SHARE = 0.3;
/** Strata that are no rows: a value that nobody described, a fault that is not always there, two at once. */
export const NO_ROWS: readonly string[] = ['outside', 'intermittent', 'two-faults'];

/** Options from a command line; throws with what is known where a word is not. */
export function optionsFrom(argv: readonly string[]): BenchOptions {
  const from = argv.findIndex((word) => word.startsWith('--'));
  const { values } = parseArgs({
    args: from < 0 ? [] : argv.slice(from).filter((word) => word !== '--'),
    options: {
      circuits: { type: 'string', default: 'all' },
      strata: { type: 'string', default: 'nothing-off,all-free' },
      modes: { type: 'string', default: 'tree' },
      persons: { type: 'string', default: 'exact' },
      means: { type: 'string', default: 'all' },
      runs: { type: 'string' },
      only: { type: 'string' },
      weights: { type: 'string', default: 'file' },
      'told-every': { type: 'string', default: '1' },
      published: { type: 'boolean', default: false },
      rows: { type: 'string' },
      workers: { type: 'string', default: '2' },
      full: { type: 'boolean', default: false },
      write: { type: 'boolean', default: false },
      agreement: { type: 'boolean', default: false },
    },
  });
  const circuits = DRAWINGS.map(({ circuit }) => circuit);
  const strata = STRATA.map(({ name }) => name);
  const runs = values.runs === undefined ? null : whole('runs', values.runs);
  const usual = values.full ? FULL_RUNS : { tree: DEFAULT_RUNS, free: DEFAULT_RUNS };
  return {
    circuits: listed('circuits', values.circuits, circuits),
    // With all of them "all" stands for every stratum; the means have one of that name.
    strata:
      values.full && values.strata === undefined ? strata : listed('strata', values.strata, strata),
    modes: listed('modes', values.modes, MODES),
    persons: listed('persons', values.persons, PERSONS),
    means: values.means === 'every' ? MEANS : listed('means', values.means, MEANS),
    runs: runs === null ? usual : { tree: runs, free: runs },
    only: values.only?.split(',').map(Number) ?? [],
    weights: values.weights === 'even' ? 'even' : 'file',
    toldEvery: whole('told-every', values['told-every']),
    published: values.published,
    rows: values.rows === undefined ? 0 : whole('rows', values.rows),
    workers: whole('workers', values.workers),
    write: values.write,
    agreement: values.agreement,
  };
}

/** What is crossed with each other in one part of the bench. */
export type Cells = Pick<BenchOptions, 'strata' | 'modes' | 'persons' | 'means' | 'runs'>;

/**
 * The parts that are run. Published are the exact person with everything on cars as shipped and all free, `runs` each, or
 * on every row, `rows` each; and with half as many as `runs`: one who slips, cars beyond their ranges, faults that come and
 * go, without a scope, without live data, with a plug out of reach, and, without `rows`, the free order.
 */
export function cellsOf(options: BenchOptions): readonly Cells[] {
  if (!options.published) return [options];
  const half = Math.ceil(options.runs.tree / 2);
  const main: Cells = {
    ...{ strata: ['nothing-off', 'all-free'], modes: ['tree'], persons: ['exact'] },
    ...{ means: ['all'], runs: options.runs },
  };
  const fewer: Cells = { ...main, strata: ['all-free'], runs: { tree: half, free: half } };
  const { rows } = options;
  const every: Cells = {
    ...main,
    strata: STRATA.map(({ name }) => name).filter((name) => !NO_ROWS.includes(name)),
    modes: MODES,
    runs: { tree: rows, free: Math.floor(FREE_SHARE * rows) },
  };
  return [
    rows > 0 ? every : main,
    { ...fewer, persons: ['slipping'] },
    { ...fewer, strata: ['outside'] },
    { ...fewer, strata: ['intermittent'] },
    { ...fewer, means: ['no-scope', 'no-live-data', 'plug-out-of-reach'] },
    ...(rows > 0 ? [] : [{ ...fewer, modes: ['free'] } satisfies Cells]),
  ];
}

function listed<T extends string>(option: string, text: string, known: readonly T[]): readonly T[] {
  const hasAll = known.some((one) => one === 'all');
  if (text === 'all' && !hasAll) return known;
  return text.split(',').map((word) => {
    const found = known.find((one) => one === word.trim());
    if (found === undefined)
      throw new Error(`cars: --${option} has no "${word}"; known: ${known.join(', ')}`);
    return found;
  });
}

function whole(option: string, text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1)
    throw new Error(`cars: --${option} is a whole number from 1 on, not "${text}"`);
  return value;
}
