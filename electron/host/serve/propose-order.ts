import type { Result } from '../../../shared-core/result/result.ts';
import { proposeOrder, type OrderView } from '../../../shared-core/views/order-view.ts';
import { workerSolver } from '../../solver/worker-solver.ts';
import { momentOf, type HostContext } from '../host-context.ts';

/** Merges the needs of all cars into orders; the solver runs in a thread of its own. */
export async function serveOrder(context: HostContext, request: { readonly horizonDays: number }): Promise<Result<OrderView>> {
  const solver = workerSolver();
  try {
    return await proposeOrder(context.household().facts, request, momentOf(context.world), solver);
  } finally {
    await solver.close();
  }
}
