import { carsHere } from '../fleet/departure.ts';
import type { Facts } from '../journal/facts.ts';

/**
 * The cars of which one must always be left to drive, by id: the everyday ones, where there are two or more. A household with one
 * everyday car could never work on it otherwise.
 */
export function everydayCars(facts: Facts): readonly string[] {
  const everyday = carsHere(facts).filter((car) => car.use === 'everyday').map((car) => car.id);
  return everyday.length >= 2 ? everyday : [];
}
