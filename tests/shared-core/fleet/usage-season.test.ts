import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDayNumber, monthOf } from '../../../shared-core/calendar/local-date.ts';
import { makeSeason, seasonDays, type Season } from '../../../shared-core/fleet/usage-season.ts';
import { anySeason, dayOf } from './usage-examples.ts';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The plain definition: each day's month looked up in the calendar. */
function plainSeasonDays(season: Season, from: number, to: number): number {
  let sum = 0;
  for (let day = from; day < to; day += 1) sum += season.multipliers[monthOf(fromDayNumber(day)) - 1] ?? Number.NaN;
  return sum;
}

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
