import { z } from 'zod';
import { weekdaysSchema } from '../calendar/weekday.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

const notMinutes = refusedBy('not-minutes-a-day');

/** Where work is done: one's own home, or a garage by its name. */
export const placeSchema = z.strictObject({
  id: idSchema,
  name: plainText(80),
  kind: z.enum(['home', 'garage']),
  /** What beginning there costs each time: the trouble of setting up or of bringing the car and fetching it, or a fee. Minor units. */
  openingMinor: priceSchema,
  /** How many minutes of our work one day there holds. */
  minutesADay: z.int(notMinutes).min(10, notMinutes).max(1440, notMinutes),
  /** What each minute costs, beside what the jobs themselves cost. */
  minuteMinor: priceSchema,
  /** Days of the week on which nothing is done there. */
  closedWeekdays: weekdaysSchema,
  /** Days ahead at which a day there must be booked. */
  noticeDays: z.int(refusedBy('not-days')).min(0, refusedBy('not-days')).max(365, refusedBy('not-days')),
  /** The cars it takes; null: every one. A workshop for vans, or one that may open a high-voltage system. */
  cars: z.array(idSchema).min(1, refusedBy('place-takes-none')).max(200).nullable(),
});
export type Place = z.infer<typeof placeSchema>;

export const places = family('place', 'sessions', placeSchema);
export const placeSet = factEntry('place-set', places, { car: () => null, refersTo: (place) => refers(cars, ...(place.cars ?? [])) });
export const placeRemoved = factRemoval('place-removed', places);

/** Marks a place that was taken into the household with a session that stands at it: nobody has said that it is as we assume. */
export const assumedPlaces = family('assumed-place', 'sessions', z.strictObject({ id: idSchema }));
export const placeAssumed = factEntry('place-assumed', assumedPlaces, { car: () => null, refersTo: ({ id }) => refers(places, id) });
export const placeConfirmed = factRemoval('place-confirmed', assumedPlaces);

/** What a home is taken to be until it is stated (ours, no source): which days one works stands with the plan's settings. */
export const ASSUMED_HOME: Place = { id: 'home', name: 'Home', kind: 'home', openingMinor: 1500, minutesADay: 300, minuteMinor: 0, closedWeekdays: [], noticeDays: 0, cars: null };
/** What a garage is taken to be until one is named (ours, no source). */
export const ASSUMED_GARAGE: Place = { id: 'garage', name: 'A garage', kind: 'garage', openingMinor: 2500, minutesADay: 480, minuteMinor: 0, closedWeekdays: [6, 7], noticeDays: 14, cars: null };

/** A place that work can be planned at, and whether it is only assumed. */
export interface StandingPlace {
  readonly place: Place;
  readonly assumed: boolean;
}

/** The places that stand, home first; where no home or no garage is stated, the assumed one. An assumed one at which sessions stand stays assumed until it is stated. */
export function standingPlaces(facts: Facts): readonly StandingPlace[] {
  const stated = facts.all(places).map((place) => ({ place, assumed: facts.get(assumedPlaces, place.id) !== null }));
  const missing = [ASSUMED_HOME, ASSUMED_GARAGE].filter((one) => !stated.some(({ place }) => place.kind === one.kind || place.id === one.id)).map((place) => ({ place, assumed: true }));
  const rank = ({ place }: StandingPlace) => (place.kind === 'home' ? 0 : 1);
  return [...stated, ...missing].sort((a, b) => rank(a) - rank(b) || (a.place.id < b.place.id ? -1 : 1));
}
