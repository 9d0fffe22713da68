/** Inputs without a resistor, and two inputs of one module that are built alike. */
import { expect, test } from 'vitest';
import { readKnown, withKnown } from '../../src/circuit/known-values.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { METER, shipped, textOf, volts } from './shipped.ts';

function made(name: string, way: string) {
  const circuit = shipped(name);
  const read = readKnown(circuit, 'module.signal-1.pull-to', way);
  if (!read.ok) throw new Error(read.words);
  return withKnown(circuit, [{ quantity: read.quantity, is: read.is }]);
}

/** Signal `track` of a pedal whose input 1 leads to `way`, pedal off, through 470 kohm from its own feed. */
function fed(way: string, track: 1 | 2): number {
  const model = createModel(made('pedal-dual', way), { samples: 1, seed: 1, meter: METER });
  const bridge = {
    from: `sensor.feed-${track}`,
    to: `sensor.signal-${track}`,
    through: { ohms: 470_000 },
  };
  const test = volts(`sensor.signal-${track}`, 'battery.negative', {
    unplugged: ['sensor'],
    bridges: [bridge],
  });
  const shown = model.shows('healthy', test, -1);
  return shown.kind === 'number' ? shown.value : Number.NaN;
}

test('an input that leads to nothing takes no more than the meter and its own leakage', () => {
  // by hand: 20 Mohm beside 10 Mohm is 6.67 Mohm; 5 V * 6.67 / (6.67 + 0.47) = 4.67 V
  expect(fed('nothing', 1)).toBeCloseTo(4.67, 2);
});

test('the other input is built alike', () => {
  expect(fed('nothing', 2)).toBeCloseTo(4.67, 2);
  // by hand: the middle of 25 kohm to 1 Mohm is 158.1 kohm, 155.7 beside the meter; 5 V * 155.7 / (155.7 + 470) = 1.244 V,
  // and of the 2.8 mV that the module's ground stands at three quarters
  expect(fed('ground', 2)).toBeCloseTo(1.246, 3);
  expect(fed('reference-1', 2)).toBeGreaterThan(4.9);
});

test.each([
  ['a pin that is none', 'alike: signal-1', 'alike: signal-9'],
  [
    'other chances',
    'ground 45 %, reference-2 35 %, nothing 20 %',
    'ground 40 %, reference-2 40 %, nothing 20 %',
  ],
])('it is told where the other one has another choice: %s', (_, from, to) => {
  const text = textOf('pedal-dual');
  expect(text).toContain(from);
  const { issues } = loadCircuit(text.replace(from, to), 'pedal-dual.yaml');
  expect(issues.map(({ code }) => code)).toContain('not-alike');
});
