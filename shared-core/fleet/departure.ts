import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { cars, type Car } from './car.ts';

/** How a car left the household, and when. It has the car's own id. */
export const departureSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  how: z.enum(['sold', 'scrapped']),
  on: dateSchema,
  /** The last reading, where one was taken that day. */
  reading: idSchema.nullable(),
  priceMinor: priceSchema.nullable(),
  /** To whom it went. */
  buyer: plainText(120).nullable(),
  note: longText(500),
});
export type Departure = z.infer<typeof departureSchema>;

export const departures = family('departure', 'fleet', departureSchema);
export const carLeft = factEntry('car-left', departures, {
  car: (one) => one.car,
  // Readings belong to the same stage, and are named by their family so that no two files need each other.
  refersTo: (one) => [...refers(cars, one.car), ...(one.reading === null ? [] : [{ family: 'reading', id: one.reading }])],
});
export const carCameBack = factRemoval('car-came-back', departures);

/** The cars that are still here: those that left keep their history, and nothing is due of them any more. */
export function carsHere(facts: Facts): readonly Car[] {
  const gone = new Set(facts.all(departures).map((one) => one.car));
  return facts.all(cars).filter((car) => !gone.has(car.id));
}
