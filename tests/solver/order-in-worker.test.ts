import { afterAll, describe, expect, test } from 'vitest';
import { workerSolver } from '../../electron/solver/worker-solver.ts';
import { solveOrder } from '../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../shared-core/parts/order-verify.ts';
import { readOrderInstance } from '../../shared-core/parts/read-order-instance.ts';
import { largeOrder } from '../bench/large-order.ts';
import { smallOrder } from '../shared-core/parts/order-seeds.ts';
import { instanceOf, testSolver } from '../shared-core/parts/order-written.ts';

const solver = workerSolver();
afterAll(() => solver.close());

describe('an order solved in a thread of its own', () => {
  test.each([1, 2, 3, 4, 5])('seed %i: the same as in this thread', async (seed) => {
    const instance = instanceOf(smallOrder(seed));
    expect(await solveOrder(instance, solver)).toEqual(await solveOrder(instance, testSolver));
  });

  test('stopped half-way, a large order gives what it has by then, with a bound and verified, or says that it has none', async () => {
    const read = readOrderInstance(largeOrder(3));
    if (!read.ok) throw new Error(read.refusal.code);
    const listeners = new Set<() => void>();
    const state = { stopped: false };
    const stop = { get stopped() { return state.stopped; }, onStop: (listener: () => void) => (listeners.add(listener), () => listeners.delete(listener)) };
    const order = await solveOrder(read.value, solver, {
      stop,
      onProgress: () => {
        state.stopped = true;
        for (const listener of listeners) listener();
      },
    });
    expect(state.stopped).toBe(true);
    // What was found first may still break a supplier's terms; and it may be proven before the stop is heard.
    if (!order.ok) return expect(order.refusal.code).toBe('order-not-found');
    expect(['stopped', 'optimal']).toContain(order.value.status);
    expect(order.value.boundMinor).toBeGreaterThan(0);
    expect(verifyOrder(read.value, order.value)).toEqual([]);
  });
});
