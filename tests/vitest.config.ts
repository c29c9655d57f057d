import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/storm/**', 'tests/bench/**'],
    globalSetup: ['tests/build-page.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    expect: { poll: { timeout: 20_000 } },
  },
});
