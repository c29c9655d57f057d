import type { z } from 'zod';
import type { SolveProgress } from '../../../shared-core/integer-program/solver.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { proposePlan } from '../../../shared-core/views/plan-view.ts';
import type { planRequestSchema, PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { solvePlanInThread } from '../../solver/plan-thread.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { beginJob, stopJob } from '../running-jobs.ts';

/** Proposes the sessions of all cars; solving runs in a thread of its own, tells how far it is, and can be stopped: then the best found so far stands. */
export async function servePlan(context: HostContext, request: z.output<typeof planRequestSchema>): Promise<Result<PlanView>> {
  const job = beginJob(context, request.job);
  if (!job.ok) return job;
  let done = false;
  try {
    const options = { stop: job.value.stop, onProgress: (progress: SolveProgress) => job.value.progress(progress.nodes, null) };
    const view = await proposePlan(context.household().facts, request, momentOf(context.world), (instance) => solvePlanInThread(instance, options));
    done = view.ok;
    return view;
  } finally {
    job.value.end(done);
  }
}

/** Stops long work by its name. */
export function serveStop(context: HostContext, request: { readonly job: string }): Result<{ stopped: boolean }> {
  return ok({ stopped: stopJob(context, request.job) });
}
