/** A circuit may have many parts, and no more than can be computed in little memory. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import {
  AT_THE_LIMITS,
  fusesInARow,
  manyParts,
  PULL,
  pinsTogether,
  REFERENCE,
  relaysInARow,
} from './many-parts.ts';

const PARTS_MAX = 60;
const MOST_MB = 300;
const scratch = scratchFolder();
let child = '';
beforeAll(async () => {
  child = await bundleChild('tests/hostile/many-parts-child.ts', scratch.path);
});
afterAll(scratch.remove);

describe.each([
  ['own', PARTS_MAX],
  ['joined', 30],
] as const)('a circuit with neighbours on pins of the module, %s', (hanging, parts) => {
  it.each(['check', 'predict'])(
    `of ${parts} parts takes at most ${MOST_MB} MB to %s`,
    async (how) => {
      const folder = join(scratch.path, `${hanging}-${how}`);
      mkdirSync(folder);
      const file = join(folder, 'hall-module-fed.yaml');
      writeFileSync(file, manyParts(parts, hanging));
      const { stdout } = await execa(process.execPath, [child, file, how]);
      const { code, said, mostMb } = JSON.parse(stdout);
      expect(said).toContain(how === 'check' ? '1 file: no errors' : 'V');
      expect(code).toBe(0);
      expect(mostMb).toBeLessThan(MOST_MB);
    },
  );

  it(`of ${PARTS_MAX + 1} parts is refused at its parts, with the limit`, () => {
    const { value, issues } = loadCircuit(manyParts(PARTS_MAX + 1, hanging), 'many.yaml');
    expect(value).toBeNull();
    expect(issues.map(({ code, words, fix }) => [code, words, fix])).toEqual([
      ['out-of-bounds', '"parts" must have no more than 60 keys', 'leave out what is not needed'],
    ]);
  });
});

// The neighbours stand above.
describe.each(AT_THE_LIMITS.slice(2))('a circuit with %s', (title, text) => {
  it(`takes at most ${MOST_MB} MB to check`, async () => {
    const folder = join(scratch.path, title.replaceAll(/\W/g, '-'));
    mkdirSync(folder);
    const file = join(folder, 'hall-module-fed.yaml');
    writeFileSync(file, text);
    const { stdout } = await execa(process.execPath, [child, file, 'check']);
    const { code, said, mostMb } = JSON.parse(stdout);
    expect(said).toContain('1 file: no errors');
    expect(code).toBe(0);
    expect(mostMb).toBeLessThan(MOST_MB);
  });
});

it.each([
  ['neighbours on one supply', manyParts(31, 'joined'), 'too-many-faults', /^247 faults /],
  ['fuses', fusesInARow(57), 'too-many-faults', /^564 faults .* no more than 240 are worked out$/],
  ['relays with coils', relaysInARow(30), 'too-many-faults', /^706 faults /],
  ['pulled pins', pinsTogether(140, 'signal', PULL), 'too-many-faults', /^1317 faults /],
  [
    'references',
    pinsTogether(20, 'feed', REFERENCE),
    'too-many-outputs',
    /^more than 20 regulated outputs are connected together$/,
  ],
])('more %s than can be worked out are refused, with the limit', (_, text, code, words) => {
  const { value, issues } = loadCircuit(text, 'many.yaml');
  expect(value).toBeNull();
  expect(issues.map((one) => one.code)).toEqual([code]);
  expect(issues[0]!.words).toMatch(words);
});

it('circuits beside the one that is checked are not worked out', async () => {
  const checked = async (name: string, beside: number) => {
    const folder = join(scratch.path, name);
    mkdirSync(folder);
    for (let n = 0; n < beside; n += 1) {
      const text = manyParts(PARTS_MAX, 'own').replace(/^circuit: .*$/m, `circuit: many-${n}`);
      writeFileSync(join(folder, `many-${n}.yaml`), text);
    }
    const file = join(folder, 'hall-module-fed.yaml');
    writeFileSync(file, manyParts(4, 'own'));
    const { stdout } = await execa(process.execPath, [child, file, 'check']);
    return JSON.parse(stdout) as { readonly code: number; readonly mostMb: number };
  };
  const alone = await checked('alone', 0);
  const beside = await checked('beside', 3);
  expect(beside.code).toBe(0);
  // Worked out, each would take a hundred megabytes more at its time; read, they take little.
  expect(beside.mostMb).toBeLessThan(1.25 * alone.mostMb);
});
