import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';

const requests = z.array(z.record(z.string(), z.json()));

/** What belongs to the whole household of the sample, dates already turned into dates. */
export const sampleStockSchema = z.strictObject({
  startedOn: dateSchema,
  household: z.record(z.string(), z.json()),
  specifications: requests,
  parts: requests,
  suppliers: requests,
  offers: z.array(z.looseObject({ seenOn: dateSchema })),
  lots: z.array(z.looseObject({ receivedOn: dateSchema, openedOn: dateSchema.nullable().default(null) })),
});
export type SampleStock = z.infer<typeof sampleStockSchema>;
