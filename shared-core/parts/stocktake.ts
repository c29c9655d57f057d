import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import type { EntryValues } from '../journal/entry-values.ts';
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
  /** What the books had taken of it on that very day, and how many counts of that day there were before: all that is in this count. Null where it was not written down. */
  sameDay: z.strictObject({ used: z.number().min(0), counts: z.int().min(0) }).nullable(),
});

/** The shelf, or a place of it, counted on a day. */
export const stocktakeSchema = z.strictObject({ id: idSchema, on: dateSchema, where: plainText(60).nullable(), lines: z.array(countedLotSchema).min(1).max(2000), note: longText(500) });
export type Stocktake = z.infer<typeof stocktakeSchema>;

export const stocktakes = family('stocktake', 'parts', stocktakeSchema);
export const stockTaken = factEntry('stock-taken', stocktakes, {
  version: 2,
  car: () => null,
  // Version 1 did not tell what of its day was in it.
  upgrade: (values) => ({ ...values, lines: (values['lines'] as readonly EntryValues[]).map((line) => ({ ...line, sameDay: null })) }) as EntryValues,
  refersTo: (one) => one.lines.flatMap((line) => refers(lots, line.lot)),
});
