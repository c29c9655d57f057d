import { must } from '../../../shared-core/result/assert.ts';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import type { OrderInstance, OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';
import { solveOrder, type OrderOptions } from '../../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';
import { directSolver } from '../../../electron/solver/highs-instance.ts';

type Written = OrderInstanceAsWritten;

/** Pieces of an order problem, with what a test does not care about filled in. */
export interface Pieces {
  readonly suppliers?: readonly Partial<Written['suppliers'][number]>[];
  readonly parts?: readonly (Partial<Written['parts'][number]> & { id: string })[];
  readonly offers?: readonly (Partial<Written['offers'][number]> & { part: string; priceMinor: number })[];
  readonly needs?: readonly (Partial<Written['needs'][number]> & { spec: string; quantity: number })[];
  readonly shelf?: Written['shelf'];
}

/** A small problem: one supplier s1 that charges nothing, offers o1, o2 ... of single pieces, needs n1, n2 ... in good time. */
export function written({ suppliers = [{}], parts = [], offers = [], needs = [], shelf = [] }: Pieces): Written {
  return {
    suppliers: suppliers.map((each, i) => ({ id: `s${i + 1}`, deliveryMinor: 0, leadDays: 1, ...each })),
    parts: parts.map((each) => ({ meets: [], ...each })),
    offers: offers.map((each, i) => ({ id: `o${i + 1}`, supplier: 's1', quantity: 1, ...each })),
    needs: needs.map((each, i) => ({ id: `n${i + 1}`, car: 'c1', neededBy: '2027-01-16', ...each })),
    shelf: [...shelf],
    orderOn: '2027-01-02',
  };
}

/** The problem with its defaults; a test's own mistake throws. */
export function instanceOf(problem: unknown): OrderInstance {
  const read = readOrderInstance(problem);
  if (!read.ok) throw new Error(JSON.stringify(read.refusal));
  return read.value;
}

/** One HiGHS for all tests of a file. */
export const testSolver = directSolver();

/** Solves, and holds the verifier to have nothing to say. */
export async function solved(problem: unknown, options?: OrderOptions): Promise<OrderAnswer> {
  const instance = instanceOf(problem);
  const answer = await solveOrder(instance, testSolver, options);
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  const faults = verifyOrder(instance, answer.value);
  if (faults.length > 0) throw new Error(JSON.stringify(must(faults[0], 'fault')));
  return answer.value;
}
