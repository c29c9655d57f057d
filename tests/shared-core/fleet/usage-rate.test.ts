import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitUsage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, anySeason, mustFit, usageOfVector, usageVectors } from './usage-examples.ts';

/** Readings at a steady distance a day, `days` apart. */
const steady = (kmADay: number, days: number, count: number) => Array.from({ length: count }, (_, at) => ({ day: at * days, km: at * days * kmADay }));

describe('rate and exposure', () => {
  test.each(usageVectors)('$case', (vector) => {
    const usage = usageOfVector(vector);
    expect(usage.ratePerSeasonDay.toFixed(4)).toBe(vector.rate);
    expect(usage.exposure.toFixed(3)).toBe(vector.exposure);
  });

  test('no reading, no usage', () => {
    expect(fitUsage({ readings: [], declaredKmAYear: 12_000, season: makeSeason('north') })).toBeNull();
  });

  test('one reading gives the starting guess', () => {
    expect(mustFit([{ day: 5, km: 9 }], 7305)).toMatchObject({ ratePerSeasonDay: 20, priorDays: 60, prior: 'declared', measuredRate: null, gapDays: 0 });
    expect(mustFit([{ day: 5, km: 9 }])).toMatchObject({ ratePerSeasonDay: 13_000 / 365.25, priorDays: 30, prior: 'generic' });
  });

  test('the southern summer is the northern winter: the same readings half a year apart in the calendar', () => {
    // 31 days of July there, of January here; both months have 31 days. Source: by hand.
    const january = mustFit([{ day: 0, km: 0 }, { day: 31, km: 1000 }], null, 'south');
    expect(january.measuredRate).toBeCloseTo(1000 / (31 * 1.06), 9);
    expect(mustFit([{ day: 0, km: 0 }, { day: 31, km: 1000 }], null, 'north').measuredRate).toBeCloseTo(1000 / (31 * 0.92), 9);
  });

  test('the rate lies between the starting guess and what was measured', () => {
    fc.assert(fc.property(anyReadings, anySeason, fc.option(fc.integer({ min: 500, max: 80_000 })), (readings, season, declaredKmAYear) => {
      const usage = fitUsage({ readings, declaredKmAYear, season });
      if (usage === null || usage.measuredRate === null) return;
      const start = usage.prior === 'declared' && declaredKmAYear !== null ? declaredKmAYear / 365.25 : 13_000 / 365.25;
      expect(usage.ratePerSeasonDay).toBeGreaterThanOrEqual(Math.min(start, usage.measuredRate) - 1e-9);
      expect(usage.ratePerSeasonDay).toBeLessThanOrEqual(Math.max(start, usage.measuredRate) + 1e-9);
    }));
  });
});

describe('guard on a declared distance', () => {
  // Source: house measurement, section 3: three readings, 180 days, more than 1.8 times apart. 36.525 a day = 13 340.76 a year.
  test.each([
    { case: 'agrees', readings: steady(40, 90, 3), declared: 40 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'half as much again is taken', readings: steady(40, 90, 3), declared: 60 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'just inside 1.8 above', readings: steady(40, 90, 3), declared: 71.9 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'just outside 1.8 above', readings: steady(40, 90, 3), declared: 72.1 * 365.25, prior: 'declared-set-aside', priorDays: 30 },
    { case: 'just inside 1.8 below', readings: steady(72, 90, 3), declared: 40.1 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'just outside 1.8 below', readings: steady(72, 90, 3), declared: 39.9 * 365.25, prior: 'declared-set-aside', priorDays: 30 },
    { case: 'only two readings', readings: steady(40, 180, 2), declared: 400 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'only 178 days', readings: steady(40, 89, 3), declared: 400 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'three on two days are two', readings: [...steady(40, 180, 2), { day: 180, km: 7201 }], declared: 400 * 365.25, prior: 'declared', priorDays: 60 },
    { case: 'a car that stood still', readings: steady(0, 90, 3), declared: 12_000, prior: 'declared-set-aside', priorDays: 30 },
  ])('$case', ({ readings, declared, prior, priorDays }) => {
    expect(mustFit(readings, declared, 'none')).toMatchObject({ prior, priorDays });
  });

  test('a figure set aside leaves what no figure gives', () => {
    const { prior, ...asideless } = mustFit(steady(40, 90, 4), 200_000);
    expect(prior).toBe('declared-set-aside');
    expect({ ...asideless, prior: 'generic' }).toEqual(mustFit(steady(40, 90, 4)));
  });

  test.each([0, -1, Number.NaN, Infinity])('a declared %d is our own bug', (declared) => {
    expect(() => mustFit(steady(40, 90, 2), declared)).toThrow(/declared/);
  });
});
