import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { cars, type Car } from './car.ts';
import { HOUSEHOLD_ID, households, type Household } from './household.ts';

/**
 * The car a person means by an id or, where no car has that id, by its name in any case.
 *
 * @example findCar(facts, 'Pip') //=> { ok: true, value: { id: 'pip', ... } }
 */
export function findCar(facts: Facts, wanted: string): Result<Car> {
  const byId = facts.get(cars, wanted);
  if (byId !== null) return ok(byId);
  const byName = facts.all(cars).filter((car) => sameName(car.name, wanted));
  const [only] = byName;
  if (only !== undefined && byName.length === 1) return ok(only);
  return byName.length > 1 ? refuse('car-name-shared', { car: wanted }, ['car']) : refuse('unknown-car', { car: wanted.slice(0, 60) }, ['car']);
}

/** Whether two names are one to a person: case, blanks around and the way a letter with a mark is coded do not count. */
export function sameName(one: string, other: string): boolean {
  const plain = (name: string) => name.trim().normalize('NFC').toLowerCase();
  return plain(one) === plain(other);
}

/** The household, or a refusal where the folder has not been started. */
export function findHousehold(facts: Facts): Result<Household> {
  const household = facts.get(households, HOUSEHOLD_ID);
  return household === null ? refuse('household-not-started') : ok(household);
}
