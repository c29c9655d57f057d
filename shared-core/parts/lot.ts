import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { keepsOpenedSchema, parts } from './part.ts';
import { quantitySchema } from '../units/quantity.ts';

/** A batch of a part on the shelf as it came; what was used of it is told by the records and the takings that used it. */
export const lotSchema = z.strictObject({
  id: idSchema,
  part: idSchema,
  quantity: quantitySchema,
  receivedOn: dateSchema,
  openedOn: dateSchema.nullable(),
  expires: dateSchema.nullable(),
  keepsOpenedDays: keepsOpenedSchema,
  where: plainText(60).nullable(),
  /** What was paid for it, delivery included; null where not known. */
  paidMinor: priceSchema.nullable(),
  /** The order that brought it; null where it was simply there. */
  order: idSchema.nullable(),
});
export type Lot = z.infer<typeof lotSchema>;

export const lots = family('lot', 'parts', lotSchema);
export const lotSet = factEntry('lot-set', lots, {
  version: 2,
  car: () => null,
  // Version 1 was before orders, and before anything was said of how long an opened pack keeps.
  upgrade: (values) => ({ ...values, keepsOpenedDays: null, order: null }),
  refersTo: (lot) => [...refers(parts, lot.part), ...(lot.order === null ? [] : [{ family: 'order', id: lot.order }])],
});
