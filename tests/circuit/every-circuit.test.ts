/**
 * Every shipped circuit as it is loaded, and one that leaves out all that may be left out, line by line, read by eye
 * when it changes: `OHMWARD_GOLDEN=write npx vitest run tests/circuit/every-circuit.test.ts` writes
 * tests/circuit/every-circuit.txt anew.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { FOLDER, shipped } from './shipped.ts';

const GOLDEN = 'tests/circuit/every-circuit.txt';
/** Nothing but what must be there: all values are those that the program takes by itself. */
const BARE = `circuit: bare
title: A circuit with nothing said
parts:
  module:
    kind: module
    pins:
      reference: { reference: { volts: 5 V } }
      signal: { pull: { to: reference, ohms: 2 kohm }, input: { low-below: 1 V, high-above: 4 V } }
      ground: { ground: {} }
  sensor: { kind: hall-switch }
  main-relay: { kind: relay }
  fuse: { kind: fuse }
  body: { kind: ground-point }
  near-by: { kind: neighbour, ohms: 1 kohm }
wires:
  feed: { from: module.reference, to: sensor.feed, size: 0.5 mm2, length: 1 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 1 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.5 mm2, length: 1 m }
  supply: { from: battery.positive, to: main-relay.30, size: 1 mm2, length: 1 m }
  to-fuse: { from: main-relay.87, to: fuse.in, size: 1 mm2, length: 1 m }
  load: { from: fuse.out, to: near-by.feed, size: 1 mm2, length: 1 m }
  back: { from: near-by.ground, to: body.eyelet, size: 1 mm2, length: 1 m }
`;

function linesOf({ parts, wires, connectors, terminals, faults, ...rest }: Circuit): string[] {
  const line = (value: unknown) =>
    JSON.stringify(value, (_, one) =>
      typeof one === 'number' && !Number.isInteger(one) ? Number(one.toPrecision(6)) : one,
    );
  return [rest, ...parts, ...wires, ...connectors, ...terminals, ...faults].map(line);
}

test('circuits are as they were read last', () => {
  const bare = loadCircuit(BARE, 'bare.yaml');
  expect(bare.issues).toEqual([]);
  const names = readdirSync(FOLDER)
    .sort()
    .map((file) => file.replace(/\.yaml$/, ''));
  const said = [bare.value!, ...names.map(shipped)]
    .map((circuit) => `# ${circuit.name}\n\n${linesOf(circuit).join('\n')}\n`)
    .join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(GOLDEN, said);
  expect(said).toBe(readFileSync(GOLDEN, 'utf8'));
});
