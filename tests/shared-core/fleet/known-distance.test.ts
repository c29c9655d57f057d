import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import { distanceOn } from '../../../shared-core/fleet/known-distance.ts';
import { likelyKm } from '../../../shared-core/fleet/odometer-forecast.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { anyDate, day } from '../calendar/day.ts';
import { knownFrom } from '../care/limit-examples.ts';
import { metresOf } from './car-examples.ts';

const read = knownFrom('2020-03-01', ['2024-01-01', 40_000], ['2025-01-01', 50_000]);

describe('the whole distance on a day', () => {
  // Source: our own definition: straight lines between readings; by hand (366 days in 2024, 1401 from registration to 2024).
  test.each([
    { case: 'of a reading: as read', known: read, on: '2024-01-01', km: 40_000, estimated: false },
    { case: 'between two: on the line, 91 of 366 days', known: read, on: '2024-04-01', km: 42_486.339, estimated: true },
    { case: 'before the first: from 0 at registration, 306 of 1401 days', known: read, on: '2021-01-01', km: 8736.617, estimated: true },
    { case: 'on the day of registration: 0', known: read, on: '2020-03-01', km: 0, estimated: true },
  ])('$case', ({ known, on, km, estimated }) => {
    expect(distanceOn(known, day(on))).toEqual({ metres: metresOf(km), estimated });
  });

  test('after the last: as forecast', () => {
    const usage = must(read.usage, 'usage');
    expect(distanceOn(read, day('2025-02-10'))).toEqual({ metres: Math.round((50_000 + likelyKm(usage, 40)) * 1000), estimated: true });
  });

  test.each([
    { case: 'before registration', known: read, on: '2020-02-29' },
    { case: 'before the first reading of a car whose registration is not known', known: knownFrom(null, ['2024-01-01', 40_000]), on: '2023-01-01' },
    { case: 'with no reading', known: knownFrom('2020-03-01'), on: '2023-01-01' },
  ])('nothing is made up $case', ({ known, on }) => {
    expect(distanceOn(known, day(on))).toBeNull();
  });

  test('never falls from one day to the next', () => {
    fc.assert(fc.property(anyDate(day('2019-01-01'), day('2028-01-01')), fc.integer({ min: 1, max: 900 }), (date, days) => {
      const [one, later] = [distanceOn(read, date), distanceOn(read, addDays(date, days))];
      if (one !== null) expect(one.metres).toBeLessThanOrEqual(later?.metres ?? -1);
    }));
  });
});
