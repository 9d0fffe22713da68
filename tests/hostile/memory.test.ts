/** How much memory a hostile file can make the program take. */
import { execa } from 'execa';
import { expect, it } from 'vitest';
import { bundleChild, scratchFolder } from '../log/built-child.ts';

/** The whole process, the program's own code and the hostile files themselves in it. */
const MOST_MB = 300;
/** The runner's own limit, far above what it takes. */
const TIME_MS = 240_000;
/** What is let go of shall not count: V8 must clean up before it holds so much, and ends the process when it cannot. */
const HEAP_MB = 80;

it(
  `all hostile files, one after another, are read within ${MOST_MB} MB`,
  async () => {
    const scratch = scratchFolder();
    try {
      const child = await bundleChild('tests/hostile/memory-child.ts', scratch.path);
      const { stdout } = await execa(process.execPath, [`--max-old-space-size=${HEAP_MB}`, child]);
      const { count, mostMb } = JSON.parse(stdout) as { count: number; mostMb: number };
      expect(count).toBeGreaterThan(300);
      expect(mostMb).toBeLessThan(MOST_MB);
    } finally {
      scratch.remove();
    }
  },
  TIME_MS,
);
