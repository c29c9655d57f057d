import { describe, expect, test } from 'vitest';
import { kmOnDay, momentOfKm } from '../../../shared-core/fleet/odometer-truth.ts';

/** A short way, a stop, then a hole of 76 days and one of 75. */
const LOG = [{ day: 0, km: 100 }, { day: 10, km: 600 }, { day: 20, km: 600 }, { day: 96, km: 1360 }, { day: 171, km: 2110 }];

describe('the straight line between readings', () => {
  // By hand.
  test.each([
    { case: 'on a reading', day: 10, km: 600 },
    { case: 'between two', day: 4, km: 300 },
    { case: 'where the car stood', day: 15, km: 600 },
    { case: 'in a hole of 76 days', day: 50, km: null },
    { case: 'on the far edge of the hole', day: 96, km: 1360 },
    { case: 'in a hole of 75 days', day: 100, km: 1400 },
    { case: 'on the last reading', day: 171, km: 2110 },
    { case: 'past the last', day: 172, km: null },
    { case: 'before the first', day: -1, km: null },
  ])('$case: day $day is $km km', ({ day, km }) => {
    expect(kmOnDay(LOG, day)).toBe(km);
  });

  test.each([
    { case: 'on a reading', km: 100, day: 0 },
    { case: 'with a fraction of a day', km: 325, day: 4.5 },
    { case: 'first reached before the stop', km: 600, day: 10 },
    { case: 'in a hole of 76 days', km: 601, day: null },
    { case: 'at its far edge', km: 1360, day: 96 },
    { case: 'in a hole of 75 days', km: 1400, day: 100 },
    { case: 'past the last', km: 2111, day: null },
    { case: 'before the first', km: 99, day: null },
  ])('$case: $km km on day $day', ({ km, day }) => {
    expect(momentOfKm(LOG, km)).toBe(day);
  });

  test('nothing is known of no readings', () => {
    expect([kmOnDay([], 1), momentOfKm([], 1)]).toEqual([null, null]);
  });
});
