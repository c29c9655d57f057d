import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { carUseOf } from '../../../shared-core/fleet/car-usage.ts';
import type { DistancePoint } from '../../../shared-core/fleet/continuous-distance.ts';
import { dueDates, odometerOnDate } from '../../../shared-core/fleet/odometer-forecast.ts';
import type { ToldUse } from '../../../shared-core/fleet/told-use.ts';
import { trackRecord, TRACK_STEP } from '../../../shared-core/fleet/track-record.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';
import { readingOn } from './car-examples.ts';
import { anyReadings, dayOf } from './usage-examples.ts';

const untold: ToldUse = { hemisphere: 'none', declaredAYear: null, laidUpMonths: [], layUps: [], changes: [] };
const points = (readings: readonly { readonly day: number; readonly km: number }[], told = untold): readonly DistancePoint[] =>
  carUseOf(readings.map((reading) => readingOn(fromDayNumber(reading.day), reading.km)), [], told).points;
const start = dayOf('2020-01-01');
/** Read every `days` days, so many km on each day. */
const driven = (days: number, count: number, km: (day: number) => number) => Array.from({ length: count }, (_, at) => ({ day: start + at * days, km: km(at * days) }));
const track = (readings: readonly { readonly day: number; readonly km: number }[], told = untold) => trackRecord({ points: points(readings, told), told }, TRACK_STEP.km);

describe('readings against what was foreseen three months before', () => {
  const steady = driven(40, 15, (days) => days * 36);

  test('each counts that has a reading three months before it', () => {
    const { readings } = track(steady);
    // By hand: day 80 is 2020-03-21, three months before is 2019; day 120 is 2020-04-30, foreseen on 2020-01-30 from the first.
    expect(readings.map(({ point }) => point.date)[0]).toBe('2020-04-30');
    expect(readings).toHaveLength(12);
    expect(readings.every(({ inside }) => inside)).toBe(true);
  });

  test('the range is that of a forecast which knows the readings up to its day and no more', () => {
    fc.assert(fc.property(anyReadings, (any) => {
      const all = points(any);
      for (const { point, foreseenOn, range, inside } of trackRecord({ points: all, told: untold }, TRACK_STEP.km).readings) {
        expect(foreseenOn).toBe(addMonths(point.date, -3));
        const known = all.filter(({ date }) => date <= foreseenOn).map(({ reading }) => reading);
        const band = odometerOnDate(must(carUseOf(known, [], untold).usage, 'usage'), point.date);
        expect(range).toEqual(band);
        expect(inside).toBe(band.low * 1000 <= point.metres && point.metres <= band.high * 1000);
      }
    }), { numRuns: 40 });
  });

  test('what is read later never changes what was told before', () => {
    fc.assert(fc.property(anyReadings, fc.integer({ min: 1, max: 12 }), (any, upTo) => {
      const [whole, part] = [track(any).readings, track(any.slice(0, upTo)).readings];
      expect(whole.slice(0, part.length)).toEqual(part);
    }), { numRuns: 40 });
  });

  test('a car that is suddenly driven thrice as much falls outside, and is inside again once that is known', () => {
    const { readings } = track(driven(40, 25, (days) => (days <= 480 ? days * 36 : 17_280 + (days - 480) * 108)));
    const inside = readings.map((one) => (one.inside ? '+' : '-')).join('');
    expect(inside).toMatch(/^\+{9}\+?-+\++$/);
  });

  test('at most one reading in thirty days counts', () => {
    const { readings } = track(driven(1, 200, (days) => days * 36));
    // By hand: from day 91 (2020-04-01) on, every thirtieth to day 199.
    expect(readings.map(({ point }) => dayOf(point.date) - start)).toEqual([91, 121, 151, 181]);
  });
});

describe('what the keeper told counts from its own day on', () => {
  /** 36 km a day; none from 2020-12-26 (day 360) to 2021-06-24 (day 540). */
  const rested = driven(40, 20, (days) => 36 * (days <= 360 ? days : Math.max(360, days - 180)));

  test('a lay-up', () => {
    const layUps = [{ id: 'winter', car: 'pip', from: day('2020-12-26'), to: day('2021-06-24'), note: '' }];
    const [told, silent] = [track(rested, { ...untold, layUps }).readings, track(rested).readings];
    const at = (list: typeof told, date: string) => must(list.find(({ point }) => point.date === date), date);
    // Foreseen before it began, nobody knew; foreseen in it, one did.
    expect(at(told, '2021-03-16')).toEqual(at(silent, '2021-03-16'));
    expect(at(told, '2021-06-04').range.high).toBeLessThan(at(silent, '2021-06-04').range.high - 2000);
    expect([at(told, '2021-06-04').inside, at(silent, '2021-06-04').inside]).toEqual([true, false]);
  });

  test('a car that was to rest and stood still was foreseen; one that was driven was not', () => {
    const layUps = [{ id: 'winter', car: 'pip', from: day('2020-12-26'), to: null, note: '' }];
    const last = (km: number) => must(track([...driven(40, 10, (days) => days * 36), { day: start + 480, km: 12_960 + km }], { ...untold, layUps }).readings.at(-1), 'last');
    expect(last(0).range.low).toBeGreaterThan(12_960);
    expect([last(0).inside, last(150).inside, last(1000).inside]).toEqual([true, true, false]);
  });

  test('a change of use', () => {
    const more = driven(40, 16, (days) => (days <= 360 ? days * 36 : 12_960 + (days - 360) * 144));
    const changes = [{ id: 'work', car: 'pip', date: day('2020-12-26'), declaredAYear: { value: 52_000, unit: 'km' as const }, note: '' }];
    const [told, silent] = [track(more, { ...untold, changes }).readings, track(more).readings];
    const insideFrom = (list: typeof told, date: string) => list.filter(({ foreseenOn }) => foreseenOn >= date).map(({ inside }) => inside);
    expect(told.filter(({ foreseenOn }) => foreseenOn < '2020-12-26')).toEqual(silent.filter(({ foreseenOn }) => foreseenOn < '2020-12-26'));
    expect(insideFrom(told, '2020-12-26').every(Boolean)).toBe(true);
    expect(insideFrom(silent, '2020-12-26').every(Boolean)).toBe(false);
  });
});

describe('further distances against the dates foreseen', () => {
  test('one after the other, none overlapping another', () => {
    const steady = driven(40, 15, (days) => days * 40);
    const { dates } = track(steady);
    // By hand: 5000 km take 125 days; from day 0 reached on day 125, next from day 160, 285, 320, 445, 480; the last is not reached.
    expect(dates.map(({ from, reachedOn }) => [dayOf(from.date) - start, reachedOn === null ? null : dayOf(reachedOn) - start])).toEqual([[0, 125], [160, 285], [320, 445]]);
    const [, second] = dates;
    const known = points(steady).slice(0, 5).map(({ reading }) => reading);
    expect(second?.dates).toEqual(dueDates(must(carUseOf(known, [], untold).usage, 'usage'), 160 * 40 + 5000));
    expect(dates.every(({ inside }) => inside)).toBe(true);
  });

  test('earlier than the earliest and later than the latest are outside', () => {
    const faster = track(driven(20, 8, (days) => days * 100));
    // By hand: 5000 km in 50 days; the figures of one reading (vector C) allow 76 at the earliest.
    expect(faster.dates[0]).toMatchObject({ inside: false, reachedOn: '2020-02-20' });
    const slower = track(driven(100, 12, (days) => days * 5));
    // By hand: of 13 000 km a year, 5000 km by 2020-11 at the latest; 5 km a day take 1000 days.
    expect(slower.dates[0]).toMatchObject({ inside: false, reachedOn: '2022-09-27' });
  });

  test('not reached though the latest date has passed is outside, not reached yet is open', () => {
    const stopped = (count: number) => track(driven(50, count, () => 100)).dates;
    expect(stopped(4)).toEqual([]);
    expect(stopped(10)).toMatchObject([{ reachedOn: null, inside: false }]);
  });

  test('in a hole of more than 120 days nobody knows when', () => {
    const withHole = (days: number) => [{ day: start, km: 0 }, { day: start + days, km: 6000 }];
    expect(track(withHole(120)).dates).toHaveLength(1);
    expect(track(withHole(121)).dates).toEqual([]);
  });

  test('no reading, no record', () => {
    expect(track([])).toEqual({ readings: [], dates: [] });
  });
});
