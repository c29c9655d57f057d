import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { placeAssumed, places, placeSet, standingPlaces, type Place } from './place.ts';

/** A place by its id; one that is only assumed is taken in by the entries given, still as assumed, for something is about to stand upon it. */
export function ensurePlace(facts: Facts, id: string): Result<{ readonly place: Place; readonly entries: readonly NewEntry[] }> {
  const found = standingPlaces(facts).find(({ place }) => place.id === id);
  if (found === undefined) return refuse('unknown-place', { place: id }, ['place']);
  const isNew = facts.get(places, id) === null;
  return ok({ place: found.place, entries: isNew ? [newEntry(placeSet, found.place), newEntry(placeAssumed, { id })] : [] });
}
