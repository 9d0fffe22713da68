/** What a suspect would show, in words. */
import { expect, test } from 'vitest';
import { LOOK_WORDS } from '../../src/circuit/look-words.ts';
import type { Shown } from '../../src/circuit/test.ts';
import { predictedWords } from '../../src/suspects/predicted-words.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { simpleTest } from './tables.ts';

function words(shown: readonly Shown[]): string {
  const table = buildTable(
    [
      { id: 'other', repair: 'other', weight: 1 },
      { id: 'a', repair: 'a', weight: 1 },
    ],
    [simpleTest('t')],
    (id, _, sample) => (id === 'a' ? shown[sample]! : shown[0]!),
    shown.length,
  );
  const showing = predictedWords(table, 0, { index: 1, id: 'a', words: 'the a' });
  expect(showing).toMatchObject({ id: 'a', words: 'the a' });
  return showing.shows;
}
const OL = Number.POSITIVE_INFINITY;

test.each<[number[], 'V' | 'ohm', string]>([
  [[5.1, 5, 5.2], 'V', 'about 5.1 V'], // within a twentieth of the larger end: the middle one
  [[0.05, 0.01, 0], 'V', 'about 10 mV'], // within 0.05 V
  [[0.5, 4.2, 3], 'V', '0.5 V to 4.2 V'],
  [[-2e-6, 3e-6, 1e-6], 'V', 'about 0 V'], // no meter shows it
  [[-4e-6, 0.2, 0.1], 'V', '0 V to 0.2 V'],
  [[100, 110, 105], 'ohm', '100 \u03a9 to 110 \u03a9'],
  [[OL, OL], 'ohm', 'OL'],
  [[OL, 100], 'ohm', 'about 100 \u03a9 or OL'],
])('%o %s is "%s"', (values, unit, said) => {
  expect(words(values.map((value) => ({ kind: 'number', value, unit })))).toBe(said);
});

test('looks are named the commonest first, and rare ones not at all', () => {
  const look = (name: 'lit' | 'dim' | 'dark'): Shown => ({ kind: 'look', look: name });
  const { lit, dim, dark } = LOOK_WORDS;
  expect(words([look('dim'), look('lit'), look('lit')])).toBe(`${lit} or ${dim}`);
  const rare = [look('dark'), ...Array<Shown>(19).fill(look('lit'))];
  expect(words(rare)).toBe(lit); // one in twenty
  expect(words([look('dark'), ...Array<Shown>(9).fill(look('lit'))])).toBe(`${lit} or ${dark}`);
});
