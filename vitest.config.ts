import { defineConfig } from 'vitest/config';
import { nativeSource } from './tests/native-source.ts';
import { SlowFirst } from './tests/slow-first.ts';

const isNode20 = process.versions.node.startsWith('20.');

export default defineConfig({
  plugins: [nativeSource(import.meta.dirname, !process.argv.includes('run'))],
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { CI: 'false', NO_COLOR: '1' },
    maxWorkers: '100%',
    // Node loads what was compiled for it.
    server: { deps: { external: [/\/dist\.source\//] } },
    globalSetup: ['tests/temporary-folder.ts'],
    sequence: { sequencer: SlowFirst },
    // Node 20 compiles what runs often in threads of its own, which costs more here than it brings: no processor stands idle.
    execArgv: ['--max-semi-space-size=64', ...(isNode20 ? ['--interrupt-budget=600000'] : [])],
    // A process keeps its modules from file to file, with what was loaded, proved and compiled once: a fresh one for
    // each file takes a second to get there again. Tests write into folders of their own and put back what they change.
    isolate: false,
    // A machine may be busy, and many tests run the built program.
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
