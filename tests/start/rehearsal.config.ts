import { defineConfig, mergeConfig } from 'vitest/config';
import tests from '../vitest.config.ts';

/** What takes half a minute and is run by itself: `npm run rehearse`. */
const { projects: _all, ...settings } = tests.test ?? {};
export default mergeConfig({ test: settings }, defineConfig({ test: { include: ['tests/start/*.rehearsal.ts'], testTimeout: 180_000, hookTimeout: 300_000 } }));
