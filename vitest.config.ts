import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { CI: 'false', NO_COLOR: '1' },
    // A machine may be busy, and many tests run the built program.
    testTimeout: 60_000,
    maxWorkers: '100%',
  },
});
