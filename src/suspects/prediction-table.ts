/**
 * What every test would show under every suspect, once for each sample of the tolerances. The thinking of this room is
 * done over this table and nothing else, so it needs no circuit: whoever can answer "what is shown" can use it. A test
 * is computed when it is first asked for. What the tests of a circuit are, `test-entries.ts` says.
 */
import type { Look, MeterUnit, Shown, VehicleState } from '../circuit/test.ts';

/** A fault that may be there, or the circuit without one (`HEALTHY`). */
export interface Candidate {
  readonly id: string;
  readonly words?: string;
  /** Faults with the same repair need not be told apart. */
  readonly repair: string;
  readonly repairWords?: string;
  /** Relative weight before any reading. */
  readonly weight: number;
  /** Names of the things it sits in. */
  readonly subject?: readonly string[];
}

/** Id of the candidate that stands for "nothing is wrong", and of its repair. */
export const HEALTHY = 'healthy';

/** A test that the person could do. */
export interface TableTest {
  readonly id: string;
  readonly words?: string;
  /** The kind of test as the trade has it: reference, ground, signal, injection, ... */
  readonly family: string;
  /** Minutes for the reading itself, everything being in place. */
  readonly minutes: number;
  readonly state: VehicleState;
  /** Parts whose connector is off. */
  readonly unplugged: readonly string[];
  /** What has to be got at: terminals or connectors, as fine as the caller wants access to be counted. */
  readonly reaches: readonly string[];
  /** The one among `reaches` that is a control module, which takes longer to get at. */
  readonly module?: string;
  /** Minutes to get at those among `reaches` of which this car's job sheet says it. */
  readonly access?: Readonly<Record<string, number>>;
  /** Parts that the instrument itself is put to, for what is one piece of evidence; as `reaches` where absent. */
  readonly parts?: readonly string[];
  /** What is read: the terminals under the leads, battery posts left out, or what is looked at. Absent: nobody asks. */
  readonly reads?: readonly string[];
  /** Instruments and helping hands: `meter`, `test-light`, `scope`, `helper`, ... */
  readonly needs: readonly string[];
  /** What else makes this another arrangement: bridges, a spare sensor, a moving target. */
  readonly arrangement?: string;
  /** It is answered only once it has shown twice, so that one slip does not make it. */
  readonly shownTwice?: true;
  /** Standard uncertainty of the instrument at a value, in the value's unit; none without. */
  readonly standardUncertainty?: (value: number) => number;
}

/** One test's predictions. `values[candidate * samples + sample]` is a number, or for looks an index into `looks`. */
export interface Column {
  readonly kind: 'number' | 'look';
  readonly unit: MeterUnit | null;
  readonly looks: readonly Look[];
  readonly values: Float64Array;
}

/** What every test shows under every suspect; columns are worked out when they are first asked for. */
export interface PredictionTable {
  readonly candidates: readonly Candidate[];
  readonly tests: readonly TableTest[];
  readonly samples: number;
  /** Places of the candidates that tests are planned for; absent where all of them are. */
  readonly planned?: readonly number[];
  readonly column: (test: number) => Column;
  /** One per sample. */
  readonly shown: (test: number, candidate: number) => readonly Shown[];
}

/** The answerer: what `test` shows under the candidate, with the tolerances of `sample`. */
export type Shows<T extends TableTest> = (candidateId: string, test: T, sample: number) => Shown;

/** A table that asks `shows` for a test's column when it is first needed, and never again. */
export function buildTable<T extends TableTest>(
  candidates: readonly Candidate[],
  tests: readonly T[],
  shows: Shows<T>,
  samples: number,
): PredictionTable {
  if (candidates.length === 0 || !(samples >= 1)) throw new Error('table: nothing to predict');
  for (const { id, minutes } of tests)
    if (!(minutes > 0)) throw new Error(`table: test ${id} must take some minutes`);
  const columns: (Column | undefined)[] = tests.map(() => undefined);
  const column = (index: number): Column => {
    const known = columns[index];
    if (known) return known;
    const test = tests[index];
    if (!test) throw new Error(`table: no test ${index}`);
    const made = fillColumn(candidates.length, samples, (candidate, sample) =>
      shows(candidates[candidate]!.id, test, sample),
    );
    columns[index] = made;
    return made;
  };
  const shown = (test: number, candidate: number): Shown[] => {
    const from = column(test);
    return Array.from({ length: samples }, (_, sample) =>
      toShown(from, from.values[candidate * samples + sample]!),
    );
  };
  return { candidates, tests, samples, column, shown };
}

/** A column from an answerer by index; also used for pairs of faults, which are rows of a column of their own. */
export function fillColumn(
  rows: number,
  samples: number,
  shows: (row: number, sample: number) => Shown,
): Column {
  const values = new Float64Array(rows * samples);
  const looks: Look[] = [];
  let kind: Column['kind'] | null = null;
  let unit: Column['unit'] = null;
  for (let row = 0; row < rows; row += 1)
    for (let sample = 0; sample < samples; sample += 1) {
      const shown = shows(row, sample);
      kind ??= shown.kind;
      if (shown.kind !== kind) throw new Error('table: one test shows both numbers and looks');
      if (shown.kind === 'number') {
        if (Number.isNaN(shown.value)) throw new Error('table: a prediction is not a number');
        unit = shown.unit;
        values[row * samples + sample] = shown.value;
      } else {
        let at = looks.indexOf(shown.look);
        if (at < 0) at = looks.push(shown.look) - 1;
        values[row * samples + sample] = at;
      }
    }
  return { kind: kind ?? 'number', unit, looks, values };
}

function toShown(column: Column, value: number): Shown {
  return column.kind === 'look'
    ? { kind: 'look', look: column.looks[value]! }
    : { kind: 'number', value, unit: column.unit ?? 'V' };
}

/** Repairs in the order in which the candidates name them, and each candidate's place in that list. */
export function repairsOf(candidates: readonly Candidate[]): {
  readonly repairs: readonly string[];
  readonly repairOf: Uint16Array;
} {
  const repairs: string[] = [];
  const repairOf = Uint16Array.from(candidates, ({ repair }) => {
    const at = repairs.indexOf(repair);
    return at < 0 ? repairs.push(repair) - 1 : at;
  });
  return { repairs, repairOf };
}
