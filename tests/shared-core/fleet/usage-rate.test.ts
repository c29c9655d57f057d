import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitUsage, type DayKm, type UseChangeDay } from '../../../shared-core/fleet/usage-rate.ts';
import { must } from '../../../shared-core/result/assert.ts';
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

describe('a change of use', () => {
  const even = makeSeason('none');
  const fit = (readings: readonly DayKm[], changes: readonly UseChangeDay[], declaredKmAYear: number | null = null) =>
    must(fitUsage({ readings, declaredKmAYear, season: even, changes }), 'usage');
  /** 20 km a day to day 400, then 60. */
  const changed = [0, 100, 200, 300, 400, 500, 600].map((day) => ({ day, km: day <= 400 ? day * 20 : 8000 + (day - 400) * 60 }));

  test('breaks the evidence: what follows is learned from what follows', () => {
    const usage = fit(changed, [{ day: 400, declaredKmAYear: null }]);
    const before = mustFit(changed.slice(0, 5), null, 'none');
    expect(usage.measuredRate).toBeCloseTo(60, 9);
    // By hand: the last two intervals weigh 180 / ln 2 * (1 - 2^(-200 / 180)) = 139.47 days.
    expect(usage.exposure).toBeCloseTo(139.47, 2);
    expect(usage.ratePerSeasonDay).toBeCloseTo((30 * before.ratePerSeasonDay + 139.47 * 60) / 169.47, 2);
    expect(usage).toMatchObject({ prior: 'as-before', priorDays: 30, readingDays: 3, gapDays: 100, lastKm: 20_000, later: [] });
  });

  test('a figure given for it is the starting guess', () => {
    expect(fit(changed.slice(0, 5), [{ day: 400, declaredKmAYear: 36_525 }])).toMatchObject({ ratePerSeasonDay: 100, prior: 'declared', priorDays: 60, exposure: 0, measuredRate: null });
  });

  test('a figure that the readings since contradict is set aside, for the use before', () => {
    const before = mustFit(changed.slice(0, 5), null, 'none');
    const usage = fit(changed, [{ day: 400, declaredKmAYear: 60 * 1.9 * 365.25 }]);
    expect(usage).toMatchObject({ prior: 'declared-set-aside', priorDays: 30 });
    expect(usage.ratePerSeasonDay).toBeCloseTo((30 * before.ratePerSeasonDay + usage.exposure * 60) / (30 + usage.exposure), 9);
  });

  test('an interval across the break counts for neither use', () => {
    const usage = fit(changed, [{ day: 450, declaredKmAYear: null }]);
    expect(usage.exposure).toBeCloseTo(mustFit([{ day: 0, km: 0 }, { day: 100, km: 6000 }], null, 'none').exposure, 9);
    expect(fit(changed, [{ day: 550, declaredKmAYear: null }])).toMatchObject({ exposure: 0, gapDays: 100, readingDays: 1 });
  });

  test('one to come stands beside the use of now', () => {
    const usage = fit(changed.slice(0, 5), [{ day: 460, declaredKmAYear: 3652.5 }, { day: 430, declaredKmAYear: null }]);
    const now = mustFit(changed.slice(0, 5), null, 'none');
    expect(usage).toEqual({ ...now, later: [{ from: 430, ratePerSeasonDay: now.ratePerSeasonDay }, { from: 460, ratePerSeasonDay: 10 }] });
  });

  test('before the first reading it takes the place of the figure given', () => {
    expect(fit(changed.slice(0, 1), [{ day: -5, declaredKmAYear: 3652.5 }], 99_999)).toMatchObject({ ratePerSeasonDay: 10, prior: 'declared' });
    expect(fit(changed.slice(0, 1), [{ day: -5, declaredKmAYear: null }], 3652.5)).toMatchObject({ ratePerSeasonDay: 10, prior: 'as-before', priorDays: 30 });
  });

  test('none at all changes nothing', () => {
    fc.assert(fc.property(anyReadings, anySeason, (readings, season) => {
      expect(fitUsage({ readings, declaredKmAYear: null, season, changes: [] })).toEqual(fitUsage({ readings, declaredKmAYear: null, season }));
    }));
  });
});
