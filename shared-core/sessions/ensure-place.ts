import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { placeSet, standingPlaces, type Place } from './place.ts';

/** A place by its id; an assumed one is stated by the entries given, for something is about to stand upon it. */
export function ensurePlace(facts: Facts, id: string): Result<{ readonly place: Place; readonly entries: readonly NewEntry[] }> {
  const found = standingPlaces(facts).find(({ place }) => place.id === id);
  if (found === undefined) return refuse('unknown-place', { place: id }, ['place']);
  return ok({ place: found.place, entries: found.assumed ? [newEntry(placeSet, found.place)] : [] });
}
