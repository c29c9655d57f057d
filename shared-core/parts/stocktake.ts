import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';
import { lots } from './lot.ts';

/** What was counted, 0 where nothing is left, and by how much it differs from what the books had. */
export const countedLotSchema = z.strictObject({
  lot: idSchema,
  counted: z.union([z.literal(0), quantitySchema]),
  difference: z.number().min(-1_000_000).max(1_000_000),
  /** Why it differs, as far as one knows. */
  note: longText(300),
});

/** The shelf, or a place of it, counted on a day. */
export const stocktakeSchema = z.strictObject({ id: idSchema, on: dateSchema, where: plainText(60).nullable(), lines: z.array(countedLotSchema).min(1).max(2000), note: longText(500) });
export type Stocktake = z.infer<typeof stocktakeSchema>;

export const stocktakes = family('stocktake', 'parts', stocktakeSchema);
export const stockTaken = factEntry('stock-taken', stocktakes, { car: () => null, refersTo: (one) => one.lines.flatMap((line) => refers(lots, line.lot)) });
