import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';

const limitFields = z.strictObject({
  months: z.int(refusedBy('not-months')).min(1, refusedBy('not-months')).max(600, refusedBy('not-months')).nullable(),
  distance: typedDistanceSchema.refine((typed) => typed.value > 0, refusedBy('not-a-distance')).nullable(),
});

/** How long something lasts: months, distance or both; whichever comes first. */
export const limitSchema = limitFields.refine((limit) => !isEmpty(limit), refusedBy('interval-empty'));
export type Limit = z.infer<typeof limitSchema>;

/** The interval of a service item: the first one is often unlike the later ones. */
export const intervalSchema = z.strictObject({ first: limitSchema, repeat: limitSchema });
export type Interval = z.infer<typeof intervalSchema>;

/** An interval as an item may have it: what is done once, and comes round no more, has neither months nor a distance. */
export const itemIntervalSchema = z.strictObject({ first: limitFields, repeat: limitFields }).refine(({ first, repeat }) => isEmpty(first) === isEmpty(repeat), refusedBy('interval-empty'));

/** The interval of what is done once. */
export const ONCE: Interval = { first: { months: null, distance: null }, repeat: { months: null, distance: null } };

/** Whether something is done once, without any interval. @example isOnce(ONCE) //=> true */
export function isOnce({ repeat }: Interval): boolean {
  return isEmpty(repeat);
}

function isEmpty({ months, distance }: { readonly months: number | null; readonly distance: unknown }): boolean {
  return months === null && distance === null;
}
