import { addMonths } from '../calendar/add-months.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import type { ServiceItem } from './service-item.ts';

const A_YEAR = 12;

/**
 * What to take of the time before a car's first record, unless its keeper says: of a car kept from new and no older than a
 * year, nothing was done that is not recorded; of any other nobody has said, and what is unknown is asked about.
 *
 * @example suggestedHistory({ firstRegistered: '2026-03-02', keptSince: null }, '2026-11-25') //=> 'never-done'
 */
export function suggestedHistory({ firstRegistered, keptSince }: Pick<Car, 'firstRegistered' | 'keptSince'>, today: LocalDate): ServiceItem['history'] {
  const fromNew = firstRegistered !== null && (keptSince === null || keptSince <= firstRegistered);
  return fromNew && today <= addMonths(firstRegistered, A_YEAR) ? 'never-done' : 'unknown';
}
