import { z } from 'zod';
import { readingSchema } from './reading.ts';

/** The answer to a reading: accepted, or set aside with the doubt and what may have been meant. */
export const recordReadingReply = z.object({
  reading: readingSchema,
  state: z.enum(['accepted', 'set-aside']),
  code: z.string().nullable(),
  /** Values that may have been meant, in the unit typed, likeliest first. */
  repairs: z.array(z.number()),
});
export type RecordReadingReply = z.infer<typeof recordReadingReply>;
