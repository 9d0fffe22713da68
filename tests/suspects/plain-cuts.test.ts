/**
 * Where ranges are cut, against the rule itself done the long way: every place weighed anew by mutual information
 * (Shannon 1948) between the suspect and the side of the cut, without running sums and without leaving anything out.
 */
import { expect, test } from 'vitest';
import { normalCdf } from '../../src/quantity/normal.ts';
import { findOutcomes } from '../../src/suspects/outcomes.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { simpleTest } from './tables.ts';

type Rows = readonly (readonly number[])[];
const METER = (value: number) => 0.004 * Math.abs(value) + 0.01;

/** Candidates as rows, samples as columns: clusters, wide spreads over decades, values that repeat, over-limit. */
function randomRows(seed: number, unit: 'V' | 'ohm'): Rows {
  const random = seededRandom(seed);
  const samples = 4 + Math.floor(random() * 28);
  return Array.from({ length: 3 + Math.floor(random() * 6) }, () => {
    const middle = unit === 'ohm' ? 10 ** (random() * 6) : random() * 14 - 1;
    const spread = random() < 0.3 ? 0 : random() < 0.5 ? 0.02 : 0.9;
    const isOpen = unit === 'ohm' && random() < 0.2;
    return Array.from({ length: samples }, () => {
      if (isOpen || (unit === 'ohm' && random() < 0.05)) return Number.POSITIVE_INFINITY;
      return unit === 'ohm'
        ? middle * 10 ** (spread * 3 * (random() - 0.5))
        : middle + spread * 4 * (random() - 0.5);
    });
  });
}

function cutsOf(rows: Rows, unit: 'V' | 'ohm'): number[] {
  const candidates = rows.map((_, index) => ({ id: `${index}`, repair: `${index}`, weight: 1 }));
  const table = buildTable(
    candidates,
    [simpleTest('t', { standardUncertainty: METER })],
    (id, _, sample) => ({ kind: 'number', value: rows[Number(id)]![sample]!, unit }),
    rows[0]!.length,
  );
  return findOutcomes(table, 0).specs.flatMap((spec) =>
    spec.kind === 'range' && Number.isFinite(spec.from) ? [spec.from] : [],
  );
}

/** The rule: 24 widest gaps and 24 even shares are places; the place that tells most is cut, five times at most. */
function plainCuts(rows: Rows, unit: 'V' | 'ohm'): number[] {
  const places = plainPlaces(rows.flat().filter(Number.isFinite), unit);
  const cuts: number[] = [];
  while (cuts.length < 5) {
    let best = { gain: 0.05, place: Number.NaN };
    for (const place of places) {
      if (cuts.includes(place)) continue;
      const gain = gainOf(rows, unit, cuts, place);
      if (gain > best.gain + 1e-12) best = { gain, place };
    }
    if (Number.isNaN(best.place)) break;
    cuts.push(best.place);
  }
  return cuts.sort((a, b) => a - b);
}

function plainPlaces(values: readonly number[], unit: 'V' | 'ohm'): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const gaps = sorted.slice(1).flatMap((high, index) => {
    const low = sorted[index]!;
    const decades = unit === 'ohm' && low > 0;
    const middle = decades ? Math.sqrt(low * high) : (low + high) / 2;
    const width = decades ? Math.log(high / low) : high - low;
    return middle > low ? [{ at: index + 1, middle, width }] : [];
  });
  const least = gaps.map(({ width }) => width).sort((a, b) => b - a)[23] ?? 0;
  const wide = gaps.filter(({ width }) => width >= least);
  const even = Array.from({ length: 24 }, (_, k) =>
    gaps.find(({ at }) => at * 25 >= (k + 1) * sorted.length),
  );
  return [...new Set([...wide, ...even].flatMap((gap) => (gap ? [gap.middle] : [])))].sort(
    (a, b) => a - b,
  );
}

/** Bits about the suspect that a further cut gives to a reading in the range it falls into. */
function gainOf(rows: Rows, unit: 'V' | 'ohm', cuts: readonly number[], place: number): number {
  const from = Math.max(Number.NEGATIVE_INFINITY, ...cuts.filter((cut) => cut < place));
  const to = Math.min(Number.POSITIVE_INFINITY, ...cuts.filter((cut) => cut > place));
  const sides = rows.map((row) => {
    const below = (limit: number) => shareBelow(row, unit, limit);
    return [below(place) - below(from), below(to) - below(place)].map((share) =>
      Math.max(0, share),
    );
  });
  const total = sides.flat().reduce((a, b) => a + b, 0);
  const ofSide = [0, 1].map((side) => sides.reduce((sum, one) => sum + one[side]!, 0));
  let bits = 0;
  for (const one of sides)
    one.forEach((share, side) => {
      const both = one[0]! + one[1]!;
      if (share > 0) bits += share * Math.log2((share * total) / (both * ofSide[side]!));
    });
  return bits / rows.length;
}

/** Share of a candidate's finite readings below a limit, as the meter and the model see them. */
function shareBelow(row: readonly number[], unit: 'V' | 'ohm', limit: number): number {
  const shares = row.filter(Number.isFinite).map((value) => {
    if (!Number.isFinite(limit)) return limit > 0 ? 1 : 0;
    // the model's own allowance: 2 % of the value and 5 mV or 0.2 ohm more
    const model = 0.02 * Math.abs(value) + (unit === 'V' ? 0.005 : 0.2);
    const z = (limit - value) / Math.hypot(METER(value), model);
    return z <= -4 ? 0 : z > 4 ? 1 : normalCdf(z);
  });
  return shares.reduce((a, b) => a + b, 0) / row.length;
}

test.each(['V', 'ohm'] as const)('in %s, 150 random tables are cut as the rule says', (unit) => {
  let cut = 0;
  let many = 0;
  for (let seed = 1; seed <= 150; seed += 1) {
    const rows = randomRows(seed, unit);
    const expected = plainCuts(rows, unit);
    expect(cutsOf(rows, unit), `seed ${seed}`).toEqual(expected);
    cut += expected.length;
    if (new Set(rows.flat()).size > 100) many += 1;
  }
  // The tables are worth it: cuts are made, and many have more gaps than are looked at.
  expect(cut).toBeGreaterThan(200);
  expect(many).toBeGreaterThan(10);
});
