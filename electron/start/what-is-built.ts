import { bundlePage, bundleWindow } from './bundle.ts';
import type { Built } from './build-when-stale.ts';

/** The page, for window and browser alike. */
export const PAGE_BUILD: Built = {
  name: 'page',
  sources: ['renderer', 'shared-core', 'package-lock.json'],
  result: 'dist/renderer/index.html',
  build: bundlePage,
};

/** What an Electron window starts with. */
export const WINDOW_BUILD: Built = {
  name: 'window',
  sources: ['electron', 'shared-core', 'package-lock.json'],
  result: 'dist/main/main.js',
  build: bundleWindow,
};
