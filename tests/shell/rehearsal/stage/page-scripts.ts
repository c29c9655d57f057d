import { randomUUID } from 'node:crypto';
import { build } from 'vite';

/** What is put into each document before any script of its own. */
export interface PageScripts {
  /** Into the page's own world. */
  readonly page: string;
  /** Into the preload script's world, before it. */
  readonly preload: string;
}

let bundled: Promise<PageScripts> | null = null;

/** The scripts of the two worlds, each as one text; bundled once. */
export function pageScripts(): Promise<PageScripts> {
  return (bundled ??= bundleBoth());
}

async function bundleBoth(): Promise<PageScripts> {
  // No script of a page can guess by which names the two worlds speak.
  const define = { PAGE_SIDE: JSON.stringify(`page-${randomUUID()}`), PRELOAD_SIDE: JSON.stringify(`preload-${randomUUID()}`) };
  return { page: await bundle('page-world', define), preload: await bundle('preload-world', define) };
}

async function bundle(name: string, define: Readonly<Record<string, string>>): Promise<string> {
  const entry = new URL(`../page/${name}.ts`, import.meta.url).pathname;
  const built = await build({ configFile: false, logLevel: 'silent', define, build: { write: false, minify: false, lib: { entry, formats: ['iife'], name: 'rehearsed' } } });
  const [outcome] = Array.isArray(built) ? built : [built];
  const code = 'output' in (outcome ?? {}) ? (outcome as unknown as { output: readonly [{ code: string }] }).output[0].code : '';
  // Kept out of the page's names: nothing of it may be found by a script of the page.
  return `{ ${code.replace(/^var rehearsed = /, '')} }`;
}
