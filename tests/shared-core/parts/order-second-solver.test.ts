import { describe, expect, test } from 'vitest';
import { bruteForce } from './order-brute-force.ts';
import { orderFeatures, type AnsweredOrder } from './order-features.ts';
import { middleOrder } from './middle-order.ts';
import { secondSolverOrder } from './order-second-solver.ts';
import { smallOrder } from './order-seeds.ts';
import { instanceOf, solved } from './order-written.ts';

/** A twentieth of the storm's orders with every test run; any number by STORM_MIDDLE_ORDERS. */
const SEEDS = Number(process.env['STORM_MIDDLE_ORDERS'] ?? 10);

describe('larger orders, solved by two solvers from two programs', () => {
  const orders: AnsweredOrder[] = [];

  // `solved` holds every answer against the verifier.
  test.each(Array.from({ length: SEEDS }, (_, at) => at + 1))('seed %i', { timeout: 600_000 }, async (seed) => {
    const problem = middleOrder(seed);
    const answer = await solved(problem);
    orders.push({ instance: instanceOf(problem), answer });
    const unmet = new Set(answer.unmet.map(({ need }) => need));
    const settled = [0, 1, 2].map((rank) => problem.needs.filter((need) => (need.rank ?? 1) === rank && !unmet.has(need.id)).length);
    expect({ settled, totalMinor: answer.totalMinor }).toEqual(secondSolverOrder(problem));
    expect(answer).toMatchObject({ status: 'optimal', boundMinor: answer.totalMinor });
  });

  test('between them they use every feature', () => {
    const features = orderFeatures(orders);
    expect(Math.min(...Object.values(features)), JSON.stringify(features)).toBeGreaterThanOrEqual(Math.floor(SEEDS / 10));
  });
});

describe('the second solver itself', () => {
  test.each(Array.from({ length: 20 }, (_, at) => 10_001 + at))('agrees with trying every way, seed %i', (seed) => {
    expect(secondSolverOrder(smallOrder(seed))).toEqual(bruteForce(smallOrder(seed)));
  });
});
