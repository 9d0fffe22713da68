/** Two faults at once, every pair of a circuit: each test shows something. A share of them in an ordinary run. */
import { describe, expect, test } from 'vitest';
import { pairId } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { shareOf } from '../campaign.ts';
import { modelOf, NAMES } from './shipped.ts';

const ONE_IN = 40;

describe.each(NAMES)('%s', (name) => {
  test('has an operating point under every two faults', () => {
    const model = modelOf(name);
    const { faults } = model.circuit;
    const pairs = faults.flatMap((first, index) =>
      faults.slice(index + 1).flatMap((second) => pairId(first, second) ?? []),
    );
    const drawn = shareOf(pairs, ONE_IN);
    expect(drawn.length).toBeGreaterThan(0);
    for (const id of drawn)
      for (const { test: asked } of standardTests(model.circuit))
        for (const sample of [0, 7]) {
          const shown = model.shows(id, asked, sample);
          expect(shown.kind === 'number' && Number.isNaN(shown.value), id).toBe(false);
        }
  });
});
