/** Small tables for tests: published matrices, and random ones from a seed. */
import type { Look, Shown } from '../../src/circuit/test.ts';
import {
  buildTable,
  type Candidate,
  type PredictionTable,
  type TableTest,
} from '../../src/suspects/prediction-table.ts';
import type { Strategy } from '../../src/suspects/strategy.ts';
import type { CostModel } from '../../src/suspects/test-cost.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

/** Nothing costs but the test itself: for published examples with unit costs. */
export const READING_ONLY: CostModel = {
  accessMinutes: 0,
  moduleAccessMinutes: 0,
  plugMinutes: 0,
  keyMinutes: 0,
  engineMinutes: 0,
  arrangeMinutes: 0,
  aloneMinutes: 0,
};

/** Tests on the way to the furthest conclusion. */
export function longestPath(strategy: Strategy): number {
  if (strategy.kind === 'conclude') return 0;
  return 1 + Math.max(...strategy.branches.map(({ next }) => longestPath(next)));
}

const LOOK_OF = ['dark', 'lit', 'dim'] as const satisfies readonly Look[];

export function look(outcome: number): Shown {
  return { kind: 'look', look: LOOK_OF[outcome]! };
}

export function simpleTest(id: string, more: Partial<TableTest> = {}): TableTest {
  return {
    id,
    family: id,
    minutes: 1,
    state: 'key-on',
    unplugged: [],
    reaches: [],
    needs: [],
    ...more,
  };
}

/** A table of looks: `matrix[candidate][test]` is 0, 1 or 2; each candidate is its own repair. */
export function matrixTable(
  candidates: readonly Candidate[],
  matrix: readonly (readonly number[])[],
  tests: readonly TableTest[] = matrix[0]!.map((_, index) => simpleTest(`t${index + 1}`)),
): PredictionTable {
  const rows = new Map(candidates.map(({ id }, index) => [id, matrix[index]!]));
  const columns = new Map(tests.map(({ id }, index) => [id, index]));
  return buildTable(
    candidates,
    tests,
    (id, test) => look(rows.get(id)![columns.get(test.id)!]!),
    1,
  );
}

/**
 * A table of volts as circuits give them: in each test a fault leaves the healthy value, kills it, or moves it by an
 * amount that depends on the fault's size, which all tests share. Some tests are over-limit ohms or looks.
 */
export function voltsTable(ask: {
  readonly seed: number;
  readonly faults: number;
  readonly tests: number;
  readonly samples: number;
}): PredictionTable {
  const random = seededRandom(ask.seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const tests = Array.from({ length: ask.tests }, (_, index) =>
    simpleTest(`t${index}`, {
      family: pick(['reference', 'ground', 'signal', 'continuity', 'injection']),
      minutes: pick([1, 2, 3]),
      state: pick(['key-off', 'key-on', 'key-on', 'running']),
      unplugged: pick([[], [], ['sensor'], ['sensor', 'module']]),
      reaches: pick([['sensor'], ['sensor'], ['module'], ['sensor', 'module']]),
      standardUncertainty: (value) => 0.003 * Math.abs(value) + 0.002,
    }),
  );
  const candidates: Candidate[] = [
    { id: 'healthy', repair: 'healthy', weight: 2 },
    ...Array.from({ length: ask.faults - 1 }, (_, index) => ({
      id: `f${index}`,
      repair: `r${Math.floor(index / 2)}`,
      weight: 0.2 + random() * 3,
    })),
  ];
  const healthy = tests.map(() => pick([0.02, 2.5, 5, 12.6]));
  const kinds = tests.map(() => pick(['volts', 'volts', 'volts', 'ohms', 'look']));
  const effects = candidates.map((_, row) =>
    tests.map(() =>
      row === 0 || random() < 0.7 ? 'none' : pick(['dead', 'high', 'sized', 'sized']),
    ),
  );
  const size = Array.from({ length: ask.samples }, () => random());
  const spread = Array.from({ length: ask.samples }, () => 0.98 + 0.04 * random());
  const rows = new Map(candidates.map(({ id }, index) => [id, index]));
  const columns = new Map(tests.map(({ id }, index) => [id, index]));
  return buildTable(
    candidates,
    tests,
    (id, test, sample): Shown => {
      const column = columns.get(test.id)!;
      const effect = effects[rows.get(id)!]![column]!;
      const good = healthy[column]! * spread[sample]!;
      const part = size[(sample + rows.get(id)!) % ask.samples]!;
      const value =
        effect === 'none' ? good : effect === 'dead' ? 0 : effect === 'high' ? 12.6 : good * part;
      if (kinds[column] === 'look')
        return look(value < 0.3 * good ? 0 : value < 0.7 * good ? 2 : 1);
      if (kinds[column] === 'ohms')
        return { kind: 'number', value: effect === 'dead' ? Infinity : value * 100, unit: 'ohm' };
      return { kind: 'number', value, unit: 'V' };
    },
    ask.samples,
  );
}
