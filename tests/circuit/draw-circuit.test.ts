/** The wiring sketch, whole. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import signColumns from '../../src/source/sign-columns.ts';
import { NAMES, shipped, testOf, volts } from './shipped.ts';

const hall = shipped('hall-module-fed');

describe('three wires', () => {
  test('leads at the sensor and at the battery', () => {
    expect(
      drawCircuit(hall, {
        test: volts('sensor.feed'),
        pins: { 'sensor.feed': '1 RD/BU' },
        width: 73,
        ascii: true,
      }),
    ).toEqual([
      '+- engine control module -+              +- crankshaft position sensor -+',
      '|               reference |---- feed --R-| feed 1 RD/BU                 |',
      '|                  signal |--- signal ---| signal                       |',
      '|                  ground |--- ground ---| ground                       |',
      '+-------------------------+              +------------------------------+',
      ' B: battery negative',
    ]);
  });

  test('connectors off are gaps, both leads on the drawing', () => {
    const ohms = testOf(
      { kind: 'ohms', plus: 'module.signal', minus: 'sensor.signal' },
      { state: 'key-off', unplugged: ['module', 'sensor'] },
    );
    const lines = drawCircuit(hall, { test: ohms, width: 76, ascii: true });
    expect(lines[1]).toMatch(/\| {2}-+ feed -+ {2}\|/);
    expect(lines[2]).toMatch(/\| {2}R-+ signal -+B {2}\|/);
    expect(lines).toHaveLength(5);
  });

  test('a name is cut only where there is no room for it', () => {
    const volts = testOf(
      { kind: 'volts', plus: 'sensor.feed', minus: 'sensor.ground' },
      { unplugged: ['sensor'] },
    );
    for (const width of [64, 60, 56]) {
      const lines = drawCircuit(hall, { test: volts, width, ascii: true }).join('\n');
      for (const name of ['feed', 'signal', 'ground'])
        expect(lines, `${width}`).toContain(` ${name} `);
    }
  });

  test('a bridge and an unplugged neighbour are named', () => {
    const one = volts('module.signal', 'battery.negative', {
      unplugged: ['sensor', 'throttle-position'],
      bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: 'test-light' }],
    });
    const lines = drawCircuit(hall, { test: one, width: 80, ascii: false });
    expect(lines).toContain(
      ' LED light: signal at the crankshaft position sensor to battery negative',
    );
    expect(lines).toContain(' unplugged: throttle position sensor');
  });

  test('without a test it is only the wiring', () => {
    expect(drawCircuit(hall, { width: 70, ascii: true }).join('\n')).not.toMatch(/[-]R-|-B-/);
  });
});

describe('a splice of the circuit', () => {
  /** The feed and the ground shared at splices on their way, where the shipped file joins them inside the module. */
  const spliced = (() => {
    const text = readFileSync('procedures/circuits/hall-module-fed.yaml', 'utf8')
      .replace('circuit: hall-module-fed', 'circuit: spliced')
      .replace('from: module.reference, to: sensor', 'from: splice.feed, to: sensor')
      .replace('from: module.throttle-reference', 'from: splice.feed')
      .replace('from: module.signal, to: sensor', 'from: splice.signal, to: sensor')
      .replace(
        'wires:',
        'wires:\n  feed-trunk: { from: module.reference, to: splice.feed, size: 0.5 mm2, length: 1 m }\n  signal-trunk: { from: module.signal, to: splice.signal, size: 0.5 mm2, length: 1 m }',
      )
      .replace(/ {6}throttle-reference:\n.*\n/, '');
    const { value, issues } = loadCircuit(text, 'spliced.yaml');
    if (!value) throw new Error(JSON.stringify(issues));
    return value;
  })();

  test('stands on its wire, which goes on to the module; what else hangs on it is named', () => {
    expect(drawCircuit(spliced, { width: 73, ascii: true })).toEqual([
      '+- engine control module -+              +- crankshaft position sensor -+',
      '|               reference |-o-- feed ----| feed                         |',
      '|                  signal |-o- signal ---| signal                       |',
      '|                  ground |--- ground ---| ground                       |',
      '+-------------------------+              +------------------------------+',
      ' o: splice; the feed goes on to the throttle position sensor',
    ]);
  });

  test('leaves the lead at the pin of the module', () => {
    const lines = drawCircuit(spliced, {
      test: volts('module.reference'),
      width: 73,
      ascii: true,
    });
    expect(lines[1]).toContain('reference |-Ro- feed');
    expect(lines.join()).not.toContain('R: ');
  });

  test('behind a fuse stands on its wire too', () => {
    const lines = drawCircuit(shipped('hall-relay-fed'), { width: 80, ascii: true });
    expect(lines.join('\n')).toMatch(/fuse -o-+ feed -/);
    expect(lines.at(-1)).toBe(
      ' o: splice; the feed and the ground go on to the vehicle speed sensor',
    );
  });
});

test('feeds that do not come from the module are told where they come from', () => {
  const lines = drawCircuit(shipped('hall-relay-fed'), { width: 80, ascii: true });
  expect(lines.join('\n')).toContain('battery + > relay > fuse');
});

describe.each(NAMES)('%s', (name) => {
  test('never wider than asked, never higher than 12 lines, for every standard test', () => {
    const circuit = shipped(name);
    for (const { test: one } of standardTests(circuit))
      for (const width of [60, 71, 80])
        for (const ascii of [true, false]) {
          const lines = drawCircuit(circuit, { test: one, width, ascii });
          expect(lines.length).toBeLessThanOrEqual(12);
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
          if (ascii) expect(lines.join('')).toMatch(/^[\x20-\x7e]*$/);
        }
  });
});

test('signs of two columns move no edge', () => {
  const pins = { 'sensor.feed': '1 赤/青', 'module.ground': '接地 e\u0301' };
  const widths = drawCircuit(hall, { pins, width: 80, ascii: true })
    .filter((line) => line.endsWith('|') || line.endsWith('+'))
    .map((line) => signColumns(line));
  expect(widths.length).toBeGreaterThan(4);
  expect(new Set(widths).size).toBe(1);
});
