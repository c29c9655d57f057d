import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { carSubject, refers, type EntryKind } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { serviceItems } from './service-item.ts';

/** One line of a service: an item of the car, or a line of one's own; replaced or looked at. */
export const servicePlanLineSchema = z.strictObject({ item: idSchema.nullable(), name: plainText(120), work: z.enum(['replace', 'check']) });
export type ServicePlanLine = z.infer<typeof servicePlanLineSchema>;

/**
 * A service as named lines ("the four-year service"), whoever does them and on however many days. One fact holds the whole
 * of it, so that it is changed and undone as one; what of it was done is always read off the work records.
 */
export const servicePlanSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  name: plainText(80),
  /** Work from this day on counts towards it. */
  from: dateSchema,
  /** The last day that counts; null while it goes on. */
  to: dateSchema.nullable(),
  lines: z.array(servicePlanLineSchema).min(1).max(80),
});
export type ServicePlan = z.infer<typeof servicePlanSchema>;

export const servicePlans = family('service-plan', 'care', servicePlanSchema);
export const servicePlanSet = factEntry('service-plan-set', servicePlans, {
  car: (plan) => plan.car,
  refersTo: (plan) => [...refers(cars, plan.car), ...refers(serviceItems, ...plan.lines.map((line) => line.item))],
});

const removedSchema = servicePlanSchema.pick({ id: true, car: true });

/** A service that is not wanted any more; the records of its work stay. */
export const servicePlanRemoved: EntryKind<z.infer<typeof removedSchema>> = {
  kind: 'service-plan-removed',
  version: 1,
  schema: removedSchema,
  subject: ({ car }) => carSubject(car),
  apply: ({ id, car }) => [{ family: servicePlans.name, stage: servicePlans.stage, id, car, value: null }],
  refersTo: ({ id, car }) => [...refers(cars, car), ...refers(servicePlans, id)],
};
