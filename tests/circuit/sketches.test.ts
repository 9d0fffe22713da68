/**
 * Whole sketches, sign for sign, read by eye when they change: `OHMWARD_GOLDEN=write npx vitest run
 * tests/circuit/sketches.test.ts` writes tests/circuit/sketches.txt anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { type DrawOptions, drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { shipped, testOf, volts } from './shipped.ts';

const GOLDEN = 'tests/circuit/sketches.txt';
const hall = shipped('hall-module-fed');
const relay = shipped('hall-relay-fed');
const coil = shipped('reluctor-two-wire');
const pedal = shipped('pedal-dual');
const clip = (from: string, to: string, through: 'lead' | 'lamp' | { ohms: number }) => ({
  from,
  to,
  through,
});

/** Names too long for their boxes, and for the wire between them. */
const wordy: Circuit = {
  ...coil,
  parts: coil.parts.map((part) => ({ ...part, words: `${part.words} of the left rear wheel` })),
  wires: coil.wires.map((wire) => ({ ...wire, name: `${wire.name}-along-the-frame-rail` })),
};

const CASES: readonly (readonly [string, Circuit, Partial<DrawOptions>])[] = [
  ['three wires from the module, narrow', hall, { width: 40, ascii: true }],
  ['three wires from the module, wide', hall, { width: 200 }],
  ['a feed through relay and fuse, a ground on the body', relay, {}],
  ['a coil', coil, { width: 60 }],
  ['two tracks', pedal, {}],
  ['long names', wordy, { width: 60, ascii: true }],
  [
    'both leads on the drawing, one at the pin of the part itself',
    hall,
    { test: volts('sensor.signal.pin', 'sensor.ground.pin', { unplugged: ['sensor'] }) },
  ],
  [
    'both leads elsewhere, with pins of this vehicle',
    relay,
    {
      test: volts('fuse.out', 'battery.negative'),
      pins: { 'fuse.out': '12B RD/YE', 'sensor.signal': '2 YE', 'module.signal': 'B52 YE' },
    },
  ],
  ['live data has no leads', hall, { test: testOf({ kind: 'counts', input: 'module.signal' }) }],
  ['eyes have no leads', hall, { test: testOf({ kind: 'inspect', of: 'connector.sensor' }) }],
  [
    'everything that is clipped in',
    hall,
    {
      test: volts('module.signal', 'battery.negative', {
        bridges: [
          clip('sensor.signal', 'battery.negative', 'lead'),
          clip('sensor.feed', 'sensor.ground', 'lamp'),
          clip('sensor.signal', 'sensor.feed', { ohms: 470 }),
        ],
        unplugged: ['module', 'throttle-position'],
      }),
      pins: { 'sensor.signal': '2 GN' },
    },
  ],
];

test('sketches are as they were read last', () => {
  const drawn = CASES.map(([title, circuit, options]) => {
    const lines = drawCircuit(circuit, { width: 80, ascii: false, ...options });
    return `# ${title}\n\n${lines.join('\n')}\n`;
  }).join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(GOLDEN, drawn);
  expect(drawn).toBe(readFileSync(GOLDEN, 'utf8'));
});
