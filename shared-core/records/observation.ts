import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { papers } from './paper.ts';
import { workRecords } from './work-record.ts';

/** Something seen that needs another look. */
export const observationSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  date: dateSchema,
  text: plainText(300),
  severity: z.enum(['watch', 'soon', 'unsafe']),
  recheckOn: dateSchema.nullable(),
  /** The record in which it was seen. */
  record: idSchema.nullable(),
  /** Which line of that record is to be watched, from 0; absent where it was seen beside the lines. */
  line: z.int().min(0).max(99).optional(),
  papers: z.array(sha256Schema).max(10),
  /** The record that closed it. */
  closedBy: idSchema.nullable(),
  closedOn: dateSchema.nullable(),
});
export type Observation = z.infer<typeof observationSchema>;

export const observations = family('observation', 'records', observationSchema);
export const observationNoted = factEntry('observation-noted', observations, {
  car: (seen) => seen.car,
  refersTo: (seen) => [...refers(cars, seen.car), ...refers(workRecords, seen.record, seen.closedBy), ...refers(papers, ...seen.papers)],
});
