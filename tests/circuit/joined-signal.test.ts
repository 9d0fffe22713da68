/** A joint in the signal wire hides nothing: the tests, the sketch and the wheel are as without it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawCircuit } from '../../src/circuit/draw-circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { discriminatingTests } from '../../src/proof/discriminating-tests.ts';
import { testEntries } from '../../src/suspects/test-entries.ts';

const TEXT = readFileSync('procedures/circuits/hall-module-fed.yaml', 'utf8');
const WIRE = TEXT.match(/^ {2}signal: \{.*\}\n/m)![0];
const SIZE = 'size: 0.5 mm2, length: 1 m';
const JOINTS = {
  splice: `  signal: { from: splice.signal, to: sensor.signal, ${SIZE} }\n  signal-trunk: { from: module.signal, to: splice.signal, ${SIZE} }\n`,
  fuse: `  signal: { from: signal-fuse.out, to: sensor.signal, ${SIZE} }\n  signal-trunk: { from: module.signal, to: signal-fuse.in, ${SIZE} }\n`,
};
const FUSE = 'parts:\n  signal-fuse: { kind: fuse, words: signal fuse }\n';

function circuitWith(joint: keyof typeof JOINTS | null) {
  const text = joint === null ? TEXT : TEXT.replace(WIRE, JOINTS[joint]);
  const { value, issues } = loadCircuit(
    joint === 'fuse' ? text.replace('parts:\n', FUSE) : text,
    'joined.yaml',
  );
  if (!value) throw new Error(JSON.stringify(issues));
  return value;
}
const PLAIN = circuitWith(null);
const ofSignal = (circuit: typeof PLAIN) =>
  standardTests(circuit)
    .filter(({ family }) => ['signal', 'pattern', 'injection', 'bypass', 'timing'].includes(family))
    .map(({ id }) => id);

describe.each(['splice', 'fuse'] as const)('a %s in the signal wire', (joint) => {
  const circuit = circuitWith(joint);

  test('every test of the signal is there as without it', () => {
    expect(ofSignal(PLAIN)).toContain('module.signal.pattern');
    expect(ofSignal(circuit)).toEqual(ofSignal(PLAIN));
  });

  test('the sketch has the module at the other end', () => {
    const options = { width: 80, ascii: true };
    const rows = drawCircuit(circuit, options).filter((line) => /\bsignal\b.*signal/.test(line));
    // A splice is a mark on the line; a fuse is not drawn.
    const mark = joint === 'splice' ? '-o-' : '---';
    expect(rows[0]).toContain(`|${mark}`);
    expect(rows.map((row) => row.replace('-o-', '---'))).toEqual(
      drawCircuit(PLAIN, options).filter((line) => /\bsignal\b.*signal/.test(line)),
    );
    expect(rows).toHaveLength(1);
  });

  test('a wheel that has moved or lost a tooth is told from a healthy circuit', () => {
    const model = createModel(circuit, {
      samples: 8,
      seed: 1,
      meter: STANDARD_SETTINGS.meter,
    });
    const { detects } = discriminatingTests(model, testEntries(circuit, null, model.meter));
    for (const fault of ['target.displaced', 'target.damaged'])
      expect(
        [0, 1, 2].map((sample) => detects(fault, sample)),
        fault,
      ).toEqual([true, true, true]);
  });
});
