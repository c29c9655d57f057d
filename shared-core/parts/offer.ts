import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { parts } from './part.ts';
import { quantitySchema } from '../units/quantity.ts';
import { suppliers } from './supplier.ts';

/** A pack of a part at a price, as seen on a date. */
export const offerSchema = z.strictObject({
  id: idSchema,
  supplier: idSchema,
  part: idSchema,
  number: plainText(60).nullable(),
  /** How much is in the pack, in the unit of the part's specification. */
  quantity: quantitySchema,
  priceMinor: priceSchema,
  /** The most packs that can be had; null: no limit known. */
  most: z.int().min(1).max(100_000).nullable(),
  /** From `packs` packs on, this price holds for all packs. */
  breaks: z.array(z.strictObject({ packs: z.int().min(2).max(100_000), priceMinor: priceSchema })).max(20),
  seenOn: dateSchema,
});
export type Offer = z.infer<typeof offerSchema>;

export const offers = family('offer', 'parts', offerSchema);
export const offerSet = factEntry('offer-set', offers, {
  car: () => null,
  refersTo: (offer) => [...refers(suppliers, offer.supplier), ...refers(parts, offer.part)],
});
