import type { SolveProgress } from '../../../shared-core/integer-program/solver.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { proposeOrder } from '../../../shared-core/views/order-view.ts';
import type { OrderRequest, OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { workerSolver } from '../../solver/worker-solver.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { beginJob } from '../running-jobs.ts';

/** Merges the needs of all cars into orders; the solver runs in a thread of its own, tells how far it is, and can be stopped: then the best found so far stands. */
export async function serveOrder(context: HostContext, request: OrderRequest): Promise<Result<OrderView>> {
  const job = beginJob(context, request.job);
  if (!job.ok) return job;
  const solver = workerSolver();
  let done = false;
  try {
    const options = { stop: job.value.stop, onProgress: (progress: SolveProgress) => job.value.progress(progress.nodes, null) };
    const view = await proposeOrder(context.household().facts, request, momentOf(context.world), solver, options);
    done = view.ok;
    return view;
  } finally {
    job.value.end(done);
    await solver.close();
  }
}
