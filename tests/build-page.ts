import { buildWhenStale } from '../electron/start/build-when-stale.ts';
import { PROJECT } from '../electron/start/bundle.ts';
import { PAGE_BUILD, WINDOW_BUILD } from '../electron/start/what-is-built.ts';
import { SAMPLE_BUILD } from './sample-build.ts';

const say = (line: string): void => void process.stderr.write(`${line}\n`);

/** Builds the page, the window and the sample once, before any test: one that is built while another uses it would be gone for a moment. */
export async function setup(): Promise<void> {
  for (const built of [PAGE_BUILD, WINDOW_BUILD]) await buildWhenStale(PROJECT, built, say);
  // A sample that cannot be written fails the specs that begin with it, and no other test.
  await buildWhenStale(PROJECT, SAMPLE_BUILD, say).catch((error: unknown) => say(`The sample could not be written: ${String(error)}`));
}
