import { beforeAll, describe, expect, test } from 'vitest';
import { asBefore, coverageOf, outcomeOf, type HouseholdOutcome } from './coverage.ts';

/** `npm test` asks 10 households, `npm run storm` all 200. Seeds 1 to 200 were never calibrated on: what was chosen, was chosen on 1001 to 1400. */
const HOUSEHOLDS = Number(process.env['STORM_BUDGETS'] ?? '10');
const MINUTES = 60_000;

/**
 * 24 months of simulated households (simulated-life.ts) against the band that their budget gave before. Of independent households with a true
 * 4 in 5, all but 1 in 500 tens hold 5 or more; of 200 the share lies between 75 and 85 % in 92 of 100 (binomial, textbook). Cars of a
 * household share prices and a keeper; there are some 3 of each.
 */
describe(`the band of ${HOUSEHOLDS} simulated households`, () => {
  let outcomes: readonly HouseholdOutcome[] = [];
  beforeAll(() => {
    outcomes = Array.from({ length: HOUSEHOLDS }, (_, at) => outcomeOf(at + 1));
  }, 20 * MINUTES);
  const all = HOUSEHOLDS >= 200;

  test('holds what was really paid about 4 in 5 times', () => {
    const { within, below, above } = coverageOf(outcomes.map((one) => one.whole));
    expect(within).toBeGreaterThanOrEqual(all ? 0.75 : 0.5);
    expect(within).toBeLessThanOrEqual(all ? 0.85 : 1);
    // Neither side is where all the misses are.
    for (const side of [below, above]) expect(side).toBeLessThanOrEqual(all ? 0.15 : 0.4);
  });

  test('and so does that of each car', () => {
    const { within } = coverageOf(outcomes.flatMap((one) => one.cars));
    expect(within).toBeGreaterThanOrEqual(all ? 0.75 : 0.6);
    expect(within).toBeLessThanOrEqual(all ? 0.87 : 0.97);
  });

  test('is sharp: nearer to what was paid, and narrower for as many held, than the two years before and a share of them', () => {
    const whole = outcomes.map((one) => one.whole);
    const [budget, plain] = [coverageOf(whole), asBefore(whole, 0)];
    expect(budget.offBy).toBeLessThan(0.75 * coverageOf(plain).offBy);
    const shares = Array.from({ length: 100 }, (_, at) => at / 100);
    const asMany = shares.map((share) => coverageOf(asBefore(whole, share))).find((one) => one.within >= budget.within);
    expect(budget.width).toBeLessThan(0.9 * (asMany?.width ?? Infinity));
    expect(budget.width).toBeLessThan(0.4);
    // Neither too low nor too high by and large.
    expect(Math.abs(budget.bias)).toBeLessThan(all ? 0.05 : 0.12);
  });

  test('leaves nothing out of these households: everything of theirs has a price and a day', () => {
    expect(outcomes.reduce((sum, one) => sum + one.missing, 0)).toBe(0);
  });
});
