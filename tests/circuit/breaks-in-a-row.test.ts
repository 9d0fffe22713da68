/** One answer holds for a whole row of wires, contacts and parts: each of its faults is asked here by itself. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../src/circuit/breaks-in-a-row.ts';
import { type Fault, sensorOf } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { sizesOf } from '../../src/circuit/size-faults.ts';
import { fusesInARow, manyParts, relaysInARow } from '../hostile/many-parts.ts';
import { METER } from './shipped.ts';

const CARS = 6;
const shipped = ['hall-relay-fed', 'pedal-dual', 'reluctor-two-wire'].map(
  (name) => [name, readFileSync(`procedures/circuits/${name}.yaml`, 'utf8')] as const,
);

describe.each([
  ...shipped,
  ['fuses in a row', fusesInARow(4)] as const,
  ['relays in a row', relaysInARow(3)] as const,
  ['neighbours', manyParts(6, 'joined')] as const,
])('%s', (_, text) => {
  const circuit = loadCircuit(text, 'rows.yaml').value!;
  const model = createModel(circuit, { samples: CARS, seed: 3, meter: METER });
  const rowOf = rowsOf(circuit);
  const place = model.quantities.findIndex(({ key }) => key === 'fault.size');
  const cars = Array.from({ length: CARS }, (_, car) => {
    const point = Float64Array.from(model.pointOf(car));
    point[place] = car / (CARS - 1);
    return point;
  });
  const rows = new Map<string, Fault[]>();
  for (const fault of circuit.faults) {
    const row = rowOf(fault);
    const sizes = sizesOf(fault);
    const key = `${row} ${sizes === null ? 'broken' : `${sizes.low} to ${sizes.high}`}`;
    if (row !== null) rows.set(key, [...(rows.get(key) ?? []), fault]);
  }

  it('has rows of more than one fault', () => {
    expect([...rows.values()].some((faults) => faults.length > 1)).toBe(true);
  });

  it('brings the same cars with each fault of a row', () => {
    for (const [row, faults] of rows) {
      const answers = faults.map(({ id }) => cars.map((car, at) => model.complains(id, car, at)));
      for (const answer of answers) expect(answer, row).toEqual(answers[0]);
    }
  });
});

it('a way of its own ends a row: a second wire at the same place, and the ground of the sensor', () => {
  const circuit = loadCircuit(fusesInARow(3), 'rows.yaml').value!;
  const rowOf = rowsOf(circuit);
  const row = (id: string) => rowOf(circuit.faults.find((fault) => fault.id === id)!);
  const { name } = sensorOf(circuit);
  expect(row('f0.blown')).toBe(row('f2.blown'));
  expect(row('f0.blown')).toBe(row('wire.feed.open'));
  expect(row('f0.blown')).toBe(row(`contact.${name}.feed.open`));
  expect(row('wire.ground.open')).not.toBe(row('wire.feed.open'));
});
