import { renameSync, rmSync } from 'node:fs';
import { HOUSEHOLD_ID, households, type Household } from '../../../shared-core/fleet/household.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';
import { beginJob, type RunningJob } from '../running-jobs.ts';
import { pushAllChanged } from '../push-changed.ts';
import { syncAtLast, withoutSync } from '../../store/write-without-sync.ts';
import { sampleFolder, unfinishedSample } from '../sample-folder.ts';

/** Opens the sample: written into a folder of its own, which takes its place only when it is whole. Stopped, nothing of it is left. */
export async function openSample(context: HostContext, request: { readonly job: string | null }): Promise<Result<{ household: Household }>> {
  if (context.isSample()) return refuse('sample-open');
  const job = beginJob(context, request.job);
  if (!job.ok) return job;
  let done = false;
  try {
    const opened = await writeAndOpen(context, job.value);
    done = opened.ok;
    return opened;
  } finally {
    job.value.end(done);
  }
}

async function writeAndOpen(context: HostContext, job: RunningJob): Promise<Result<{ household: Household }>> {
  const folder = sampleFolder(context.home);
  const unfinished = unfinishedSample(context.home);
  rmSync(unfinished, { recursive: true, force: true });
  const written = await fill(context, unfinished, job);
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

async function fill(context: HostContext, folder: string, job: RunningJob): Promise<Result<null>> {
  // Loaded only when it is asked for: the sample is large, and every command passes here.
  const { worldOn, writeSample } = await import('../write-sample.ts');
  let day = context.world.today();
  const host = context.compose(folder, worldOn(context.world, () => day));
  if (!host.ok) return host;
  const { store } = host.value.context.household();
  try {
    // Nothing here is a person's yet: a folder cut short is thrown away, so that one sync at the end is enough.
    withoutSync(store);
    const written = await writeSample(day, {
      setDay: (next) => { day = next; },
      call: (operation, request) => host.value.call(operation, request),
      onStep: (done, total) => breathe(job, done, total),
    });
    syncAtLast(store);
    return written;
  } finally {
    await host.value.close();
  }
}

/** Steps between two breaths: some 30 ms of the processor. */
const STEPS_AT_ONCE = 12;

/** Tells how far it is, and lets the host hear others for a moment; answers whether to go on. */
async function breathe(job: RunningJob, done: number, total: number): Promise<boolean> {
  if (done % STEPS_AT_ONCE === 0) {
    job.progress(done, total);
    await new Promise((heard) => setImmediate(heard));
  }
  return !job.stop.stopped;
}
