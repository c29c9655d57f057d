import { describe, expect, test } from 'vitest';
import { atMostOf } from '../../../shared-core/fleet/binomial-tail.ts';

describe('at most so many of n', () => {
  // Source: tables of the cumulative binomial distribution (from memory), each recomputed as a sum of exact fractions.
  test.each([
    { n: 10, p: 0.8, most: 5, probability: 0.0328 },
    { n: 10, p: 0.8, most: 8, probability: 0.6242 },
    { n: 5, p: 0.5, most: 2, probability: 0.5 },
    { n: 20, p: 0.8, most: 12, probability: 0.0321 },
  ])('$most of $n at $p', ({ n, p, most, probability }) => {
    expect(atMostOf(n, p, most)).toBeCloseTo(probability, 4);
  });

  test('none is possible below 0, all at n', () => {
    expect(atMostOf(7, 0.8, -1)).toBe(0);
    expect(atMostOf(7, 0.8, 0)).toBeCloseTo(0.2 ** 7, 15);
    expect(atMostOf(7, 0.8, 7)).toBeCloseTo(1, 12);
    expect(atMostOf(0, 0.8, 0)).toBe(1);
  });
});
