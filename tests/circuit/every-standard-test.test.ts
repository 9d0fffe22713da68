/**
 * Every standard test of every shipped circuit, word for word, read by eye when it changes: `OHMWARD_GOLDEN=write npx
 * vitest run tests/circuit/every-standard-test.test.ts` writes tests/circuit/every-standard-test.txt anew.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { FOLDER, shipped } from './shipped.ts';

const GOLDEN = 'tests/circuit/every-standard-test.txt';

function probeWords(probe: Probe): string {
  if ('plus' in probe) return `${probe.kind} ${probe.plus} ${probe.minus}`;
  return probe.kind === 'counts' ? `counts ${probe.input}` : `inspect ${probe.of}`;
}
function bridgeWords({ from, to, through }: Bridge): string {
  return `${typeof through === 'string' ? through : `${through.ohms} ohm`} ${from} ${to}`;
}
function setupWords({ state, unplugged, bridges, sensor, target }: Setup): string {
  return [
    state,
    target,
    sensor,
    `off: ${unplugged.join(' ') || '-'}`,
    ...bridges.map(bridgeWords),
  ].join(', ');
}

test('standard tests are as they were read last', () => {
  const said = readdirSync(FOLDER)
    .sort()
    .map((file) => {
      const name = file.replace(/\.yaml$/, '');
      const lines = standardTests(shipped(name)).map(
        ({ id, family, words, minutes, needs, test: { setup, probe } }) =>
          `${id} (${family}, ${minutes} min, ${needs.join(' ') || 'nothing'})\n  ${words}\n  ${setupWords(setup)}: ${probeWords(probe)}`,
      );
      return `# ${name}\n\n${lines.join('\n')}\n`;
    })
    .join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(GOLDEN, said);
  expect(said).toBe(readFileSync(GOLDEN, 'utf8'));
});
