import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { originsOf, thinOut } from '../../../shared-core/fleet/backtest-origins.ts';
import { dueDays, odometerOn } from '../../../shared-core/fleet/odometer-forecast.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, mustFit, vectorReadings } from './usage-examples.ts';

const north = makeSeason('north');
const days = (list: readonly number[]) => list.map((day) => ({ day, km: day * 10 }));

describe('thinning out', () => {
  test.each([
    { case: 'nothing', log: [], spacing: 60, kept: [] },
    { case: 'the first, then each at least 60 days on', log: [0, 59, 60, 100, 119, 121, 300], spacing: 60, kept: [0, 60, 121, 300] },
    { case: 'all, a day apart', log: [0, 1, 2], spacing: 1, kept: [0, 1, 2] },
  ])('keeps $case', ({ log, spacing, kept }) => {
    expect(thinOut(days(log), spacing)).toEqual(days(kept));
  });
});

describe('origins', () => {
  test('stand at every kept reading from the second on', () => {
    expect(originsOf([], north)).toEqual([]);
    expect(originsOf(days([5]), north)).toEqual([]);
    expect(originsOf(days([5, 70, 140]), north).map(({ reading }) => reading)).toEqual(days([70, 140]));
  });

  test('our own forecast knows the readings up to it and no more', () => {
    fc.assert(fc.property(anyReadings, (readings) => {
      for (const [at, origin] of originsOf(readings, north).entries()) {
        const usage = mustFit(readings.slice(0, at + 2));
        const band = odometerOn(usage, usage.lastDay + 90);
        expect(origin.forecasts.own.kmAfter(90).likely).toBeCloseTo(band.likely - usage.lastKm, 6);
        expect(origin.forecasts.own.kmAfter(90).range?.high).toBeCloseTo(band.high - usage.lastKm, 6);
      }
    }), { numRuns: 30 });
  });

  test('its days are counted from the reading', () => {
    const four = vectorReadings('four');
    const due = dueDays(mustFit(four), 66_500);
    const from = (day: number | null) => must(day, 'due day') - must(four.at(-1), 'last').day;
    expect(must(originsOf(four, north).at(-1), 'origin').forecasts.own.daysUntil(5000)).toEqual({
      likely: from(due.likely), range: { low: from(due.earliest), high: from(due.latest) },
    });
  });

  test('what is not foreseeable counts as five years, its range has no end', () => {
    const origin = must(originsOf([{ day: 0, km: 0 }, { day: 3000, km: 0 }], north)[0], 'origin');
    expect(origin.forecasts.own.daysUntil(100_000)).toEqual({ likely: 1826, range: { low: 1826, high: Infinity } });
    expect(origin.forecasts.lastTwo.daysUntil(100_000)).toEqual({ likely: 1826, range: null });
  });

  test('the two simple methods carry a straight line on', () => {
    // By hand: 600 km in the last 20 days; 1600 km in all 120 days.
    const origins = originsOf([{ day: 0, km: 0 }, { day: 100, km: 1000 }, { day: 120, km: 1600 }], north);
    const last = must(origins.at(-1), 'origin').forecasts;
    expect(last.lastTwo.kmAfter(10)).toEqual({ likely: 300, range: null });
    expect(last.lastTwo.daysUntil(1200)).toEqual({ likely: 40, range: null });
    expect(last.allHistory.kmAfter(30).likely).toBeCloseTo(400, 9);
    expect(last.allHistory.daysUntil(1200).likely).toBeCloseTo(90, 9);
  });
});
