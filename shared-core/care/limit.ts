import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';

/** How long something lasts: months, distance or both; whichever comes first. */
export const limitSchema = z
  .strictObject({
    months: z.int(refusedBy('not-months')).min(1, refusedBy('not-months')).max(600, refusedBy('not-months')).nullable(),
    distance: typedDistanceSchema.refine((typed) => typed.value > 0, refusedBy('not-a-distance')).nullable(),
  })
  .refine((limit) => limit.months !== null || limit.distance !== null, refusedBy('interval-empty'));
export type Limit = z.infer<typeof limitSchema>;

/** The interval of a service item: the first one is often unlike the later ones. */
export const intervalSchema = z.strictObject({ first: limitSchema, repeat: limitSchema });
export type Interval = z.infer<typeof intervalSchema>;
