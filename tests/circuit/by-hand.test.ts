/** A coil whose file says nothing of it is moved by hand fast enough for its module. */
import { expect, test } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { METER, shipped, testOf, textOf } from './shipped.ts';

const moved = testOf({ kind: 'counts', input: 'module.signal-plus' }, { target: 'moving' });

test.each([
  ['as shipped', shipped('reluctor-two-wire')],
  [
    'without a word of it',
    loadCircuit(textOf('reluctor-two-wire').replace(/^ *by-hand: .*$/m, ''), 'coil.yaml').value!,
  ],
])('the healthy sensor is counted in most cars, %s', (_, circuit) => {
  const model = createModel(circuit, { samples: 64, seed: 1, meter: METER });
  const expected = model.expected(moved);
  if (expected.kind !== 'looks') throw new Error('no look');
  expect(expected.looks[0]).toMatchObject({ look: 'follows' });
  expect(expected.looks[0]!.chance).toBeGreaterThan(0.95);
});
