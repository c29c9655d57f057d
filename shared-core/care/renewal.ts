import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { minorSchema } from '../units/money.ts';
import { obligations } from './obligation.ts';

/** An obligation met once: the test passed, the tax paid, the insurance renewed. */
export const renewalSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  obligation: idSchema,
  on: dateSchema,
  lastValidDay: dateSchema,
  paidMinor: minorSchema.nullable(),
  reference: plainText(120).nullable(),
  papers: z.array(sha256Schema).max(10),
});
export type Renewal = z.infer<typeof renewalSchema>;

export const renewals = family('renewal', 'care', renewalSchema);
export const renewalRecorded = factEntry('renewal-recorded', renewals, {
  car: (renewal) => renewal.car,
  refersTo: (renewal) => [...refers(cars, renewal.car), ...refers(obligations, renewal.obligation), ...renewal.papers.map((id) => ({ family: 'paper', id }))],
});
