import { rmSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import path from 'node:path';
import { composeHost } from '../electron/host/compose-host.ts';
import { realWorld } from '../electron/host/real-world.ts';
import type { Built } from '../electron/start/build-when-stale.ts';
import { PROJECT } from '../electron/start/bundle.ts';
import { localDate } from '../shared-core/calendar/local-date.ts';

/** The day on which the specs that work on the sample take place. */
export const SAMPLE_DAY = '2026-11-25';
const WRITTEN = path.join('dist', 'sample-for-tests', 'household.sample');

/** The sample as the button writes it, written once for all specs that begin with it open. */
export const SAMPLE_BUILD: Built = {
  name: 'sample household for the tests',
  sources: ['electron', 'shared-core', 'package-lock.json'],
  result: path.join(WRITTEN, 'household.sqlite'),
  build: writeSample,
};

async function writeSample(): Promise<void> {
  const home = path.join(PROJECT, path.dirname(WRITTEN), 'household');
  rmSync(path.dirname(home), { recursive: true, force: true });
  const day = localDate(SAMPLE_DAY);
  const host = composeHost(home, realWorld(day.ok ? day.value : null));
  if (!host.ok) throw new Error(host.refusal.code);
  const opened = await host.value.call('sample.open', {});
  await host.value.close();
  if (!opened.ok) throw new Error(opened.refusal.code);
}

/** Lays the sample beside a household's folder, where the program finds it open. */
export async function laySample(household: string): Promise<void> {
  await cp(path.join(PROJECT, WRITTEN), `${household}.sample`, { recursive: true, preserveTimestamps: true });
}
