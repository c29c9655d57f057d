import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';
import { parts } from './part.ts';
import { quantitySchema } from '../units/quantity.ts';
import { suppliers } from './supplier.ts';

const notTax = refusedBy('not-a-tax-rate');
/** Tax that comes on top of a price, in hundredths of a percent (2000 is 20 %); null: the price includes it. */
export const taxAddedSchema = z.int(notTax).min(0, notTax).max(10_000, notTax).nullable();

/** A pack of a part at a price, as seen on a date. */
export const offerSchema = z.strictObject({
  id: idSchema,
  supplier: idSchema,
  part: idSchema,
  number: plainText(60).nullable(),
  /** How much is in the pack, in the unit of the part's specification. */
  quantity: quantitySchema,
  priceMinor: priceSchema,
  taxAdded: taxAddedSchema,
  /** What is paid for each pack beside its price, and comes back with the old part or the empty. */
  depositMinor: priceSchema,
  /** The most packs that can be had; null: no limit known. */
  most: z.int().min(1).max(100_000).nullable(),
  /** From `packs` packs on, this price holds for all packs. */
  breaks: z.array(z.strictObject({ packs: z.int().min(2).max(100_000), priceMinor: priceSchema })).max(20),
  seenOn: dateSchema,
  /** The day from which it is known not to be had any more. */
  withdrawnOn: dateSchema.nullable(),
});
export type Offer = z.infer<typeof offerSchema>;

export const offers = family('offer', 'parts', offerSchema);
export const offerSet = factEntry('offer-set', offers, {
  version: 2,
  car: () => null,
  // Version 1 knew neither deposits nor tax on top, and every offer stood.
  upgrade: (values) => ({ ...values, taxAdded: null, depositMinor: 0, withdrawnOn: null }),
  refersTo: (offer) => [...refers(suppliers, offer.supplier), ...refers(parts, offer.part)],
});

/** The offers that can still be taken. */
export function standingOffers(facts: Facts): readonly Offer[] {
  return facts.all(offers).filter((offer) => offer.withdrawnOn === null);
}
