import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { InlineConfig, Plugin } from 'vite';
import { operationNames } from '../../shared-core/contract/contract.ts';

/** The project's folder. */
export const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const at = (place: string) => path.join(PROJECT, place);

/** Bundles the page into dist/renderer. Vite is loaded only when something is built: a start that builds nothing is quick. */
export async function bundlePage(): Promise<void> {
  const { build } = await import('vite');
  await build({ configFile: at('renderer/vite.config.ts'), logLevel: 'warn' });
}

/**
 * Bundles what an Electron window starts with into `out`: main/main.js, each file named *-worker.ts beside it as a whole of its own, as a
 * thread is started from a file, and preload/preload.cjs. Libraries stay in node_modules.
 */
export async function bundleWindow(out: string = at('dist')): Promise<void> {
  const { build } = await import('vite');
  const main = path.join(out, 'main');
  await build({ ...bundleOf('electron/main.ts', main), plugins: [workersAsBundled] });
  for (const worker of workerFiles()) await build({ ...bundleOf(worker, main, { emptyOutDir: false }), plugins: [workersAsBundled] });
  await build(preloadBundle(path.join(out, 'preload')));
}

function workerFiles(): string[] {
  const names = readdirSync(at('electron'), { recursive: true, encoding: 'utf8' });
  return names.filter((name) => name.endsWith('-worker.ts')).map((name) => path.join('electron', name));
}

function bundleOf(source: string, outDir: string, more: InlineConfig['build'] = {}): InlineConfig {
  const rolldownOptions = { input: at(source), output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' } };
  return { configFile: false, root: at('electron'), logLevel: 'warn', build: { ssr: true, target: 'node24', outDir, emptyOutDir: true, rolldownOptions, ...more } };
}

/**
 * A thread's file goes by its source's name when run directly, and by its bundle's name here. In a package it lies beside the archive: a thread
 * reads plain files alone.
 */
const workersAsBundled: Plugin = {
  name: 'workers-as-bundled',
  enforce: 'pre',
  transform: (code) => code.replaceAll(/new URL\('\.\/([a-z-]+-worker)\.ts', import\.meta\.url\)/g, "new URL('./$1.js', import.meta.url.replace('/app.asar/', '/app.asar.unpacked/'))"),
};

/** One file of CommonJS: a sandboxed preload script can load nothing else. The names of the operations are written into it. */
function preloadBundle(outDir: string): InlineConfig {
  const rolldownOptions = { input: at('electron/preload.ts'), output: { format: 'cjs', entryFileNames: '[name].cjs' } } as const;
  return { ...bundleOf('electron/preload.ts', outDir, { rolldownOptions }), define: { OPERATION_NAMES: JSON.stringify(operationNames) } };
}
