/** The results as tables in Markdown, an interval beside every share. */
import { calibrationTable } from './calibration.ts';
import { markdownTable } from './markdown-table.ts';
import { NO_ROWS } from './options.ts';
import type { RunLine } from './run-car.ts';
import { shareWords } from './wilson.ts';

type Lines = readonly RunLine[];
type Is = (line: RunLine) => boolean;
/** A column: its head, and what stands in it for some runs. */
type Column = readonly [head: string, cell: (runs: Lines) => string | number];

/** All tables over these lines. */
export function tablesOf(lines: Lines): string {
  const stated = lines.filter(({ person }) => person === 'exact').flatMap((line) => line.stated);
  const cells = cellsOf(lines);
  return [
    ...TABLES.flatMap(([heading, columns]) => [
      `\n### ${heading}\n`,
      markdownTable(
        ['cars', ...columns.map(([head]) => head)],
        cells.map(([name, runs]) => [name, ...columns.map(([, cell]) => cell(runs))]),
      ),
    ]),
    '\n### Stated chances\n',
    calibrationTable(stated),
  ].join('\n');
}

/** One cell for each circuit, stratum, mode, person and means, one over all circuits, and of each circuit over its rows. */
function cellsOf(lines: Lines): [string, Lines][] {
  const cells = new Map<string, RunLine[]>();
  const into = (name: string, one: RunLine) => {
    const found = cells.get(name);
    if (found) found.push(one);
    else cells.set(name, [one]);
  };
  const what = ({ stratum, mode, person, means }: RunLine) =>
    `${stratum}, ${mode}, ${person}, ${means}`;
  for (const one of lines) into(`${one.circuit}, ${what(one)}`, one);
  for (const one of lines) into(`all, ${what(one)}`, one);
  for (const one of lines.filter(isOfRow))
    for (const circuit of [one.circuit, 'all']) into(`${circuit}, all rows, ${one.mode}`, one);
  return [...cells];
}

/** The exact person, with everything at hand, on a car as described. */
const isOfRow: Is = ({ stratum, person, means }) =>
  person === 'exact' && means === 'all' && !NO_ROWS.includes(stratum);
const isAll: Is = () => true;
const isWhole: Is = ({ faults }) => faults.length === 0;
const isFaulty: Is = ({ faults }) => faults.length > 0;
/** One fault that is always there, in a run that was asked about it. */
const isSingle: Is = ({ takenFor }) => takenFor !== null;
/** The tests at hand tell the repair from every other: see `one-told.ts`. */
const canBeTold: Is = ({ takenFor }) => takenFor === 'none';

/** Share of the runs of one kind that are of another. */
function share(head: string, is: Is, among: Is = isAll): Column {
  return [
    head,
    (runs) => {
      const base = runs.filter(among);
      return shareWords(base.filter(is).length, base.length);
    },
  ];
}

function total(runs: Lines, of: (line: RunLine) => number): number {
  return runs.reduce((sum, line) => sum + of(line), 0);
}

function mean(head: string, of: (line: RunLine) => number): Column {
  return [head, (runs) => (total(runs, of) / Math.max(1, runs.length)).toFixed(1)];
}

const TABLES: readonly (readonly [heading: string, columns: readonly Column[]])[] = [
  [
    'Conclusions',
    [
      ['runs', (runs) => runs.length],
      share('right', ({ right }) => right),
      share('right alone', ({ rightAlone }) => rightAlone),
      share(
        'right, fault in the file',
        ({ right }) => right,
        ({ inFile }) => inFile,
      ),
      share('wrong', ({ wrong }) => wrong),
      share('no end', ({ unended }) => unended),
      share('whole car told to repair', ({ healthyRepaired }) => healthyRepaired, isWhole),
      share('misfit told', ({ misfit }) => misfit),
    ],
  ],
  [
    'Certainty',
    [
      share('wrong and over 80 % sure', ({ wrongSure }) => wrongSure),
      share('PROVEN and right', ({ provenRight }) => provenRight),
      share(
        'of those where one repair was told',
        ({ provenRight }) => provenRight,
        ({ rightAlone, faults }) => rightAlone && faults.length > 0,
      ),
      share('one repair can be told', canBeTold, isSingle),
      share(
        'of these PROVEN, right and one',
        ({ provenRight, rightAlone }) => provenRight && rightAlone,
        canBeTold,
      ),
      share('PROVEN and wrong', ({ provenWrong }) => provenWrong),
      ['slips', (runs) => total(runs, ({ slipsMade }) => slipsMade)],
      [
        'slips that end silently in a wrong repair',
        (runs) =>
          shareWords(
            total(runs, ({ slips, wrong, misfit }) => (wrong && !misfit ? slips : 0)),
            total(runs, ({ slipsMade }) => slipsMade),
          ),
      ],
      share(
        'right after one step back',
        ({ backRight }) => backRight === true,
        ({ backRight }) => backRight !== null,
      ),
    ],
  ],
  [
    'What it took',
    [
      mean('minutes', ({ minutes }) => minutes),
      mean('tests', ({ tests }) => tests),
      mean('ms a run', ({ ms }) => ms),
      mean('of that ngspice', ({ spiceMs }) => spiceMs),
      mean('of that the program', ({ programMs }) => programMs),
    ],
  ],
  [
    'How the cars were drawn',
    [
      [
        'healthy car works',
        (runs) =>
          shareWords(
            runs.length,
            total(runs, ({ triedValues }) => triedValues),
          ),
      ],
      [
        'fault is noticed',
        (runs) => {
          const faulty = runs.filter(isFaulty);
          return shareWords(
            faulty.length,
            total(faulty, ({ triedFaults }) => triedFaults),
          );
        },
      ],
      share('fault not in the file', ({ inFile }) => !inFile, isFaulty),
      [
        'groups looked at, and smaller ones found',
        (runs) => {
          const looked = runs.filter(({ smallerBy }) => smallerBy !== null);
          return `${looked.length}, ${looked.filter(({ smallerBy }) => smallerBy !== 'none').length}`;
        },
      ],
      ['ngspice without an answer', (runs) => total(runs, ({ unsolved }) => unsolved)],
    ],
  ],
];
