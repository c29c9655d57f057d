import { defineConfig } from 'vite';

/** The page: bundled without inline script and without eval, so that it runs under the strict policy it is served with. */
export default defineConfig({
  root: new URL('.', import.meta.url).pathname,
  base: '/',
  // Whoever gives out the page puts a fresh nonce in these places (electron/loopback/page-files.ts).
  html: { cspNonce: '__NONCE_OF_THIS_LOAD__' },
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    // Data URLs for small files would widen the policy; every file stays a file.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1200,
    // "use client" marks code for servers that draw pages; there is none here.
    rolldownOptions: { onLog: (level, log, say) => log.code === 'MODULE_LEVEL_DIRECTIVE' || say(level, log) },
  },
});
