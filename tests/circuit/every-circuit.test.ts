/**
 * Every shipped circuit as it is loaded, and one that leaves out all that may be left out, line by line, read by eye
 * when it changes: `OHMWARD_GOLDEN=write npx vitest run tests/circuit/every-circuit.test.ts` writes
 * tests/circuit/every-circuit.txt anew.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
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

/** The largest circuit takes seconds with OHMWARD_SHORT=1, where the tests are repeated a thousand times. */
const SHORT = process.env['OHMWARD_SHORT'] === '1';
const NAMES = readdirSync(FOLDER)
  .sort()
  .map((file) => file.replace(/\.yaml$/, ''))
  .filter((name) => !SHORT || name !== 'pedal-dual');

const LOADED: readonly (readonly [string, () => Circuit])[] = [
  ['bare', () => loadCircuit(BARE, 'bare.yaml').value!],
  ...NAMES.map((name) => [name, () => shipped(name)] as const),
];
const kept = new Map(
  readFileSync(GOLDEN, 'utf8')
    .split(/^# /m)
    .slice(1)
    .map((text) => [text.slice(0, text.indexOf('\n')), text.slice(text.indexOf('\n')).trim()]),
);

test.each(LOADED)('%s is as it was read last', (name, load) => {
  const said = linesOf(load()).join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') kept.set(name, said);
  expect(said).toBe(kept.get(name));
});

afterAll(() => {
  if (process.env['OHMWARD_GOLDEN'] === 'write')
    writeFileSync(GOLDEN, [...kept].map(([name, said]) => `# ${name}\n\n${said}\n`).join('\n'));
});
