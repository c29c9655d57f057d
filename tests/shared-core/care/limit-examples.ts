import type { Completion } from '../../../shared-core/care/completion.ts';
import type { Limit } from '../../../shared-core/care/limit.ts';
import type { ServiceItem } from '../../../shared-core/care/service-item.ts';
import { distancePoints } from '../../../shared-core/fleet/continuous-distance.ts';
import { dayKm } from '../../../shared-core/fleet/car-usage.ts';
import type { KnownDistance } from '../../../shared-core/fleet/known-distance.ts';
import { fitUsage } from '../../../shared-core/fleet/usage-rate.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import { day } from '../calendar/day.ts';
import { metresOf, readingOn } from '../fleet/car-examples.ts';

/** A limit in months, km or both. */
export function every(months: number | null, km: number | null = null): Limit {
  return { months, distance: km === null ? null : { value: km, unit: 'km' } };
}

/** An item of Pip with the same first and repeat interval unless given. */
export function itemOf(repeat: Limit, more: Partial<ServiceItem> = {}, first: Limit = repeat): ServiceItem {
  return {
    id: 'oil', car: 'pip', name: 'Engine oil and filter', work: 'replace', harm: 'damage', interval: { first, repeat }, anchor: { kind: 'completion' }, history: 'never-done',
    printedDate: null, source: null, confirmed: false, minutes: null, access: [], needs: [], place: 'either', garagePrice: null, measure: null, ...more,
  };
}

/** A completion on a date at a whole distance in km. */
export function doneOn(date: string, km: number | null = null): Completion {
  return { date: day(date), metres: km === null ? null : metresOf(km), estimated: false };
}

/** What is known of a car by its readings in km, no season. */
export function knownFrom(firstRegistered: string | null, ...readings: readonly (readonly [date: string, km: number])[]): KnownDistance {
  const points = distancePoints(readings.map(([date, km]) => readingOn(date, km)), []);
  return {
    points,
    usage: fitUsage({ readings: points.map(dayKm), declaredKmAYear: null, season: makeSeason('none') }),
    firstRegistered: firstRegistered === null ? null : day(firstRegistered),
  };
}
