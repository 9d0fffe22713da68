import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { CI: 'false', NO_COLOR: '1' },
    testTimeout: 30_000,
    maxWorkers: '100%',
  },
});
