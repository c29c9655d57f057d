import { describe, expect, test } from 'vitest';
import type { Program } from '../../../shared-core/integer-program/program.ts';
import type { ProgramAnswer, SolveOptions, Solver } from '../../../shared-core/integer-program/solver.ts';
import { solveOrder } from '../../../shared-core/parts/order-solve.ts';
import { verifyOrder } from '../../../shared-core/parts/order-verify.ts';
import { instanceOf, solved, testSolver, written } from './order-written.ts';

const filter = { id: 'filter', meets: ['filter-A'] };
const two = written({
  suppliers: [{ deliveryMinor: 500, freeFromMinor: 2000 }],
  parts: [filter],
  offers: [{ part: 'filter', priceMinor: 700, most: 3 }],
  needs: [{ spec: 'filter-A', quantity: 1, step: 1 }, { spec: 'filter-A', quantity: 1, step: 1, rank: 0 }],
});
const tooMany = { ...two, needs: [...two.needs, ...[3, 4].map((i) => ({ id: `n${i}`, car: 'c2', spec: 'filter-A', quantity: 1, neededBy: '2027-01-16' }))] };

/** Lets another solver answer, and then changes what it says. */
function meddling(change: (answer: ProgramAnswer, program: Program, options: SolveOptions | undefined, call: number) => ProgramAnswer): Solver & { calls: () => number } {
  let calls = 0;
  return { solve: async (program, options) => change(await testSolver.solve(program, options), program, options, ++calls), calls: () => calls };
}

describe('solveOrder', () => {
  test('asks for one program where all can be met and no terms are broken, and for the gap to be closed', async () => {
    const seen: (SolveOptions | undefined)[] = [];
    const solver = meddling((answer, _program, options) => (seen.push(options), answer));
    const free = { ...two, suppliers: two.suppliers.map((supplier) => ({ ...supplier, freeFromMinor: 1400 })) };
    expect(await solveOrder(instanceOf(free), solver)).toMatchObject({ ok: true, value: { status: 'optimal', totalMinor: 1400 } });
    expect(seen).toMatchObject([{ absoluteGap: 0.9, relativeGap: 0 }]);
  });

  test('asks for another with the terms that the first order broke', async () => {
    const seen: (SolveOptions | undefined)[] = [];
    const solver = meddling((answer, _program, options) => (seen.push(options), answer));
    // Without terms 14.00; delivery is free from 20.00 only, and a third filter would cost more than its 5.00.
    expect(await solveOrder(instanceOf(two), solver)).toMatchObject({ ok: true, value: { status: 'optimal', totalMinor: 1900 } });
    expect(seen).toMatchObject([{ absoluteGap: 0.9 }, { absoluteGap: 0.9 }]);
  });

  test('asks rank by rank, then for the cost, where not all can be met', async () => {
    const solver = meddling((answer) => answer);
    const order = await solveOrder(instanceOf(tooMany), solver);
    expect(order).toMatchObject({ ok: true, value: { status: 'optimal', totalMinor: 2100, deliveryMinor: 0 } });
    // All together, rank 0, rank 1, cost; there is no wish.
    expect(solver.calls()).toBe(4);
  });

  test('a stopped solve says so, with its bound, and still passes the verifier', async () => {
    const solver = meddling((answer) => (answer.status === 'optimal' ? { status: 'stopped', reason: 'time', best: answer, bound: 15.002, nodes: 1 } : answer));
    const order = await solveOrder(instanceOf(two), solver);
    // Every sum is a multiple of 1.00, so an order above 15.002 costs 16.00 or more.
    expect(order).toMatchObject({ ok: true, value: { status: 'stopped', totalMinor: 1900, boundMinor: 1600 } });
    if (order.ok) expect(verifyOrder(instanceOf(two), order.value)).toEqual([]);
  });

  test('a bound within less than one unit of money is a proof, however the solve ended', async () => {
    const solver = meddling((answer) => (answer.status === 'optimal' ? { status: 'stopped', reason: 'nodes', best: answer, bound: answer.objective - 0.5, nodes: 1 } : answer));
    expect(await solveOrder(instanceOf(two), solver)).toMatchObject({ ok: true, value: { status: 'optimal', boundMinor: 1900 } });
  });

  test('where it is not proved how many can be met, no bound on the cost is claimed', async () => {
    const solver = meddling((answer, _program, _options, call) => (call === 2 && answer.status === 'optimal' ? { status: 'stopped', reason: 'time', best: answer, bound: -9, nodes: 1 } : answer));
    expect(await solveOrder(instanceOf(tooMany), solver)).toMatchObject({ ok: true, value: { status: 'stopped', boundMinor: 0, totalMinor: 2100 } });
  });

  test('stopped at the last program, it keeps what the one before found', async () => {
    const solver = meddling((answer, _program, _options, call) => (call === 4 ? { status: 'stopped', reason: 'time', best: null, bound: 700, nodes: 1 } : answer));
    const order = await solveOrder(instanceOf(tooMany), solver);
    expect(order).toMatchObject({ ok: true, value: { unmet: [{ code: 'not-enough' }] } });
  });

  test('stopped before anything was found: refused', async () => {
    const solver = meddling(() => ({ status: 'stopped', reason: 'time', best: null, bound: null, nodes: 0 }));
    expect(await solveOrder(instanceOf(two), solver)).toEqual({ ok: false, refusal: { code: 'order-not-found', values: {} } });
  });

  test('a stop that was asked for asks no further program', async () => {
    const solver = meddling(() => ({ status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 }));
    const stop = { stopped: true, onStop: () => () => undefined };
    expect(await solveOrder(instanceOf(two), solver, { stop })).toMatchObject({ ok: false, refusal: { code: 'order-not-found' } });
    expect(solver.calls()).toBe(1);
  });

  test('a solver that reckons loosely is asked again more strictly, and not believed a second time', async () => {
    // It claims free delivery and one pack fewer than are needed.
    const loose = (answer: ProgramAnswer, program: Program): ProgramAnswer =>
      answer.status === 'optimal' ? { ...answer, values: answer.values.map((value, at) => ((program.variables[at]?.upper ?? 0) > 1 && program.variables[at]?.whole === true ? Math.max(0, value - 1) : value)) } : answer;
    const once = meddling((answer, program, options) => (options?.tolerance === 1e-9 ? answer : loose(answer, program)));
    expect(await solveOrder(instanceOf(two), once)).toMatchObject({ ok: true, value: { totalMinor: 1900 } });
    // Without the broken terms and with them, twice.
    expect(once.calls()).toBe(4);
    await expect(solveOrder(instanceOf(two), meddling(loose))).rejects.toThrow('Bug');
  });

  test('what shares out well but breaks another rule is not let through either', async () => {
    const minimum = written({ suppliers: [{ minimumMinor: 500 }], parts: [filter], offers: [{ part: 'filter', priceMinor: 300 }], needs: [{ spec: 'filter-A', quantity: 1 }] });
    // Two packs reach the minimum; one covers the need, and is what it claims at first.
    const loose = (answer: ProgramAnswer): ProgramAnswer => (answer.status === 'optimal' ? { ...answer, values: answer.values.map((value) => (value === 2 ? 1 : value)) } : answer);
    const once = meddling((answer, _program, options) => (options?.tolerance === 1e-9 ? answer : loose(answer)));
    expect(await solveOrder(instanceOf(minimum), once)).toMatchObject({ ok: true, value: { totalMinor: 600 } });
    expect(once.calls()).toBe(4);
  });

  test.each([
    { case: 'quantities', change: { needs: [{ id: 'n1', car: 'c', spec: 'filter-A', quantity: 1_000_000, neededBy: '2027-01-16' }], offers: [{ id: 'o1', supplier: 's1', part: 'kit', quantity: 0.000001, priceMinor: 1 }], parts: [filter, { id: 'kit', meets: [], contains: [{ part: 'filter', quantity: 0.000001 }] }] }, code: 'figures-too-large', offer: undefined },
    { case: 'sums of money', change: { needs: [{ id: 'n1', car: 'c', spec: 'filter-A', quantity: 1_000_000, neededBy: '2027-01-16' }], offers: [{ id: 'o1', supplier: 's1', part: 'filter', quantity: 1, priceMinor: 1_000_000_000_000 }] }, code: 'offer-too-large', offer: 'o1' },
    { case: 'the sums of one offer among others', change: { offers: [{ id: 'o1', supplier: 's1', part: 'filter', quantity: 1, priceMinor: 1 }, { id: 'o2', supplier: 's1', part: 'filter', quantity: 1, priceMinor: 1, breaks: [{ packs: 100_000, priceMinor: 1_000_000_000_000 }] }] }, code: 'offer-too-large', offer: 'o2' },
  ])('refuses $case too large to reckon exactly', async ({ change, code, offer }) => {
    expect(await solveOrder(instanceOf({ ...two, ...change }), testSolver)).toMatchObject({ ok: false, refusal: { code, values: offer === undefined ? {} : { offer } } });
  });

  test('large sums are exact: thresholds of thousands of millions, missed by one', async () => {
    const big = (freeFromMinor: number) => solved(written({ suppliers: [{ deliveryMinor: 7, freeFromMinor }], parts: [filter], offers: [{ part: 'filter', priceMinor: 333_333_333_331 }], needs: [{ spec: 'filter-A', quantity: 3 }] }));
    expect((await big(999_999_999_993)).totalMinor).toBe(999_999_999_993);
    expect((await big(999_999_999_994)).totalMinor).toBe(1_000_000_000_000);
  });

  test('a minimum of thousands of millions, missed by one, takes another pack', async () => {
    const big = (minimumMinor: number) => solved(written({ suppliers: [{ minimumMinor }], parts: [filter], offers: [{ part: 'filter', priceMinor: 100_000_001 }], needs: [{ spec: 'filter-A', quantity: 20 }] }));
    expect((await big(2_000_000_020)).totalMinor).toBe(2_000_000_020);
    expect((await big(2_000_000_021)).totalMinor).toBe(2_100_000_021);
  });
});
