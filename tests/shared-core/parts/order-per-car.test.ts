import { describe, expect, test } from 'vitest';
import { orderPerCar } from '../../../shared-core/parts/order-per-car.ts';
import { smallOrder } from './order-seeds.ts';
import { instanceOf, solved, testSolver, written } from './order-written.ts';

const SEEDS = Array.from({ length: 50 }, (_, at) => 9001 + at);

/** A small order of two or three cars, each with needs of its own. */
const household = (seed: number) => {
  const problem = smallOrder(seed);
  return { ...problem, needs: problem.needs.map((need, at) => ({ ...need, car: `c${at % 3}`, laterMinor: null })) };
};

describe('each car alone', () => {
  test('leaves what it does not take to the next, and cannot have what the one before took of a limited offer', async () => {
    const problem = instanceOf(written({
      parts: [{ id: 'oil', meets: ['oil-A'] }],
      offers: [{ part: 'oil', quantity: 5, priceMinor: 3000, most: 1 }, { part: 'oil', quantity: 5, priceMinor: 4000 }],
      needs: [{ car: 'a', spec: 'oil-A', quantity: 4 }, { car: 'b', spec: 'oil-A', quantity: 1 }, { car: 'c', spec: 'oil-A', quantity: 4 }],
    }));
    // By hand: a buys the one can at 30.00, b takes the litre left, c must buy at 40.00.
    expect(await orderPerCar(problem, testSolver)).toMatchObject({ value: { totalMinor: 7000, met: 3, cars: [{ car: 'a', totalMinor: 3000 }, { car: 'b', totalMinor: 0 }, { car: 'c', totalMinor: 4000 }] } });
  });

  // Source: own property: all that the cars buy one by one could be bought together.
  test('never costs less than all together, where both meet all that is needed', async () => {
    let [less, both] = [0, 0];
    for (const seed of SEEDS) {
      const problem = household(seed);
      const merged = await solved(problem);
      const apart = await orderPerCar(instanceOf(problem), testSolver);
      if (!apart.ok) throw new Error(apart.refusal.code);
      if (merged.unmet.length > 0 || apart.value.met < problem.needs.length) continue;
      both += 1;
      expect(merged.totalMinor, `seed ${seed}`).toBeLessThanOrEqual(apart.value.totalMinor);
      if (merged.totalMinor < apart.value.totalMinor) less += 1;
    }
    expect(both).toBeGreaterThan(5);
    expect(less).toBeGreaterThan(0);
  }, 120_000);
});
