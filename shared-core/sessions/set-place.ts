import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { ASSUMED_GARAGE, ASSUMED_HOME, assumedPlaces, placeConfirmed, placeRemoved, places, placeSchema, placeSet, type Place } from './place.ts';
import { sumTooLarge } from './plan-sums.ts';
import { isPinned, sessions } from './session.ts';

const shape = placeSchema.shape;

/** States the home or a garage; what is not given is as for an assumed one. With the id of one that stands, states it anew. */
export const setPlace = change({
  request: z.strictObject({
    id: shape.id.optional(),
    name: shape.name,
    kind: shape.kind,
    openingMinor: shape.openingMinor.optional(),
    minutesADay: shape.minutesADay.optional(),
    minuteMinor: shape.minuteMinor.optional(),
    closedWeekdays: shape.closedWeekdays.optional(),
    noticeDays: shape.noticeDays.optional(),
    cars: shape.cars.default(null),
  }),
  reply: z.object({ place: placeSchema }),
  decide: (facts, request, moment) => {
    const assumed = request.kind === 'home' ? ASSUMED_HOME : ASSUMED_GARAGE;
    const place: Place = {
      id: request.id ?? (request.kind === 'home' ? ASSUMED_HOME.id : moment.newId()),
      name: request.name,
      kind: request.kind,
      openingMinor: request.openingMinor ?? assumed.openingMinor,
      minutesADay: request.minutesADay ?? assumed.minutesADay,
      minuteMinor: request.minuteMinor ?? assumed.minuteMinor,
      closedWeekdays: [...(request.closedWeekdays ?? assumed.closedWeekdays)].sort((a, b) => a - b),
      noticeDays: request.noticeDays ?? assumed.noticeDays,
      cars: request.cars === null ? null : [...new Set(request.cars)].sort(),
    };
    const sound = checkPlace(facts, place);
    return sound.ok ? ok({ entries: [...confirmed(facts, place.id), newEntry(placeSet, place)], reply: { place } }) : sound;
  },
});

/** Takes a place away at which no session is kept. */
export const removePlace = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ place: placeSchema }),
  decide: (facts, request) => {
    const place = facts.get(places, request.id);
    if (place === null) return refuse('unknown-place', { place: request.id }, ['id']);
    const kept = facts.all(sessions).find((session) => session.place === place.id && isPinned(session));
    if (kept !== undefined) return refuse('place-in-use', { place: place.name, day: kept.day }, ['id']);
    return ok({ entries: [...confirmed(facts, place.id), newEntry(placeRemoved, { id: place.id, car: null })], reply: { place } });
  },
});

/** From now on nothing of it is only assumed. */
function confirmed(facts: Facts, id: string): readonly NewEntry[] {
  return facts.get(assumedPlaces, id) === null ? [] : [newEntry(placeConfirmed, { id, car: null })];
}

/** One home; names that a person can tell apart; a kind that does not change under sessions. */
function checkPlace(facts: Facts, place: Place): Result<Place> {
  const tooLarge = sumTooLarge(facts, [{ kind: 'opening', minor: place.openingMinor, path: ['openingMinor'] }, { kind: 'minute', minor: place.minuteMinor, path: ['minuteMinor'] }]);
  if (tooLarge !== null) return tooLarge;
  const others = facts.all(places).filter((one) => one.id !== place.id);
  const standing = facts.get(places, place.id);
  if (standing !== null && standing.kind !== place.kind) return refuse('place-kind-stays', { place: standing.name }, ['kind']);
  if (place.kind === 'home' && others.some((one) => one.kind === 'home')) return refuse('home-twice', {}, ['kind']);
  if (others.some((one) => sameName(one.name, place.name))) return refuse('place-name-taken', { place: place.name }, ['name']);
  const strange = place.cars?.find((car) => facts.get(cars, car) === null);
  if (strange !== undefined) return refuse('unknown-car', { car: strange }, ['cars']);
  if (place.closedWeekdays.length === 7) return refuse('place-never-open', { place: place.name }, ['closedWeekdays']);
  return ok(place);
}
