import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { carSubject, refers, type EntryKind } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';

/** Who allows so much and no more. */
export const allowanceKindSchema = z.enum(['insurance', 'lease', 'warranty', 'other']);

/** So much distance a year, or in all, from a day on: limited-mileage insurance, a lease, a warranty that ends by date or distance. */
export const distanceAllowanceSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  kind: allowanceKindSchema,
  name: plainText(80).nullable(),
  distance: typedDistanceSchema.refine((typed) => typed.value > 0, refusedBy('not-a-distance')),
  /** Each year anew, counted from the first day; or once for the whole term. */
  every: z.enum(['year', 'term']),
  from: dateSchema,
  /** The last day on which it holds; null while it goes on. */
  to: dateSchema.nullable(),
  /** What the odometer showed on the first day; null: worked out from the readings. */
  startReading: typedDistanceSchema.nullable(),
});
export type DistanceAllowance = z.infer<typeof distanceAllowanceSchema>;

export const distanceAllowances = family('distance-allowance', 'care', distanceAllowanceSchema);
export const distanceAllowanceSet = factEntry('distance-allowance-set', distanceAllowances, {
  car: (allowance) => allowance.car,
  refersTo: (allowance) => refers(cars, allowance.car),
});

const removedSchema = distanceAllowanceSchema.pick({ id: true, car: true });

/** An allowance that does not hold any more, or never did. */
export const distanceAllowanceRemoved: EntryKind<z.infer<typeof removedSchema>> = {
  kind: 'distance-allowance-removed',
  version: 1,
  schema: removedSchema,
  subject: ({ car }) => carSubject(car),
  apply: ({ id, car }) => [{ family: distanceAllowances.name, stage: distanceAllowances.stage, id, car, value: null }],
  refersTo: ({ id, car }) => [...refers(cars, car), ...refers(distanceAllowances, id)],
};
