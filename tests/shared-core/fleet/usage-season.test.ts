import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDayNumber, monthOf } from '../../../shared-core/calendar/local-date.ts';
import { makeSeason, seasonDays, type LaidUpDays, type Season } from '../../../shared-core/fleet/usage-season.ts';
import { anySeason, dayOf } from './usage-examples.ts';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The plain definition: each day's month looked up in the calendar, a day of a dated lay-up counting five hundredths. */
function plainSeasonDays(season: Season, from: number, to: number, layUps: readonly LaidUpDays[] = []): number {
  let sum = 0;
  for (let day = from; day < to; day += 1) {
    const rests = layUps.some((layUp) => day >= layUp.from && (layUp.to === null || day <= layUp.to));
    sum += rests ? 0.05 * (season.scale * 100) : season.multipliers[monthOf(fromDayNumber(day)) - 1] ?? Number.NaN;
  }
  return sum;
}

const anyLayUps = fc.array(fc.record({ from: fc.integer({ min: 0, max: 2000 }), days: fc.option(fc.integer({ min: 0, max: 400 })) }), { maxLength: 5 })
  .map((list): readonly LaidUpDays[] => list.map(({ from, days }) => ({ from, to: days === null ? null : from + days })));

describe('the twelve multipliers', () => {
  test.each([
    // Source: house measurement, section 5 (table copied).
    { case: 'north', season: makeSeason('north'), months: [0.92, 0.93, 0.99, 0.99, 1.04, 1.05, 1.06, 1.09, 1.01, 1, 0.97, 0.95] },
    // By hand: January takes July's figure.
    { case: 'south', season: makeSeason('south'), months: [1.06, 1.09, 1.01, 1, 0.97, 0.95, 0.92, 0.93, 0.99, 0.99, 1.04, 1.05] },
    { case: 'none', season: makeSeason('none'), months: Array.from({ length: 12 }, () => 1) },
    // By hand: eleven months of 1 and one of 0.05 have the sum 11.05; times 12 / 11.05.
    { case: 'laid up in February', season: makeSeason('none', [2]), months: [12, 0.6, 12, 12, 12, 12, 12, 12, 12, 12, 12, 12].map((m) => m / 11.05) },
    { case: 'laid up all year: no month differs', season: makeSeason('north', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]), months: Array.from({ length: 12 }, () => 1) },
  ])('$case', ({ season, months }) => {
    expect(season.multipliers).toHaveLength(12);
    for (const [at, multiplier] of season.multipliers.entries()) expect(multiplier).toBeCloseTo(months[at] ?? Number.NaN, 12);
  });

  test('have mean 1', () => {
    fc.assert(fc.property(anySeason, (season) => {
      expect(mean(season.multipliers)).toBeCloseTo(1, 12);
    }));
  });

  test.each([0, 13, 1.5])('month %d is our own bug', (month) => {
    expect(() => makeSeason('north', [month])).toThrow(/laid-up month/);
  });
});

describe('season-days', () => {
  test.each([
    { case: 'January', from: '2024-01-01', to: '2024-02-01', days: 31 * 0.92, source: 'by hand' },
    { case: 'a leap February', from: '2024-02-01', to: '2024-03-01', days: 29 * 0.93, source: 'by hand' },
    { case: 'two days over a month end', from: '2023-07-31', to: '2023-08-02', days: 1.06 + 1.09, source: 'by hand' },
    { case: 'no February 29 in 2100', from: '2100-02-01', to: '2100-03-01', days: 28 * 0.93, source: 'by hand' },
    { case: 'before 1970', from: '1969-12-30', to: '1970-01-03', days: 2 * 0.95 + 2 * 0.92, source: 'by hand' },
    { case: 'nothing', from: '2024-05-05', to: '2024-05-05', days: 0, source: 'by hand' },
  ])('$case', ({ from, to, days }) => {
    expect(seasonDays(makeSeason('north'), dayOf(from), dayOf(to))).toBeCloseTo(days, 10);
  });

  test('equal the plain sum over days', () => {
    const ranges = fc.tuple(anySeason, fc.integer({ min: -25_000, max: 83_000 }), fc.integer({ min: 0, max: 900 }));
    fc.assert(fc.property(ranges, ([season, from, days]) => {
      expect(seasonDays(season, from, from + days)).toBeCloseTo(plainSeasonDays(season, from, from + days), 8);
    }));
  });

  test('ranges laid end to end add up, and turn sign backwards', () => {
    const day = fc.integer({ min: -25_000, max: 170_000 });
    fc.assert(fc.property(anySeason, day, day, day, (season, a, b, c) => {
      expect(seasonDays(season, a, b) + seasonDays(season, b, c)).toBeCloseTo(seasonDays(season, a, c), 8);
      expect(seasonDays(season, b, a)).toBe(0 - seasonDays(season, a, b));
    }));
  });

  test('a day number is whole', () => {
    expect(() => seasonDays(makeSeason('none'), 0, 1.5)).toThrow(/whole/);
  });
});

describe('dated lay-ups', () => {
  const jan = dayOf('2024-01-01');

  // By hand, without months: a day counts 1, a day at rest 0.05.
  test.each([
    { case: 'ten days, both ends included', layUps: [{ from: jan + 10, to: jan + 19 }], days: 21 + 10 * 0.05 },
    { case: 'a single day', layUps: [{ from: jan, to: jan }], days: 30 + 0.05 },
    { case: 'with no end', layUps: [{ from: jan + 30, to: null }], days: 30 + 0.05 },
    { case: 'begun long before', layUps: [{ from: jan - 400, to: jan + 4 }], days: 26 + 5 * 0.05 },
    { case: 'over before, or yet to begin', layUps: [{ from: jan - 9, to: jan - 1 }, { from: jan + 31, to: null }], days: 31 },
    { case: 'overlapping ones: each day once', layUps: [{ from: jan + 5, to: jan + 9 }, { from: jan, to: jan + 7 }, { from: jan + 10, to: jan + 10 }], days: 20 + 11 * 0.05 },
    { case: 'one inside another without an end', layUps: [{ from: jan + 1, to: null }, { from: jan + 3, to: jan + 4 }], days: 1 + 30 * 0.05 },
  ])('$case', ({ layUps, days }) => {
    expect(seasonDays(makeSeason('none', [], layUps), jan, jan + 31)).toBeCloseTo(days, 10);
  });

  test('a day at rest counts the same by date as by month, and other days are left as they are', () => {
    const [byMonth, both] = [makeSeason('north', [1]), makeSeason('north', [1], [{ from: dayOf('2024-02-01'), to: dayOf('2024-02-29') }])];
    expect(both.multipliers).toEqual(byMonth.multipliers);
    expect(seasonDays(both, dayOf('2024-02-01'), dayOf('2024-02-29')) / 28).toBeCloseTo(seasonDays(byMonth, jan, jan + 31) / 31, 12);
    expect(seasonDays(both, jan, jan + 31)).toBe(seasonDays(byMonth, jan, jan + 31));
  });

  test('are kept in order, what overlaps or touches made one', () => {
    const kept = (layUps: readonly LaidUpDays[]) => makeSeason('none', [], layUps).layUps;
    expect(kept([{ from: 9, to: 12 }, { from: 1, to: 3 }, { from: 4, to: 5 }, { from: 7, to: 10 }])).toEqual([{ from: 1, to: 5 }, { from: 7, to: 12 }]);
    expect(kept([{ from: 5, to: 6 }, { from: 2, to: null }])).toEqual([{ from: 2, to: null }]);
  });

  test('equal the plain sum over days, and ranges add up', () => {
    fc.assert(fc.property(anySeason, anyLayUps, fc.integer({ min: -100, max: 2200 }), fc.integer({ min: 0, max: 900 }), (bare, layUps, from, days) => {
      const season = { ...bare, layUps: makeSeason('none', [], layUps).layUps };
      expect(seasonDays(season, from, from + days)).toBeCloseTo(plainSeasonDays(bare, from, from + days, layUps), 8);
      expect(seasonDays(season, from, from + 100) + seasonDays(season, from + 100, from + 100 + days)).toBeCloseTo(seasonDays(season, from, from + 100 + days), 8);
    }));
  });

  test.each([{ from: 10, to: 9 }, { from: 0.5, to: null }])('%j is our own bug', (layUp) => {
    expect(() => makeSeason('none', [], [layUp])).toThrow(/lay-up/);
  });
});
