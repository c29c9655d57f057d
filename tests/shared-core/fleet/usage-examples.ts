import fc from 'fast-check';
import { dayNumber, localDate } from '../../../shared-core/calendar/local-date.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { fitUsage, type DayKm, type Usage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason, type Hemisphere } from '../../../shared-core/fleet/usage-season.ts';
import vectors from '../../reference/usage-vectors.json' with { type: 'json' };

export type UsageVector = (typeof vectors.cases)[number];
export const usageVectors = vectors.cases;

/** The day number of a date written in a test. */
export function dayOf(text: string): number {
  const date = localDate(text);
  if (!date.ok) throw new Error(`not a date: ${text}`);
  return dayNumber(date.value);
}

/** Readings of the vectors by name, as the forecaster takes them. */
export function vectorReadings(name: string): readonly DayKm[] {
  const rows = Object.entries(vectors.readings).find(([key]) => key === name);
  return must(rows, `readings ${name}`)[1].map(([date, km]) => ({ day: dayOf(String(date)), km: Number(km) }));
}

export function usageOfVector(vector: UsageVector): Usage {
  return mustFit(vectorReadings(vector.readings), vector.declaredKmAYear, vector.hemisphere as Hemisphere, vector.laidUp);
}

export function mustFit(readings: readonly DayKm[], declaredKmAYear: number | null = null, hemisphere: Hemisphere = 'north', laidUp: readonly number[] = []): Usage {
  return must(fitUsage({ readings, declaredKmAYear, season: makeSeason(hemisphere, laidUp) }), 'usage');
}

/** Readings of any car: 1 to 12 days with a reading, 1 to 400 days apart, 0 to 200 km a day. */
export const anyReadings: fc.Arbitrary<readonly DayKm[]> = fc
  .record({
    firstDay: fc.integer({ min: 0, max: 25_000 }),
    firstKm: fc.integer({ min: 0, max: 300_000 }),
    steps: fc.array(fc.record({ days: fc.integer({ min: 1, max: 400 }), kmADay: fc.integer({ min: 0, max: 200 }) }), { maxLength: 11 }),
  })
  .map(({ firstDay, firstKm, steps }) => {
    const readings = [{ day: firstDay, km: firstKm }];
    for (const { days, kmADay } of steps) {
      const last = must(readings.at(-1), 'reading');
      readings.push({ day: last.day + days, km: last.km + days * kmADay });
    }
    return readings;
  });

/** Any hemisphere with any months laid up. */
export const anySeason = fc
  .tuple(fc.constantFrom<Hemisphere>('north', 'south', 'none'), fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 12 }))
  .map(([hemisphere, laidUp]) => makeSeason(hemisphere, laidUp));
