import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween, monthOf } from '../../../shared-core/calendar/local-date.ts';
import { odometerCurve } from '../../../shared-core/sample/odometer-curve.ts';
import { readingDays } from '../../../shared-core/sample/reading-days.ts';
import { sampleRandom } from '../../../shared-core/sample/sample-random.ts';
import { day } from './sample-household.ts';

const WINTER = [11, 12, 1, 2, 3];
const from = day('2020-11-25');
const story = { from, start: 38_410, perYear: [1850, 1720, 2040], seed: 303, laidUpMonths: WINTER };

describe('the distance of a sample car', () => {
  test('each year brings exactly what its story says', () => {
    const curve = odometerCurve(story);
    expect([0, 12, 24, 36].map((months) => curve(addMonths(from, months)))).toEqual([38_410, 40_260, 41_980, 44_020]);
  });

  test('it is whole and never falls, whatever the seed', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 2 ** 31 }), fc.integer({ min: 1, max: 1094 }), (seed, days) => {
      const curve = odometerCurve({ ...story, seed });
      const [before, after] = [curve(addDays(from, days - 1)), curve(addDays(from, days))];
      return Number.isInteger(after) && after >= before;
    }), { numRuns: 60 });
  });

  // By hand: five months of twelve at 0.05 against seven at about 1 hold 0.25 / 7.25 = 3 % of the year; the scatter is a third at most.
  test('a car that sleeps moves next to nothing', () => {
    const winter = odometerCurve(story)(day('2022-04-01')) - odometerCurve(story)(day('2021-11-01'));
    expect(winter).toBeGreaterThan(0);
    expect(winter).toBeLessThan(0.06 * 1800);
  });

  test('the same story is the same distance, another seed another', () => {
    const on = day('2021-07-14');
    expect(odometerCurve(story)(on)).toBe(odometerCurve({ ...story })(on));
    expect(odometerCurve({ ...story, seed: 304 })(on)).not.toBe(odometerCurve(story)(on));
  });

  test('before its story begins there is no distance', () => {
    expect(() => odometerCurve(story)(day('2020-11-24'))).toThrow('2020-11-25');
  });
});

describe('the days of its readings', () => {
  const habit = { from, last: day('2026-11-12'), gapDays: [60, 110] as const, seed: 7, laidUpMonths: [] };

  test('every two to four months, and at last on the day given', () => {
    const days = readingDays(habit);
    const gaps = days.slice(1).map((date, at) => daysBetween(days[at] ?? date, date));
    expect(days.at(0)).toBe(from);
    expect(days.at(-1)).toBe('2026-11-12');
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(30);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(110 + 30);
    expect(new Set(gaps).size).toBeGreaterThan(10);
  });

  test('none in a month in which the car sleeps, and then the last before it slept', () => {
    const days = readingDays({ ...habit, laidUpMonths: WINTER });
    expect(days.filter((date) => WINTER.includes(monthOf(date)))).toEqual([]);
    expect(days.at(-1)).toBe('2026-10-31');
  });
});

describe('its scatter', () => {
  test('always the same, spread over 0 to 1', () => {
    const row = (seed: number) => { const next = sampleRandom(seed); return Array.from({ length: 400 }, next); };
    expect(row(5)).toEqual(row(5));
    expect(row(5)).not.toEqual(row(6));
    const values = row(1);
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    expect(values.reduce((sum, value) => sum + value, 0) / 400).toBeCloseTo(0.5, 1);
  });

  test.each([0, -1, 1.5])('%s is no seed', (seed) => {
    expect(() => sampleRandom(seed)).toThrow('seed');
  });
});
