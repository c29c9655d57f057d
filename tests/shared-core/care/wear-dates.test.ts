import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../../shared-core/calendar/local-date.ts';
import { datesReached } from '../../../shared-core/care/wear-dates.ts';
import { dueDates, likelyKm, spreadOfLog } from '../../../shared-core/fleet/odometer-forecast.ts';
import { fitUsage, type Usage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';
import { normalFrom, seededChance } from './line-examples.ts';

const reading = (date: string, km: number) => ({ day: dayNumber(day(date)), km });
/** Four readings of a car; the dates of a target are published for it. */
const usage: Usage = must(fitUsage({
  readings: [reading('2023-01-10', 50_000), reading('2023-04-12', 53_000), reading('2023-09-01', 58_200), reading('2024-01-08', 61_500)], declaredKmAYear: null, season: makeSeason('north'),
}), 'usage');
const sure = (km: number) => ({ earliest: km, likely: km, latest: km });

describe('an uncertain distance on uncertain dates', () => {
  test('a sure distance is due as any target: vector A of the forecaster', () => {
    // Source: FORECAST section 5, vector A.
    expect(datesReached(usage, sure(66_500))).toEqual({ earliest: '2024-04-25', likely: '2024-06-20', latest: '2024-09-02' });
  });

  test('whatever the distance, passed or beyond five years', () => {
    fc.assert(fc.property(fc.integer({ min: 50_000, max: 160_000 }), (km) => {
      expect(datesReached(usage, sure(km))).toEqual(dueDates(usage, km));
    }));
  });

  test('an uncertain one is due as likely on the same day, and its edges lie further out', () => {
    const { earliest, likely, latest } = datesReached(usage, { earliest: 65_000, likely: 66_500, latest: 68_500 });
    expect(likely).toBe('2024-06-20');
    expect(must(earliest, 'earliest') < '2024-04-25' && must(latest, 'latest') > '2024-09-02').toBe(true);
  });

  test('but not so far as if the worst of both came together', () => {
    const { earliest, latest } = datesReached(usage, { earliest: 65_000, likely: 66_500, latest: 68_500 });
    expect(must(earliest, 'earliest') > must(dueDates(usage, 65_000).earliest, 'edge')).toBe(true);
    expect(must(latest, 'latest') < must(dueDates(usage, 68_500).latest, 'edge')).toBe(true);
  });

  test.each([
    { case: 'no latest distance: no latest date', km: { earliest: 64_000, likely: 66_500, latest: null }, latest: null },
    { case: 'a latest distance that is passed already', km: { earliest: 60_000, likely: 61_000, latest: 61_400 }, latest: '2024-01-08' },
    { case: 'nothing to be foreseen', km: { earliest: 300_000, likely: 400_000, latest: 500_000 }, latest: null },
  ])('$case', ({ km, latest }) => {
    expect(datesReached(usage, km).latest).toBe(latest);
  });

  test('with no likely distance, only the earliest is said', () => {
    expect(datesReached(usage, { earliest: 66_500, likely: null, latest: null })).toEqual({ earliest: '2024-04-25', likely: null, latest: null });
  });

  test('a narrower band never gives wider dates', () => {
    const edges = fc.tuple(fc.integer({ min: 0, max: 6000 }), fc.integer({ min: 0, max: 6000 }), fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }));
    fc.assert(fc.property(fc.integer({ min: 62_000, max: 80_000 }), edges, (likely, [below, above, a, b]) => {
      const wide = datesReached(usage, { earliest: likely - below, likely, latest: likely + above });
      const narrow = datesReached(usage, { earliest: likely - (below * a) / 100, likely, latest: likely + (above * b) / 100 });
      expect(must(narrow.earliest, 'earliest') >= must(wide.earliest, 'earliest')).toBe(true);
      expect((narrow.latest ?? '9') <= (wide.latest ?? '9')).toBe(true);
    }));
  });

  test('one in ten falls before the earliest date and one in ten after the latest, by simulation', () => {
    // 20 000 tyres of fixed chance: the distance is drawn on either side by its own spread, the use of the car by the forecaster's.
    const normal = normalFrom(seededChance(574));
    const km = { earliest: 64_800, likely: 66_500, latest: 69_500 };
    const dates = datesReached(usage, km);
    const slack = 3 * usage.ratePerSeasonDay;
    const toGo = (target: number) => Math.log(target - usage.lastKm + slack);
    const days = { earliest: dayNumber(must(dates.earliest, 'earliest')) - usage.lastDay, latest: dayNumber(must(dates.latest, 'latest')) - usage.lastDay };
    const driven = (day: number, z: number) => Math.log(likelyKm(usage, day) + slack) + z * spreadOfLog(usage, day);
    let [before, after] = [0, 0];
    for (let tyre = 0; tyre < 20_000; tyre += 1) {
      const [wear, use] = [normal(), normal()];
      const edge = wear < 0 ? km.earliest : km.latest;
      const distance = toGo(km.likely) + (Math.abs(wear) / 1.2816) * (toGo(edge) - toGo(km.likely));
      if (driven(days.earliest - 1, use) >= distance) before += 1;
      if (driven(days.latest, use) < distance) after += 1;
    }
    // Each side is exact where both sides are alike; here they are not, and a share passes from one to the other.
    expect(before / 20_000).toBeGreaterThan(0.085);
    expect(before / 20_000).toBeLessThan(0.115);
    expect(after / 20_000).toBeGreaterThan(0.085);
    expect(after / 20_000).toBeLessThan(0.115);
  });
});
