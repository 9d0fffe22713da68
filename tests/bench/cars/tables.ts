/** The results as tables in Markdown, an interval beside every share. */
import type { RunLine } from './run-car.ts';
import { shareWords } from './wilson.ts';

/** All tables over these lines. */
export function tablesOf(lines: readonly RunLine[]): string {
  return [
    heading('Conclusions'),
    conclusions(lines),
    heading('Certainty'),
    certainty(lines),
    heading('What it took'),
    effort(lines),
    heading('Stated chances'),
    calibration(lines),
    heading('How the cars were drawn'),
    drawing(lines),
  ].join('\n');
}

function heading(words: string): string {
  return `\n### ${words}\n`;
}

function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const line = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

type Cell = readonly [name: string, lines: readonly RunLine[]];

/** One cell for each circuit, stratum, mode, person and means, and one over all of a mode. */
function cellsOf(lines: readonly RunLine[]): Cell[] {
  const cells = new Map<string, RunLine[]>();
  const into = (name: string, one: RunLine) => cells.set(name, [...(cells.get(name) ?? []), one]);
  for (const one of lines) {
    const { circuit, stratum, mode, person, means } = one;
    into([circuit, stratum, mode, person, means].join(', '), one);
  }
  for (const one of lines)
    into(`all, ${one.stratum}, ${one.mode}, ${one.person}, ${one.means}`, one);
  return [...cells];
}

function count(lines: readonly RunLine[], is: (line: RunLine) => boolean): number {
  return lines.filter(is).length;
}

function conclusions(lines: readonly RunLine[]): string {
  return table(
    [
      'cars',
      'runs',
      'right',
      'right alone',
      'wrong',
      'no end',
      'whole car told to repair',
      'misfit told',
    ],
    cellsOf(lines).map(([name, runs]) => {
      const of = runs.length;
      const whole = runs.filter(({ faults }) => faults.length === 0);
      return [
        name,
        of,
        shareWords(
          count(runs, ({ right }) => right),
          of,
        ),
        shareWords(
          count(runs, ({ rightAlone }) => rightAlone),
          of,
        ),
        shareWords(
          count(runs, ({ wrong }) => wrong),
          of,
        ),
        shareWords(
          count(runs, ({ unended }) => unended),
          of,
        ),
        shareWords(
          count(whole, ({ healthyRepaired }) => healthyRepaired),
          whole.length,
        ),
        shareWords(
          count(runs, ({ misfit }) => misfit),
          of,
        ),
      ];
    }),
  );
}

function certainty(lines: readonly RunLine[]): string {
  return table(
    [
      'cars',
      'wrong and over 80 % sure',
      'PROVEN and right',
      'PROVEN and wrong',
      'slips',
      'silent slips',
    ],
    cellsOf(lines).map(([name, runs]) => {
      const of = runs.length;
      const slipped = runs.filter(({ slips }) => slips > 0);
      return [
        name,
        shareWords(
          count(runs, ({ wrongSure }) => wrongSure),
          of,
        ),
        shareWords(
          count(runs, ({ provenRight }) => provenRight),
          of,
        ),
        shareWords(
          count(runs, ({ provenWrong }) => provenWrong),
          of,
        ),
        runs.reduce((sum, { slips }) => sum + slips, 0),
        shareWords(
          count(slipped, ({ wrong, misfit }) => wrong && !misfit),
          slipped.length,
        ),
      ];
    }),
  );
}

function mean(lines: readonly RunLine[], of: (line: RunLine) => number): string {
  return (lines.reduce((sum, line) => sum + of(line), 0) / Math.max(1, lines.length)).toFixed(1);
}

function effort(lines: readonly RunLine[]): string {
  return table(
    ['cars', 'minutes', 'tests', 'ms a run', 'of that ngspice', 'of that the program'],
    cellsOf(lines).map(([name, runs]) => [
      name,
      mean(runs, ({ minutes }) => minutes),
      mean(runs, ({ tests }) => tests),
      mean(runs, ({ ms }) => ms),
      mean(runs, ({ spiceMs }) => spiceMs),
      mean(runs, ({ programMs }) => programMs),
    ]),
  );
}

/** Edges of the bins of stated chances. */
const EDGES = [0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1.000001];

function calibration(lines: readonly RunLine[]): string {
  const stated = lines.filter(({ person }) => person === 'exact').flatMap((line) => line.stated);
  const points = [2, 4, 6, 0];
  return table(
    ['after', 'stated', 'count', 'mean stated', 'right'],
    points.flatMap((after) =>
      EDGES.slice(0, -1).flatMap((low, index) => {
        const high = EDGES[index + 1] ?? 1;
        const bin = stated.filter(
          (one) => one.after === after && one.chance >= low && one.chance < high,
        );
        if (bin.length === 0) return [];
        const total = bin.reduce((sum, { chance }) => sum + chance, 0);
        return [
          [
            after === 0 ? 'the end' : `${after} readings`,
            `${Math.round(100 * low)} to ${Math.round(100 * Math.min(1, high))} %`,
            bin.length,
            `${((100 * total) / bin.length).toFixed(1)} %`,
            shareWords(bin.filter(({ right }) => right).length, bin.length),
          ],
        ];
      }),
    ),
  );
}

function drawing(lines: readonly RunLine[]): string {
  return table(
    [
      'cars',
      'healthy car works',
      'fault is noticed',
      'fault not in the file',
      'ngspice without an answer',
    ],
    cellsOf(lines).map(([name, runs]) => {
      const values = runs.reduce((sum, { triedValues }) => sum + triedValues, 0);
      const faulty = runs.filter(({ faults }) => faults.length > 0);
      const tried = faulty.reduce((sum, { triedFaults }) => sum + triedFaults, 0);
      return [
        name,
        shareWords(runs.length, values),
        shareWords(faulty.length, tried),
        shareWords(
          count(faulty, ({ inFile }) => !inFile),
          faulty.length,
        ),
        runs.reduce((sum, { unsolved }) => sum + unsolved, 0),
      ];
    }),
  );
}
