import type { Car } from '../fleet/car.ts';
import type { ServiceItem } from './service-item.ts';

/**
 * What to take of the time before a car's first record, unless its keeper says: of a car kept from new nothing was done
 * that is not recorded; of another nobody knows.
 *
 * @example suggestedHistory({ firstRegistered: '2022-11-01', keptSince: null }) //=> 'never-done'
 */
export function suggestedHistory({ firstRegistered, keptSince }: Pick<Car, 'firstRegistered' | 'keptSince'>): ServiceItem['history'] {
  const fromNew = firstRegistered !== null && (keptSince === null || keptSince <= firstRegistered);
  return fromNew ? 'never-done' : 'unknown';
}
