import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spread } from '../../../shared-core/ledger/spread.ts';

describe('an amount spread along a whole', () => {
  // By hand.
  test.each([
    { case: 'a third each', minor: 100, whole: 3, positions: [1, 2, 3], shares: [33, 34, 33] },
    { case: 'what has not gone keeps its part', minor: 3290, whole: 5000, positions: [4100], shares: [2698] },
    { case: 'going back gives back', minor: 100, whole: 4, positions: [2, 1, 4], shares: [50, -25, 75] },
    { case: 'no more than the whole', minor: 100, whole: 2, positions: [1, 5, 6], shares: [50, 50, 0] },
    { case: 'nothing', minor: 0, whole: 2, positions: [1, 2], shares: [0, 0] },
    { case: 'a halved minor unit, upwards', minor: 1, whole: 2, positions: [1, 2], shares: [1, 0] },
  ])('$case', ({ minor, whole, positions, shares }) => {
    expect(spread(minor, whole, positions)).toEqual(shares);
  });

  test('steps to the end take all, each within one unit of its exact part', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 10_000_000 }), fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 12 }), (minor, steps) => {
      const whole = steps.reduce((sum, step) => sum + step, 0);
      const positions = steps.map((_, at) => steps.slice(0, at + 1).reduce((sum, step) => sum + step, 0));
      const shares = spread(minor, whole, positions);
      expect(shares.reduce((sum, share) => sum + share, 0)).toBe(minor);
      for (const [at, step] of steps.entries()) expect(Math.abs((shares[at] ?? 0) - (minor * step) / whole)).toBeLessThanOrEqual(1);
    }));
  });
});
