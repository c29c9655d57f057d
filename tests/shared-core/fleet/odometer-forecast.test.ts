import { describe, expect, test } from 'vitest';
import { fromDayNumber, LAST_DATE } from '../../../shared-core/calendar/local-date.ts';
import {
  dueDates, dueDayAt, dueDays, FORESEEABLE_DAYS, kmAtZ, likelyBetween, likelyKm, odometerOn, odometerOnDate, probabilityDueBy, spreadOfLog,
} from '../../../shared-core/fleet/odometer-forecast.ts';
import { fitUsage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason, type LaidUpDays } from '../../../shared-core/fleet/usage-season.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { dayOf, mustFit, usageOfVector, usageVectors, vectorReadings } from './usage-examples.ts';

const four = mustFit(vectorReadings('four'));
const parked = mustFit([0, 100, 3000].map((day) => ({ day, km: 50_000 })), null, 'none');

describe('vectors', () => {
  test.each(usageVectors)('$case', (vector) => {
    const usage = usageOfVector(vector);
    const band = odometerOn(usage, usage.lastDay + 90);
    expect(spreadOfLog(usage, 90).toFixed(4)).toBe(vector.spread90);
    expect([band.low, band.likely, band.high].map((km) => Math.round(km - usage.lastKm))).toEqual(vector.km90);
    expect(Math.round(likelyKm(usage, 90))).toBe(vector.km90[1]);
    expect(dueDates(usage, usage.lastKm + vector.addKm)).toEqual(vector.due);
  });

  // Source: house method, section 5, multipliers for orientation at B = 150 and 80 days between readings (to two digits there).
  test.each([
    { days: 30, low: 0.6, high: 1.67 },
    { days: 90, low: 0.64, high: 1.57 },
    { days: 180, low: 0.67, high: 1.5 },
    { days: 365, low: 0.69, high: 1.45 },
  ])('spread at $days days', ({ days, low, high }) => {
    const sigma = spreadOfLog({ ...four, exposure: 150, gapDays: 80, priorDays: 30 }, days);
    expect(Math.abs(Math.exp(-1.2816 * sigma) - low)).toBeLessThan(0.02);
    expect(Math.abs(Math.exp(1.2816 * sigma) - high)).toBeLessThan(0.02);
  });
});

describe('the odometer on a day', () => {
  test('on and before the last reading it is that reading, with a day\'s doubt above it', () => {
    const onTheDay = odometerOn(four, four.lastDay);
    expect(onTheDay).toMatchObject({ low: 61_500 });
    expect(onTheDay.likely).toBeCloseTo(61_500, 9);
    expect(onTheDay.high - 61_500).toBeCloseTo(kmAtZ(four, 0, 1.2816), 9);
    expect(odometerOn(four, four.lastDay - 300)).toEqual(onTheDay);
  });

  test('by date as by day', () => {
    expect(odometerOnDate(four, fromDayNumber(four.lastDay + 33))).toEqual(odometerOn(four, four.lastDay + 33));
  });
});

describe('due days', () => {
  test.each([
    { case: 'already passed', target: 61_000 },
    { case: 'reached on the last reading', target: 61_500 },
    { case: 'far below', target: -5 },
  ])('$case: the last reading\'s day on all three edges', ({ target }) => {
    expect(dueDates(four, target)).toEqual({ earliest: '2024-01-08', likely: '2024-01-08', latest: '2024-01-08' });
  });

  test('a few km ahead: perhaps the same day, likely within days', () => {
    const due = dueDays(four, 61_520);
    expect(due.earliest).toBe(four.lastDay);
    expect(due.likely).toBe(four.lastDay + 1);
  });

  test('what lies past five years is not foreseeable', () => {
    const most = four.lastKm + kmAtZ(four, FORESEEABLE_DAYS, 0);
    expect(dueDayAt(four, most - 1, 0)).toBe(four.lastDay + FORESEEABLE_DAYS);
    expect(dueDayAt(four, most + 1, 0)).toBeNull();
    expect(dueDays(four, most)).toMatchObject({ latest: null });
    expect(dueDates(four, 10_000_000)).toEqual({ earliest: null, likely: null, latest: null });
    expect(FORESEEABLE_DAYS).toBe(Math.floor(5 * 365.25));
  });

  test('a parked car may be due in years, or never', () => {
    const inThe1980s = expect.stringMatching(/^198/) as string;
    expect(dueDates(parked, 55_000)).toEqual({ earliest: inThe1980s, likely: inThe1980s, latest: null });
    expect(dueDates(parked, 150_000)).toEqual({ earliest: null, likely: null, latest: null });
  });

  test('no date past the last one taken', () => {
    const late = mustFit([{ day: dayOf(LAST_DATE) - 10, km: 0 }]);
    expect(dueDates(late, 100).likely).toBe('2199-12-24');
    expect(dueDates(late, 5000)).toMatchObject({ latest: null });
  });

  test('a laid-up winter: nothing moves from November to March', () => {
    const hobby = mustFit(vectorReadings('hobby'), null, 'north', [11, 12, 1, 2, 3]);
    const winter = likelyKm(hobby, dayOf('2024-04-01') - hobby.lastDay) - likelyKm(hobby, dayOf('2023-11-01') - hobby.lastDay);
    const april = likelyKm(hobby, dayOf('2024-05-01') - hobby.lastDay) - likelyKm(hobby, dayOf('2024-04-01') - hobby.lastDay);
    expect(winter).toBeLessThan(april / 2);
  });

  test('where the edge falls back during a lay-up, its first peak counts', () => {
    const asleep = mustFit([{ day: dayOf('2024-08-20'), km: 0 }], null, 'north', [11, 12, 1, 2, 3]);
    const edge = Array.from({ length: 365 }, (_, days) => kmAtZ(asleep, days, 1.96));
    const peak = edge.findIndex((km, days) => (edge[days + 1] ?? Infinity) < km);
    expect(peak).toBeGreaterThan(60);
    expect(edge.slice(peak + 1).some((km) => km > (edge[peak] ?? 0))).toBe(true);
    expect(dueDayAt(asleep, edge[peak] ?? 0, 1.96)).toBe(asleep.lastDay + peak);
  });

  test('the south drives its summer when the north has winter', () => {
    const [north, south] = [mustFit(vectorReadings('last')), mustFit(vectorReadings('last'), null, 'south')];
    const january = dayOf('2024-02-01') - north.lastDay;
    expect(likelyKm(south, january) / likelyKm(north, january)).toBeCloseTo(1.06 / 0.92, 9);
    expect(dueDates(south, 66_500).likely).toBe('2024-05-24');
  });

  test('two readings on one day count as the higher one', () => {
    const twice = mustFit([...vectorReadings('four'), { day: four.lastDay, km: 61_400 }]);
    expect(dueDates(twice, 66_500)).toEqual(dueDates(four, 66_500));
  });
});

describe('probability due by a day', () => {
  test('is even on the likely day, 1 in 10 on the early edge, 9 in 10 on the late one', () => {
    const due = dueDays(four, 66_500);
    // A day is a step: the edge day is the first past the line, so within a day's worth of probability (about 0.008).
    for (const [day, p] of [[due.earliest, 0.1], [due.likely, 0.5], [due.latest, 0.9]] as const) {
      expect(probabilityDueBy(four, 66_500, day ?? 0)).toBeGreaterThanOrEqual(p - 1e-4);
      expect(probabilityDueBy(four, 66_500, (day ?? 0) - 1)).toBeLessThan(p);
    }
  });

  test('is 1 where the target was passed, and small on the day of the reading', () => {
    expect(probabilityDueBy(four, 61_500, four.lastDay)).toBe(1);
    expect(probabilityDueBy(four, 61_400, four.lastDay - 50)).toBe(1);
    expect(probabilityDueBy(four, 66_500, four.lastDay)).toBeLessThan(1e-8);
    expect(probabilityDueBy(four, 66_500, four.lastDay - 90)).toBe(probabilityDueBy(four, 66_500, four.lastDay));
  });
});

describe('a change of use to come', () => {
  /** 40 km a day from two years of it; from day 760 on as declared, 10 km a day. */
  const readings = [0, 180, 360, 540, 730].map((day) => ({ day, km: day * 40 }));
  const season = makeSeason('none');
  const now = must(fitUsage({ readings, declaredKmAYear: null, season }), 'usage');
  const changed = must(fitUsage({ readings, declaredKmAYear: null, season, changes: [{ day: 760, declaredKmAYear: 3652.5 }] }), 'usage');

  test('up to its day all is as before', () => {
    for (const days of [0, 10, 30]) {
      expect(likelyKm(changed, days)).toBe(likelyKm(now, days));
      expect(spreadOfLog(changed, days)).toBeCloseTo(spreadOfLog(now, days), 12);
    }
  });

  test('after it each day counts at the new rate', () => {
    expect(likelyKm(changed, 130)).toBeCloseTo(likelyKm(now, 30) + 100 * 10, 9);
    expect(likelyBetween(changed, 760, 800)).toBeCloseTo(400, 9);
    expect(likelyBetween(changed, 750, 770)).toBeCloseTo(10 * now.ratePerSeasonDay + 100, 9);
  });

  test('the spread grows to that of a use of which nothing is learned', () => {
    const unlearned = (days: number) => (spreadOfLog(changed, days) ** 2 - spreadOfLog({ ...now, priorDays: 0 }, days) ** 2) / 0.15;
    // By hand: parts by distance; of the 30 days of now kappa / (B + kappa), of what follows 1.
    const [km, part] = [likelyKm(now, 30), 30 / (now.exposure + 30)];
    expect(unlearned(130)).toBeCloseTo(((part * km + 1000) / (km + 1000)) ** 2, 9);
    expect(unlearned(1500)).toBeGreaterThan(0.8);
  });

  test('moves what falls due after it, and nothing before', () => {
    const soon = now.lastKm + likelyKm(now, 12);
    expect(dueDays(changed, soon).likely).toBe(dueDays(now, soon).likely);
    const far = now.lastKm + likelyKm(now, 130);
    // By hand: 100 days at the rate of now are 100 r km, at 10 km a day 10 r days.
    expect(must(dueDays(changed, far).likely, 'likely')).toBe(Math.ceil(760 + 10 * now.ratePerSeasonDay));
  });
});

describe('a dated lay-up', () => {
  const dated = (layUps: readonly LaidUpDays[]) => must(fitUsage({ readings: vectorReadings('four'), declaredKmAYear: null, season: makeSeason('north', [], layUps) }), 'usage');

  test('to come: nothing is due in it, and then later by its days', () => {
    const from = four.lastDay + 30;
    const usage = dated([{ from, to: from + 199 }]);
    expect([usage.ratePerSeasonDay, usage.exposure]).toEqual([four.ratePerSeasonDay, four.exposure]);
    expect(likelyKm(usage, 30)).toBe(likelyKm(four, 30));
    // By hand: two hundred days at a twentieth.
    expect(likelyKm(usage, 230) - likelyKm(usage, 30)).toBeCloseTo(200 * 0.05 * four.season.scale * 100 * four.ratePerSeasonDay, 6);
    const target = four.lastKm + 5000;
    expect(must(dueDays(usage, target).likely, 'likely') - must(dueDays(four, target).likely, 'likely')).toBeGreaterThan(150);
  });

  test('without an end: distance is not to be foreseen', () => {
    expect(dueDates(dated([{ from: four.lastDay, to: null }]), four.lastKm + 5000)).toEqual({ earliest: null, likely: null, latest: null });
  });

  test('past: its days are no evidence of little driving', () => {
    const [rested, unsaid] = [dated([{ from: dayOf('2023-09-02'), to: dayOf('2024-01-07') }]), four];
    expect(rested.exposure).toBeLessThan(unsaid.exposure);
    expect(rested.ratePerSeasonDay).toBeGreaterThan(unsaid.ratePerSeasonDay);
  });
});
