import { renameSync, rmSync } from 'node:fs';
import { HOUSEHOLD_ID, households, type Household } from '../../../shared-core/fleet/household.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';
import { pushAllChanged } from '../push-changed.ts';
import { syncAtLast, withoutSync } from '../../store/write-without-sync.ts';
import { sampleFolder, unfinishedSample } from '../sample-folder.ts';

/** Opens the sample: written into a folder of its own, which takes its place only when it is whole. */
export async function openSample(context: HostContext): Promise<Result<{ household: Household }>> {
  if (context.isSample()) return refuse('sample-open');
  const folder = sampleFolder(context.home);
  const unfinished = unfinishedSample(context.home);
  rmSync(unfinished, { recursive: true, force: true });
  const written = await fill(context, unfinished);
  if (!written.ok) {
    rmSync(unfinished, { recursive: true, force: true });
    return written;
  }
  rmSync(folder, { recursive: true, force: true });
  renameSync(unfinished, folder);
  const opened = context.swap(folder);
  if (!opened.ok) return opened;
  pushAllChanged(context);
  return ok({ household: must(context.household().facts.get(households, HOUSEHOLD_ID), 'sample household') });
}

async function fill(context: HostContext, folder: string): Promise<Result<null>> {
  // Loaded only when it is asked for: the sample is large, and every command passes here.
  const { worldOn, writeSample } = await import('../write-sample.ts');
  let day = context.world.today();
  const host = context.compose(folder, worldOn(context.world, () => day));
  if (!host.ok) return host;
  const { store } = host.value.context.household();
  try {
    // Nothing here is a person's yet: a folder cut short is thrown away, so that one sync at the end is enough.
    withoutSync(store);
    const written = await writeSample(day, (next) => { day = next; }, (operation, request) => host.value.call(operation, request));
    syncAtLast(store);
    return written;
  } finally {
    await host.value.close();
  }
}
