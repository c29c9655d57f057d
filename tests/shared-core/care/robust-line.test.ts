import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jointIntercept, robustLine, slopeBand, type LinePoint } from '../../../shared-core/care/robust-line.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { balancedSlope, norris, pointsOf, sen } from './line-examples.ts';

const lineOf = (points: readonly LinePoint[]) => must(robustLine(points), 'line');
const bandOf = (points: readonly LinePoint[], z: number) => must(slopeBand(points, z), 'band');
/** Two-sided: 80, 93 and 95 % (quantiles of the normal distribution, tabulated). */
const Z = { 80: 1.2815515655446004, 93: 1.8119106729525978, 95: 1.959963984540054 };

describe('the robust line against published values', () => {
  test('Sen 1968: slope 4, joint intercept 6, band at 93 % from 26/7 to 35/8', () => {
    // Source: seen in public tests of two libraries; the joint intercept is the one of the two that is ours (the other is 4).
    expect(lineOf(sen)).toEqual({ slope: 4, intercept: 6 });
    expect(bandOf(sen, Z[93])).toEqual({ low: 26 / 7, high: 35 / 8 });
  });

  test('one wrong value of ten times the size moves the slope by 4.5 %, where least squares gives 35.7', () => {
    // Source: recomputed with a general statistics library (reference section 8).
    const wrong = sen.map((point, at) => (at === 6 ? { x: point.x, y: 780 } : point));
    expect(lineOf(wrong).slope).toBeCloseTo(4.181818181818182, 14);
    expect(leastSquaresSlope(wrong)).toBeCloseTo(35.66548042704626, 10);
  });

  test('Norris: the slope and its 95 % band, ties among x and y and all', () => {
    // Source: recomputed with a general statistics library (reference section 8).
    expect(lineOf(norris).slope).toBeCloseTo(1.0021968365553604, 14);
    expect(bandOf(norris, Z[95]).low).toBeCloseTo(1.0011153245594469, 14);
    expect(bandOf(norris, Z[95]).high).toBeCloseTo(1.0030534351145037, 14);
    // The certified slope of least squares lies inside: NIST, 1.00211681802045 (seen).
    expect(bandOf(norris, Z[95]).low < 1.00211681802045 && bandOf(norris, Z[95]).high > 1.00211681802045).toBe(true);
  });

  test('three points: slope 0.5, joint intercept 0', () => {
    // Source: a library's documentation, which has 0.5 for the separate intercept and 0 for the joint one (seen).
    expect(lineOf(pointsOf({ x: [0, 1, 2], y: [0, 1, 1] }))).toEqual({ slope: 0.5, intercept: 0 });
  });

  test('equal values make the band narrower: by hand, with the variance for ties', () => {
    // 6 x 5 x 17 less two ties of 3 (3 x 2 x 11 each), by 18: 21, where 28.33 without ties would reach one rank further.
    const steps = pointsOf({ x: [0, 1, 2, 3, 4, 5], y: [0, 0, 0, 1, 1, 1] });
    expect(bandOf(steps, 1.7)).toEqual({ low: 0, high: 1 / 3 });
    const columns = pointsOf({ x: [0, 0, 0, 1, 1, 1], y: [0, 1, 2, 3, 4, 5] });
    expect(bandOf(columns, 1.3)).toEqual({ low: 2, high: 4 });
  });

  test.each([
    { case: 'no points', x: [], y: [] },
    { case: 'one point', x: [1], y: [1] },
    { case: 'all at one place', x: [2, 2, 2], y: [1, 2, 3] },
  ])('$case: no line', ({ x, y }) => {
    expect([robustLine(pointsOf({ x, y })), slopeBand(pointsOf({ x, y }), 1)]).toEqual([null, null]);
  });
});

/** Only to show what the robust line is spared. */
function leastSquaresSlope(points: readonly LinePoint[]): number {
  const mean = (of: (point: LinePoint) => number) => points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [x, y] = [mean((point) => point.x), mean((point) => point.y)];
  return mean((point) => (point.x - x) * (point.y - y)) / mean((point) => (point.x - x) ** 2);
}

const scatter = fc.array(fc.record({ x: fc.integer({ min: 0, max: 40 }), y: fc.integer({ min: -60, max: 60 }) }), { minLength: 2, maxLength: 14 }).filter((points) => new Set(points.map((point) => point.x)).size > 1);

describe('the robust line in general', () => {
  test('lies where as many pairs are steeper as are flatter, found another way', () => {
    fc.assert(fc.property(scatter, (points) => {
      const { least, most } = balancedSlope(points);
      expect(lineOf(points).slope).toBeCloseTo((least + most) / 2, 6);
    }));
  });

  test('leaves as many points above as below', () => {
    fc.assert(fc.property(scatter, fc.double({ min: -5, max: 5, noNaN: true }), (points, slope) => {
      const left = points.map(({ x, y }) => y - slope * x - jointIntercept(points, slope));
      const [above, below] = [left.filter((rest) => rest > 1e-9).length, left.filter((rest) => rest < -1e-9).length];
      expect(Math.max(above, below)).toBeLessThanOrEqual(points.length / 2);
    }));
  });

  test('does not know the order of its points', () => {
    fc.assert(fc.property(scatter.chain((points) => fc.tuple(fc.constant(points), fc.shuffledSubarray(points, { minLength: points.length }))), ([points, shuffled]) => {
      expect(lineOf(shuffled)).toEqual(lineOf(points));
      expect(bandOf(shuffled, Z[80])).toEqual(bandOf(points, Z[80]));
    }));
  });

  test('its slope lies in its band, and a surer band is no narrower', () => {
    fc.assert(fc.property(scatter, (points) => {
      const [usual, surer] = [bandOf(points, Z[80]), bandOf(points, Z[95])];
      expect(usual.low <= lineOf(points).slope && lineOf(points).slope <= usual.high).toBe(true);
      expect(surer.low <= usual.low && usual.high <= surer.high).toBe(true);
    }));
  });
});

describe('the band keeps what it promises', () => {
  // Source: the exact chance of Kendall's statistic, counted by the number of pairs out of order in a random order (Kendall 1938;
  // from memory): ways[n][k] = sum of ways[n-1][k-j] for j < n. A slope lies outside below the k-th of N pairs where N - 2 (k - 1) or more are out.
  function chanceInside(n: number, low: number, high: number): number {
    let ways = [1];
    for (let size = 2; size <= n; size += 1) ways = Array.from({ length: ways.length + size - 1 }, (_, pairs) => Array.from({ length: size }, (_, j) => ways[pairs - j] ?? 0).reduce((a, b) => a + b, 0));
    const all = ways.reduce((a, b) => a + b, 0);
    const outside = (rank: number) => ways.slice(0, rank).reduce((a, b) => a + b, 0) / all;
    return 1 - outside(low) - outside(high);
  }

  test.each([4, 5, 6, 7, 8, 10, 12, 20])('at least four fifths with %s points', (n) => {
    // Points whose pairs have all different slopes, so that the place of an edge among them is known.
    const points = Array.from({ length: n }, (_, at) => ({ x: at, y: Math.sqrt(2) ** at }));
    const slopes = points.flatMap((one, at) => points.slice(at + 1).map((other) => (other.y - one.y) / (other.x - one.x))).sort((a, b) => a - b);
    const { low, high } = bandOf(points, Z[80]);
    const [below, above] = [slopes.indexOf(low) + 1, slopes.length - slopes.indexOf(high)];
    const chance = chanceInside(n, below, above);
    expect(chance).toBeGreaterThanOrEqual(0.8 - 0.01);
    expect(chance).toBeLessThan(0.95);
  });

  test('three points reach no more than two thirds', () => {
    expect(chanceInside(3, 1, 1)).toBeCloseTo(2 / 3, 12);
  });
});
