import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { idSchema } from '../result/id.ts';

/** A recall of a sample car: the day its letter came, and how it was then done. */
export const sampleRecallSchema = z.strictObject({
  id: idSchema,
  on: dateSchema,
  number: z.string(),
  what: z.string(),
  /** The day booked at once; once it is done, the day on which it is due again. */
  nextOn: dateSchema.nullable().default(null),
  done: z.strictObject({ on: dateSchema, how: z.string(), doneBy: z.string() }).optional(),
});
export type SampleRecall = z.infer<typeof sampleRecallSchema>;

/** A distance allowance of a sample car: the fields of the operation, and the day it was written down. */
export const sampleAllowanceSchema = z.looseObject({ id: idSchema, on: dateSchema });
