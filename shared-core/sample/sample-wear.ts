import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { wheelPlaceSchema } from '../fleet/wheel.ts';

/** A wheel of the sample: when it came, where to, and when its tyre was made or the code moulded into it. */
const sampleWheelSchema = z.looseObject({ id: z.string(), on: dateSchema, place: wheelPlaceSchema, made: dateSchema.optional() });
export type SampleWheel = z.infer<typeof sampleWheelSchema>;

/** Wheels moved on a day, all together: each wheel's place by its id. */
const sampleMoveSchema = z.strictObject({ on: dateSchema, places: z.record(z.string(), wheelPlaceSchema) });

/** One thing measured again and again: what the operation is told of it, and the values by day. */
const sampleMeasuredSchema = z.looseObject({ values: z.array(z.tuple([dateSchema, z.number()]).rest(z.literal('fresh'))).min(1) });

/** What is measured on a sample car, with its wheels and the limits its keeper set. */
export const sampleWearSchema = z.strictObject({
  wheels: z.array(sampleWheelSchema).default([]),
  moves: z.array(sampleMoveSchema).default([]),
  limits: z.array(z.looseObject({ on: dateSchema })).default([]),
  measured: z.array(sampleMeasuredSchema).default([]),
});
export type SampleWear = z.infer<typeof sampleWearSchema>;
