import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { wearForecast, type WearQuestion } from '../../../shared-core/care/wear-forecast.ts';
import { day } from '../calendar/day.ts';
import { knownFrom } from './limit-examples.ts';

const car = knownFrom(null, ['2025-01-01', 40_000], ['2025-07-01', 45_000], ['2026-01-01', 50_000], ['2026-07-01', 55_000]);

/** Tread measured at whole distances in km, 1.6 mm the limit, asked on 2026-08-01. */
function tread(points: readonly (readonly [date: string, km: number, depth: number])[], more: Partial<WearQuestion> = {}): WearQuestion {
  return {
    points: points.map(([date, km, value]) => ({ date: day(date), along: km * 1000, value })), limit: 1.6, way: { by: 'distance', rises: false }, error: 0.2, today: day('2026-08-01'), car, idleMetres: 0, ...more,
  };
}

/** A battery's capacity in per cent by time, 70 the limit. */
function battery(points: readonly (readonly [date: string, value: number])[], more: Partial<WearQuestion> = {}): WearQuestion {
  return { ...tread([]), points: points.map(([date, value]) => ({ date: day(date), along: dayNumber(day(date)), value })), limit: 70, way: { by: 'time', rises: false }, error: 2, ...more };
}

describe('a forecast of wear', () => {
  test('by distance: the day on which the car will have gone so far', () => {
    // By hand: 8.0 at 40 000 and 6.0 at 50 000 wear 0.2 mm every 1000 km; 1.6 at 72 000 km; some 10 000 km a year from 55 000.
    const found = wearForecast(tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 6]]));
    expect(found).toMatchObject({ verdict: 'wears', trend: { line: { slope: -2e-7 } } });
    const { span } = found as { readonly span: { readonly earliest: LocalDate; readonly likely: LocalDate; readonly latest: LocalDate } };
    expect(span.likely > '2028-01-01' && span.likely < '2028-04-01').toBe(true);
    expect(span.earliest < span.likely && span.likely < span.latest).toBe(true);
  });

  test('by time: to the day, the first on which it is reached', () => {
    // By hand: 90 to 80 in 365 days, 70 after another 365.
    expect(wearForecast(battery([['2025-01-01', 90], ['2026-01-01', 80]]))).toMatchObject({ verdict: 'wears', span: { likely: '2027-01-01' } });
    expect(wearForecast(battery([['2025-01-01', 90], ['2026-01-01', 80]], { limit: 70.001 }))).toMatchObject({ span: { likely: '2027-01-01' } });
    expect(wearForecast(battery([['2025-01-01', 90], ['2026-01-01', 80]], { limit: 69.999 }))).toMatchObject({ span: { likely: '2027-01-02' } });
  });

  test('by time: a day of the sum that is only in the last digit more is not a day more', () => {
    // By hand: 0.8 in 39 days is 20 in 975 days, 1 January 2024 to 2 September 2026; in floating point 975.0000000000036.
    expect(wearForecast(battery([['2024-01-01', 90], ['2024-02-09', 89.2], ['2024-03-19', 88.4]], { error: 0.05 }))).toMatchObject({ span: { likely: '2026-09-02' } });
  });

  test('of a wheel that was off for a while: by the distance it will itself have gone', () => {
    const rested = wearForecast(tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 6]], { idleMetres: 5_000_000 }));
    const rolled = wearForecast(tread([['2025-01-01', 45_000, 8], ['2026-01-01', 55_000, 6]]));
    expect(rested).toMatchObject({ span: (rolled as { span: object }).span });
  });

  test.each([
    { case: 'nothing', question: tread([]), verdict: { verdict: 'too-few', have: 0 } },
    { case: 'one', question: tread([['2026-01-01', 50_000, 6]]), verdict: { verdict: 'too-few', have: 1 } },
    { case: 'it grew', question: tread([['2025-01-01', 40_000, 6], ['2026-01-01', 50_000, 8]]), verdict: { verdict: 'contradictory', from: { value: 6 }, to: { value: 8 } } },
    { case: 'no wear yet', question: tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 7.8]]), verdict: { verdict: 'flat' } },
    { case: 'at the limit: it still passes', question: tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 1.6]]), verdict: { verdict: 'wears', span: { likely: '2026-01-01' } } },
    // By hand: 0.6 mm every 1000 km, 1.6 mm at 52 500 km, halfway in time between the readings at 50 000 and 55 000 km.
    { case: 'foreseen where the car has been since: the day it was there', question: tread([['2025-07-01', 45_000, 6.1], ['2026-01-01', 50_000, 3.1]]), verdict: { verdict: 'wears', span: { likely: '2026-04-02' } } },
    { case: 'past it', question: tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 1.5]]), verdict: { verdict: 'past-limit', span: { earliest: '2026-01-01', likely: '2026-01-01', latest: '2026-01-01' } } },
    { case: '1.59 mm, by the law of 1.6 mm', question: tread([['2026-01-01', 50_000, 1.59]]), verdict: { verdict: 'past-limit' } },
    { case: '1.59 mm, by the law of 2/32 in', question: tread([['2026-01-01', 50_000, 1.59]], { limit: 1.5875 }), verdict: { verdict: 'too-few' } },
    { case: 'a slip past it, corrected by the next', question: tread([['2025-01-01', 40_000, 8], ['2025-07-01', 45_000, 1], ['2026-01-01', 50_000, 7]]), verdict: { verdict: 'wears' } },
    { case: 'past it, even where it also grew', question: tread([['2025-01-01', 40_000, 0.5], ['2026-01-01', 50_000, 1.5]]), verdict: { verdict: 'past-limit' } },
    { case: 'off the road', question: tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 6]], { idleMetres: null }), verdict: { verdict: 'off-the-road' } },
    { case: 'no odometer was read', question: tread([['2025-01-01', 40_000, 8], ['2026-01-01', 50_000, 6]], { car: { points: [], usage: null } }), verdict: { verdict: 'no-reading' } },
    { case: 'time needs neither', question: battery([['2025-01-01', 90], ['2026-01-01', 80]], { car: { points: [], usage: null }, idleMetres: null }), verdict: { verdict: 'wears' } },
    { case: 'rising past its limit', question: battery([['2026-01-01', 3.1]], { limit: 3, way: { by: 'time', rises: true } }), verdict: { verdict: 'past-limit' } },
    { case: 'rising towards it', question: battery([['2025-01-01', 1], ['2026-01-01', 2]], { limit: 3, way: { by: 'time', rises: true }, error: 0.3 }), verdict: { verdict: 'wears', span: { likely: '2027-01-01' } } },
    { case: 'slowly: beyond five years', question: battery([['2016-01-01', 100], ['2026-01-01', 95]]), verdict: { verdict: 'wears', span: { likely: null, latest: null } } },
  ])('$case', ({ question, verdict }) => {
    expect(wearForecast(question)).toMatchObject(verdict);
  });

  test('no edge lies before the newest measurement, for then it still passed', () => {
    const found = wearForecast(tread([['2025-01-01', 40_000, 8], ['2025-07-01', 45_000, 4.5], ['2026-01-01', 50_000, 2], ['2026-07-20', 55_400, 1.7]]));
    expect(found).toMatchObject({ verdict: 'wears', span: { earliest: '2026-07-20' } });
  });

  test('the calendar may end first', () => {
    expect(wearForecast(battery([['2198-01-01', 100], ['2199-01-01', 90]], { today: day('2199-02-01') }))).toMatchObject({ verdict: 'wears', span: { earliest: null, likely: null, latest: null } });
  });
});

const battered = fc.array(fc.tuple(fc.integer({ min: 20, max: 400 }), fc.integer({ min: -5, max: 50 })), { minLength: 2, maxLength: 9 }).map((steps) => {
  let [date, value] = [day('2021-03-01'), 1000];
  return steps.map(([days, down]) => {
    [date, value] = [addDays(date, days), value - down];
    return { date, value: value / 10 };
  });
});

describe('in general', () => {
  const question = (points: readonly { date: LocalDate; value: number }[], shift = 0): WearQuestion =>
    battery(points.map(({ date, value }) => [addDays(date, shift), value] as const), { today: addDays(points.at(-1)?.date ?? day('2026-01-01'), shift + 10) });
  const dates = (found: ReturnType<typeof wearForecast>) => ('span' in found ? [found.span.earliest, found.span.likely, found.span.latest] : found.verdict);

  test('shifted by 1461 days, four years and a leap day, every date shifts by 1461', () => {
    fc.assert(fc.property(battered, (points) => {
      const [here, there] = [dates(wearForecast(question(points))), dates(wearForecast(question(points, 1461)))];
      if (typeof here === 'string') expect(there).toBe(here);
      else expect(there).toEqual(here.map((date) => (date === null ? null : addDays(date, 1461))));
    }));
  });

  test('a later measurement on the line never widens the window in days', () => {
    fc.assert(fc.property(battered, fc.integer({ min: 1, max: 500 }), (points, later) => {
      const first = wearForecast(question(points));
      fc.pre(first.verdict === 'wears' && first.span.latest !== null);
      if (first.verdict !== 'wears') return;
      const date = addDays(points.at(-1)?.date ?? day('2026-01-01'), later);
      const value = first.trend.line.intercept + first.trend.line.slope * dayNumber(date);
      fc.pre(value >= 70);
      const second = wearForecast({ ...question([...points, { date, value }]), today: addDays(points.at(-1)?.date ?? date, 10) });
      expect(second.verdict).toBe('wears');
      if (second.verdict !== 'wears') return;
      const width = ({ span }: typeof second) => dayNumber(span.latest ?? day('2199-12-31')) - dayNumber(span.earliest ?? day('1900-01-01'));
      expect(width(second)).toBeLessThanOrEqual(width(first));
    }), { numRuns: 1000 });
  });
});
