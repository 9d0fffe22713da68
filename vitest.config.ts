import { defineConfig } from 'vitest/config';

/**
 * Rooms whose tests compute and write nothing but into folders of their own: one process keeps their modules from file
 * to file, with what was loaded and proved once.
 */
const PURE =
  'circuit,files,identify,library,log,outside,procedure,proof,quantity,session,source,suspects,waveform';

const shared = {
  env: { CI: 'false', NO_COLOR: '1' },
  // A machine may be busy, and many tests run the built program.
  testTimeout: 60_000,
};
const pure = [`tests/{${PURE}}/**/*.test.{ts,tsx}`];

export default defineConfig({
  test: {
    maxWorkers: '100%',
    projects: [
      {
        test: { ...shared, name: 'whole', include: ['tests/**/*.test.{ts,tsx}'], exclude: pure },
      },
      { test: { ...shared, name: 'rooms', include: pure, isolate: false } },
    ],
  },
});
