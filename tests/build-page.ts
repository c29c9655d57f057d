import { buildWhenStale } from '../electron/start/build-when-stale.ts';
import { PROJECT } from '../electron/start/bundle.ts';
import { PAGE_BUILD } from '../electron/start/what-is-built.ts';

/** Builds the page once, before any test: one that is built while another serves it would be gone for a moment. */
export async function setup(): Promise<void> {
  await buildWhenStale(PROJECT, PAGE_BUILD, (line) => void process.stderr.write(`${line}\n`));
}
