/** A shipped tree over a circuit of very many parts: proved with fewer cars or not at all, and the author is told. */
import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Checker } from '../../src/commands/check/check-files.ts';
import { gatherFiles } from '../../src/commands/check/gather-files.ts';
import { LONG } from '../campaign.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { fusesInARow, manyParts } from './many-parts.ts';

const MOST_MB = 300;
const TREE = 'hall-no-signal.yaml';
const scratch = scratchFolder();
let child = '';
beforeAll(async () => {
  child = await bundleChild('tests/hostile/many-parts-child.ts', scratch.path);
});
afterAll(scratch.remove);

/** The library with another circuit under its tree. */
function libraryWith(name: string, circuit: string): string {
  const folder = join(scratch.path, name);
  cpSync('procedures', folder, { recursive: true });
  writeFileSync(join(folder, 'circuits/hall-module-fed.yaml'), circuit);
  return join(folder, TREE);
}

async function checked(file: string): Promise<{ code: number; said: string; mostMb: number }> {
  const { stdout } = await execa(process.execPath, [child, file, 'check']);
  return JSON.parse(stdout);
}

describe.each([
  // However they hang it is the same refusal; the others in the long form.
  ['57 neighbours, own', manyParts(60, 'own')] as const,
  ...(LONG ? [['27 neighbours, joined', manyParts(30, 'joined')] as const] : []),
  ['21 fuses in a row', fusesInARow(21)] as const,
])('a tree over a circuit with %s', (title, circuit) => {
  it(`is not proved, which is told, within ${MOST_MB} MB`, async () => {
    const { code, said, mostMb } = await checked(libraryWith(title.replace(/\W/g, '-'), circuit));
    expect(code).toBe(1);
    expect(said).toContain('error[not-proved] the tree is not proved: the circuit has');
    expect(said).not.toContain('tree proved');
    expect(mostMb).toBeLessThan(MOST_MB);
  });
});

it(`the largest that is proved takes fewer cars, which is told, within ${MOST_MB} MB`, async () => {
  const { said, mostMb } = await checked(libraryWith('largest', manyParts(25, 'joined')));
  expect(said).toMatch(
    /warning\[fewer-cars\] the tree is proved with 1\d\d cars of each fault instead of 256/,
  );
  expect(said).toContain('1 tree proved');
  // A finding counts the cars that were taken.
  expect(said).toMatch(/\(1\d\d of 1\d\d cars, 100 %\)/);
  expect(said).not.toContain('of 256 cars');
  expect(mostMb).toBeLessThan(MOST_MB);
});

it('whoever asks for a number of cars gets it, and is told nothing', () => {
  const file = libraryWith('asked', manyParts(18, 'joined'));
  const { proofs, issues } = new Checker(1, 'proved', true).check(gatherFiles([file], null));
  expect(proofs.map(({ model }) => model.samples)).toEqual([1]);
  expect(issues.map(({ code }) => code)).not.toContain('fewer-cars');
});
