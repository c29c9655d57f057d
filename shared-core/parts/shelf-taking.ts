import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';
import { lots } from './lot.ts';

/** What was taken from a lot beside the work records: used, lost, kept for disposal, sent back. */
export const shelfTakingSchema = z.strictObject({
  id: idSchema,
  lot: idSchema,
  on: dateSchema,
  quantity: quantitySchema,
  why: z.enum(['used', 'lost', 'waste', 'returned']),
  car: idSchema.nullable(),
  note: longText(300),
});
export type ShelfTaking = z.infer<typeof shelfTakingSchema>;

export const shelfTakings = family('shelf-taking', 'parts', shelfTakingSchema);
export const shelfTaken = factEntry('shelf-taken', shelfTakings, { car: () => null, refersTo: (taking) => [...refers(lots, taking.lot), ...refers(cars, taking.car)] });
