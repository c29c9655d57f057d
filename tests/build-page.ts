import { buildWhenStale } from '../electron/start/build-when-stale.ts';
import { PROJECT } from '../electron/start/bundle.ts';
import { PAGE_BUILD, WINDOW_BUILD } from '../electron/start/what-is-built.ts';
import { SAMPLE_BUILD } from './sample-build.ts';

/** Builds the page, the window and the sample once, before any test: one that is built while another uses it would be gone for a moment. */
export async function setup(): Promise<void> {
  for (const built of [PAGE_BUILD, WINDOW_BUILD, SAMPLE_BUILD]) await buildWhenStale(PROJECT, built, (line) => void process.stderr.write(`${line}\n`));
}
