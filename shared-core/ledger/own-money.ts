import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { previousPacks } from '../records/previous-pack.ts';

/** Says whether this household paid for a thing of a car: it did not bring it from an earlier keeper, and the car was here by then. */
export type IsOwnMoney = (of: { readonly id: string; readonly car: string }, on: LocalDate) => boolean;

/** Which of the household's records and renewals were paid by itself: none of an earlier keeper's, and none from before it had the car. */
export function ownMoney(facts: Facts): IsOwnMoney {
  const brought = new Set(facts.all(previousPacks).flatMap((one) => [...one.records.map(({ id }) => id), ...one.others]));
  const since = new Map(facts.all(cars).map((car) => [car.id, car.keptSince]));
  return ({ id, car }, on) => !brought.has(id) && on >= (since.get(car) ?? on);
}
