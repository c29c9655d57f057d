import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { dueDayAt, dueDays, FORESEEABLE_DAYS, kmAtZ, likelyKm, odometerOn } from '../../../shared-core/fleet/odometer-forecast.ts';
import { gateReading } from '../../../shared-core/fleet/reading-judgement.ts';
import { fitUsage, type DayKm, type Usage } from '../../../shared-core/fleet/usage-rate.ts';
import type { Season } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, anySeason } from './usage-examples.ts';

const GENERIC_RATE = 13_000 / 365.25;
/** Four years with one leap day, in which the calendar comes round; not over 2100, which has none. */
const FOUR_YEARS = 1461;
const anyTarget = fc.integer({ min: -500, max: 40_000 });
const anyZ = fc.constantFrom(-1.96, -1.2816, -0.6745, 0, 0.6745, 1.2816, 1.96);
const anyDeclared = fc.option(fc.integer({ min: 500, max: 60_000 }));

const fit = (readings: readonly DayKm[], season: Season, declaredKmAYear: number | null = null): Usage =>
  must(fitUsage({ readings, declaredKmAYear, season }), 'usage');

/** Source: house method, section 5: the first day whose running maximum covers the distance, counted up plainly. */
function plainDueDay(usage: Usage, targetKm: number, z: number): number | null {
  let most = 0;
  for (let days = 0; days <= FORESEEABLE_DAYS; days += 1) {
    most = Math.max(most, kmAtZ(usage, days, z));
    if (most >= targetKm - usage.lastKm) return usage.lastDay + days;
  }
  return null;
}

const neverOr = (day: number | null) => day ?? Infinity;

describe('due days of any car', () => {
  test('equal the plain definition', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyDeclared, anyTarget, anyZ, (readings, season, declared, ahead, z) => {
      const usage = fit(readings, season, declared);
      expect(dueDayAt(usage, usage.lastKm + ahead, z)).toBe(plainDueDay(usage, usage.lastKm + ahead, z));
    }));
  });

  test('come in order: earliest, likely, latest', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyTarget, (readings, season, ahead) => {
      const usage = fit(readings, season);
      const due = dueDays(usage, usage.lastKm + ahead);
      expect(neverOr(due.earliest)).toBeLessThanOrEqual(neverOr(due.likely));
      expect(neverOr(due.likely)).toBeLessThanOrEqual(neverOr(due.latest));
    }));
  });

  test('move by four years when all dates do', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyDeclared, anyTarget, (readings, season, declared, ahead) => {
      const later = readings.map(({ day, km }) => ({ day: day + FOUR_YEARS, km }));
      const [usage, moved] = [fit(readings, season, declared), fit(later, season, declared)];
      const target = usage.lastKm + ahead;
      const shift = (day: number | null) => (day === null ? null : day + FOUR_YEARS);
      const due = dueDays(usage, target);
      expect(dueDays(moved, target)).toEqual({ earliest: shift(due.earliest), likely: shift(due.likely), latest: shift(due.latest) });
    }));
  });

  // Without a declared distance: there, more distance may turn the guard, and with it the spread.
  test('never become later by a higher last reading', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyTarget, fc.integer({ min: 1, max: 5000 }), (readings, season, ahead, more) => {
      const last = must(readings.at(-1), 'last');
      const [usage, higher] = [fit(readings, season), fit([...readings.slice(0, -1), { day: last.day, km: last.km + more }], season)];
      const [due, dueHigher] = [dueDays(usage, last.km + ahead), dueDays(higher, last.km + ahead)];
      for (const edge of ['earliest', 'likely', 'latest'] as const) expect(neverOr(dueHigher[edge])).toBeLessThanOrEqual(neverOr(due[edge]));
    }));
  });

  test('do not depend on where distance is counted from', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyTarget, fc.integer({ min: 1, max: 100_000 }), (readings, season, ahead, offset) => {
      const usage = fit(readings, season);
      const moved = fit(readings.map(({ day, km }) => ({ day, km: km + offset })), season);
      expect(dueDays(moved, moved.lastKm + ahead)).toEqual(dueDays(usage, usage.lastKm + ahead));
    }));
  });
});

describe('a reading exactly on the forecast line', () => {
  const anyDays = fc.integer({ min: 1, max: 400 });

  test('is taken, and draws the rate no further than back towards the starting guess', () => {
    fc.assert(fc.property(anyReadings, anySeason, anyDays, (readings, season, days) => {
      const usage = fit(readings, season);
      const onLine = { day: usage.lastDay + days, km: usage.lastKm + likelyKm(usage, days) };
      const rate = usage.ratePerSeasonDay;
      const gate = gateReading(usage, onLine);
      expect(gate).toBeNull();
      const after = fit([...readings, onLine], season).ratePerSeasonDay;
      expect(after).toBeGreaterThanOrEqual(Math.min(rate, GENERIC_RATE) - 1e-9);
      expect(after).toBeLessThanOrEqual(Math.max(rate, GENERIC_RATE) + 1e-9);
    }));
  });

  test('changes nothing of the line where the car is used just as first guessed', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 20_000 }), anySeason, fc.array(anyDays, { minLength: 1, maxLength: 6 }), (day, season, gaps) => {
      const first = fit([{ day, km: 1000 }], season);
      const readings = [{ day, km: 1000 }];
      let at = 0;
      for (const days of gaps) readings.push({ day: day + (at += days), km: 1000 + likelyKm(first, at) });
      const usage = fit(readings, season);
      const ahead = day + at + 200;
      expect(odometerOn(usage, ahead).likely).toBeCloseTo(odometerOn(first, ahead).likely, 6);
    }));
  });
});
