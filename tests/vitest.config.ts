import { defineConfig } from 'vitest/config';
import { JOURNEYS } from './journeys.ts';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    globalSetup: ['tests/build-page.ts'],
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'all', include: ['tests/**/*.test.ts'], exclude: ['tests/storm/**', 'tests/bench/**'], globalSetup: [] } },
      // The same files once more, through the window's own program in place of the server.
      { extends: true, test: { name: 'window', include: [...JOURNEYS], env: { TRUNNION_SHELL: 'rehearsal' }, globalSetup: [] } },
    ],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
