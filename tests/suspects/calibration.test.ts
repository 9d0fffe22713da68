/** Whether chances mean what they say: over many hidden faults, a suspect given 70 % is right about 70 times in 100. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import type { PredictionTable } from '../../src/suspects/prediction-table.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG } from '../campaign.ts';
import { voltsTable } from './tables.ts';

const TABLES = LONG ? 60 : 10;
const FAULTS_PER_TABLE = 60;

interface Trial {
  readonly leaderChance: number;
  readonly right: boolean;
  readonly explained: boolean;
}

/** Hidden faults drawn by weight, some of their tests read with the meter's noise. */
function trials(): Trial[] {
  const done: Trial[] = [];
  for (let seed = 1; seed <= TABLES; seed += 1) {
    const table = voltsTable({ seed, faults: 16, tests: 10, samples: 32 });
    const random = seededRandom(seed + 1000);
    const prior = priorFor(table.candidates);
    for (let k = 0; k < FAULTS_PER_TABLE; k += 1) {
      const truth = drawn(prior, random());
      const sample = Math.floor(random() * table.samples);
      const readings = [...table.tests.keys()]
        .filter(() => random() < 0.5)
        .map((index) => measured(table, index, truth, sample, random));
      const ranking = rankSuspects(table, readings, prior);
      done.push({
        leaderChance: ranking.suspects[0]!.chance,
        right: ranking.suspects[0]!.index === truth,
        explained: ranking.explained,
      });
    }
  }
  return done;
}

function measured(
  table: PredictionTable,
  index: number,
  truth: number,
  sample: number,
  random: () => number,
): Reading {
  const shown: Shown = table.shown(index, truth)[sample]!;
  if (shown.kind === 'look' || shown.value === Infinity) return { test: index, shown };
  const standardUncertainty = table.tests[index]!.standardUncertainty!(shown.value);
  // Sum of twelve even numbers less six: a normal, nearly.
  const noise = Array.from({ length: 12 }, random).reduce((a, b) => a + b, -6);
  return {
    test: index,
    shown: { ...shown, value: shown.value + noise * standardUncertainty },
    standardUncertainty,
  };
}

function drawn(prior: Float64Array, even: number): number {
  let sum = 0;
  for (const [index, chance] of prior.entries()) {
    sum += chance;
    if (sum > even) return index;
  }
  return prior.length - 1;
}

describe('chances mean what they say', () => {
  const all = trials();
  test.each([
    [0, 0.5],
    [0.5, 0.8],
    [0.8, 0.95],
    [0.95, 1.01],
  ])('leaders given %d to %d', (from, to) => {
    const those = all.filter(({ leaderChance }) => leaderChance >= from && leaderChance < to);
    expect(those.length).toBeGreaterThan(20);
    const said = those.reduce((sum, { leaderChance }) => sum + leaderChance, 0) / those.length;
    const was = those.filter(({ right }) => right).length / those.length;
    // Three standard deviations of a share, and some room for the model's allowance, which makes it modest.
    const room = 3 * Math.sqrt((said * (1 - said)) / those.length) + 0.1;
    expect(Math.abs(was - said)).toBeLessThan(room);
  });
  test('a right reading is hardly ever called unexplained', () => {
    const alarms = all.filter(({ explained }) => !explained).length / all.length;
    expect(alarms).toBeLessThan(0.03);
  });
});
