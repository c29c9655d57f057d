import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dueDays, likelyKm } from '../../../shared-core/fleet/odometer-forecast.ts';
import type { Hemisphere } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, mustFit } from '../fleet/usage-examples.ts';

// True of a car that is used all year. For one laid up it is not: an edge that leaves the months of sleep on either side may
// widen the window by months (about 1 in 130 random cases), for the rate is drawn towards the starting guess.
test('a reading exactly on the forecast line never widens the due window', () => {
  const anyHemisphere = fc.constantFrom<Hemisphere>('north', 'south', 'none');
  fc.assert(fc.property(anyReadings, anyHemisphere, fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 30_000 }), (readings, hemisphere, days, ahead) => {
    const before = mustFit(readings, null, hemisphere);
    const onLine = { day: before.lastDay + days, km: before.lastKm + likelyKm(before, days) };
    const target = before.lastKm + ahead;
    fc.pre(onLine.km < target);
    const [due, dueAfter] = [dueDays(before, target), dueDays(mustFit([...readings, onLine], null, hemisphere), target)];
    const width = (one: typeof due) => (one.earliest === null || one.latest === null ? Infinity : one.latest - one.earliest);
    expect(width(dueAfter)).toBeLessThanOrEqual(width(due));
  }), { numRuns: 300 });
});
