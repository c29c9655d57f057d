import { buildWhenStale } from '../electron/start/build-when-stale.ts';
import { PROJECT } from '../electron/start/bundle.ts';
import { PAGE_BUILD, WINDOW_BUILD } from '../electron/start/what-is-built.ts';

/** Builds the page and the window once, before any test: one that is built while another uses it would be gone for a moment. */
export async function setup(): Promise<void> {
  for (const built of [PAGE_BUILD, WINDOW_BUILD]) await buildWhenStale(PROJECT, built, (line) => void process.stderr.write(`${line}\n`));
}
