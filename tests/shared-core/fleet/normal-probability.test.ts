import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalProbability } from '../../../shared-core/fleet/normal-probability.ts';

describe('normal probability', () => {
  // Source: standard normal tables (from memory).
  test.each([
    { x: 0, p: 0.5 },
    { x: 0.6744897501960817, p: 0.75 },
    { x: 1, p: 0.841344746068543 },
    { x: 1.2815515655446004, p: 0.9 },
    { x: 1.959963984540054, p: 0.975 },
    { x: 3, p: 0.998650101968370 },
    { x: 4.264890793922825, p: 0.99999 },
  ])('of $x is $p', ({ x, p }) => {
    expect(normalProbability(x)).toBeCloseTo(p, 12);
    expect(normalProbability(-x)).toBeCloseTo(1 - p, 12);
  });

  test('stays within 0 and 1, rises, and ends at the ends', () => {
    expect([-Infinity, Infinity].map(normalProbability)).toEqual([0, 1]);
    expect(normalProbability(Number.NaN)).toBeNaN();
    const any = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(fc.property(any, any, (a, b) => {
      const [low, high] = [normalProbability(Math.min(a, b)), normalProbability(Math.max(a, b))];
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeLessThanOrEqual(1);
      expect(low).toBeLessThanOrEqual(high + 1e-15);
    }));
  });
});
