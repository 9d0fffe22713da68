/**
 * A small diagnosis for tests: four faults, the open signal wire among them, and six tests of which each tells one or two
 * of them from the rest. Invented; looks are as in `tables.ts`, 0 dark and 1 lit.
 */
import type { Shown } from '../../src/circuit/test.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, type TableTest } from '../../src/suspects/prediction-table.ts';
import { look, simpleTest } from './tables.ts';

const SAMPLES = 64;

/** Each with a repair of its own, and its weight before any reading. */
const WEIGHTS = {
  'wire.signal.open': 4,
  'sensor.dead': 3,
  'module.dead': 0.5,
  'wheel.damaged': 0.5,
} as const;
export type FaultId = keyof typeof WEIGHTS;
export const FAULTS = Object.keys(WEIGHTS) as FaultId[];

/** Volts at the signal wire, a little higher in each sample. */
const volts = (value: number, sample: number): Shown => ({
  kind: 'number',
  value: value * (0.99 + 0.0003 * sample),
  unit: 'V',
});

interface OwnTest extends Partial<TableTest> {
  /** Volts, or a look, under each fault in the order of `WEIGHTS`: wire open, sensor dead, module dead, wheel damaged. */
  readonly shows: readonly number[];
}
const TESTS = {
  'pull-up at the sensor': {
    shows: [0, 5, 0, 5],
    family: 'signal',
    reaches: ['sensor'],
    needs: ['meter'],
  },
  'pull-up at the module': {
    shows: [5, 5, 0, 5],
    family: 'signal',
    reaches: ['module'],
    needs: ['meter'],
    minutes: 4,
  },
  injection: { shows: [0, 1, 0, 1], reaches: ['sensor'], needs: ['test-light'] },
  bypass: { shows: [1, 0, 0, 1], reaches: ['module', 'sensor'], needs: ['lead'], minutes: 3 },
  'spare sensor': { shows: [0, 1, 0, 0], reaches: ['sensor'], needs: ['spare-sensor'] },
  wheel: { shows: [1, 1, 1, 0], state: 'key-off', needs: ['eyes'], minutes: 6 },
} as const satisfies Record<string, OwnTest>;
export type TestId = keyof typeof TESTS;
export const TEST_IDS = Object.keys(TESTS) as TestId[];

/** Every test under every fault. */
export const openWire = buildTable(
  FAULTS.map((id, index) => ({
    id,
    words: `the ${id.split('.')[0]} of fault ${index}`,
    repair: repairOf(id),
    weight: WEIGHTS[id],
  })),
  Object.entries<OwnTest>(TESTS).map(([id, { shows: _, ...more }]) => simpleTest(id, more)),
  (id, test, sample) => {
    const value = TESTS[test.id as TestId].shows[FAULTS.indexOf(id as FaultId)]!;
    return test.family === 'signal' ? volts(value, sample) : look(value);
  },
  SAMPLES,
);
export const openWireOutcomes = outcomesOf(openWire);

/** Name of the only repair of a fault. */
export function repairOf(fault: FaultId): string {
  return `repair ${fault}`;
}

/** Place of a test in the table. */
export function placeOf(id: TestId): number {
  return TEST_IDS.indexOf(id);
}

/** Name of the test at a place of the table. */
export function testAt(place: number): TestId {
  return TEST_IDS[place]!;
}

/** A vehicle among the samples: which one makes no difference. */
const VEHICLE = 4;

/** What these tests show of a vehicle with that fault. */
export function readingsOf(fault: FaultId, ...ids: readonly TestId[]): Reading[] {
  return ids.map((id) => ({
    test: placeOf(id),
    shown: openWire.shown(placeOf(id), FAULTS.indexOf(fault))[VEHICLE]!,
  }));
}
