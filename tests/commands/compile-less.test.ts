/** The program runs most of what it has to run once or twice without having it compiled to fast code first. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { scratchFolder } from '../log/built-child.ts';
import { PROGRAM } from './program.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Code that runs at the end of a process for longer than Node's own budget, and for less than ours. */
const ATTACHED = `process.on('exit', () => {
  const digitSum = (n) => { let sum = 0; for (let at = 0; at < n; at += 1) sum += at % 7; return sum; };
  for (let time = 0; time < 100; time += 1) digitSum(50);
});`;

function marked(...args: readonly string[]): boolean {
  const { stdout } = spawnSync(process.execPath, ['--trace-opt', ...args], { encoding: 'utf8' });
  return /marking .*<JSFunction digitSum /.test(stdout);
}

it.skipIf(!process.versions.v8.startsWith('11.3.'))(
  'what runs a hundred times is left as it is',
  () => {
    const attached = join(scratch.path, 'attached.cjs');
    writeFileSync(attached, ATTACHED);
    expect(marked(attached)).toBe(true);
    expect(marked('--require', attached, PROGRAM, '--version')).toBe(false);
  },
);
