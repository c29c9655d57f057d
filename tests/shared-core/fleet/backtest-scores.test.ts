import { describe, expect, test } from 'vitest';
import { coverageOf, scoreDistance, scoreDue, type Trial } from '../../../shared-core/fleet/backtest-scores.ts';

/** A trial in which our own method told `own` within `low` and `high`. */
const trial = (truth: number, own: number, low: number, high: number): Trial => ({
  truth, told: { own: { likely: own, range: { low, high } }, lastTwo: { likely: 2 * truth, range: null }, allHistory: { likely: truth, range: null } },
});
const FILES = [
  [trial(100, 110, 90, 105), trial(300, 270, 290, 310)],
  [trial(50, 40, 45, 49)],
];

describe('scores, in each file first', () => {
  // By hand: (10 + 30) / 400 = 0.1 and 10 / 50 = 0.2, mean 0.15.
  test('distance: sum of errors over sum of truths', () => {
    expect(scoreDistance(90, FILES, 'own')).toEqual({ days: 90, n: 3, wMAPE: 0.15 });
    expect(scoreDistance(90, FILES, 'lastTwo')).toEqual({ days: 90, n: 3, wMAPE: 1 });
    expect(scoreDistance(90, FILES, 'allHistory')).toEqual({ days: 90, n: 3, wMAPE: 0 });
  });

  // By hand: medians 20 and 10, means 20 and 10.
  test('due: median and mean error', () => {
    expect(scoreDue(2000, FILES, 'own')).toEqual({ addKm: 2000, n: 3, medianAbsDays: 15, meanAbsDays: 15 });
  });

  test('the median of an odd number is the middle one', () => {
    // By hand: errors 1, 2 and 30: median 2, mean 11.
    const odd = [[trial(10, 11, 0, 0), trial(10, 8, 0, 0), trial(10, 40, 0, 0)]];
    expect(scoreDue(2000, odd, 'own')).toEqual({ addKm: 2000, n: 3, medianAbsDays: 2, meanAbsDays: 11 });
  });

  // By hand: both of two, none of one: 1 and 0.
  test('coverage: edges count as inside', () => {
    expect(coverageOf(FILES)).toBe(0.5);
    expect(coverageOf([[trial(90, 0, 90, 100), trial(100, 0, 90, 100), trial(101, 0, 90, 100), trial(89, 0, 90, 100)]])).toBe(0.5);
  });

  test('a file in which the car stood has no ratio; no file, no score', () => {
    expect(scoreDistance(30, [[trial(0, 5, 0, 9)], [trial(50, 40, 0, 0)]], 'own')).toEqual({ days: 30, n: 2, wMAPE: 0.2 });
    expect(scoreDistance(30, [[trial(0, 5, 0, 9)]], 'own').wMAPE).toBeNull();
    expect(scoreDue(2000, [], 'own')).toEqual({ addKm: 2000, n: 0, medianAbsDays: null, meanAbsDays: null });
    expect(coverageOf([])).toBeNull();
  });
});
