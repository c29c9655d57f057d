import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { papers } from '../records/paper.ts';
import { workRecords } from '../records/work-record.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';
import { quoteLineSchema } from '../work/booking.ts';

/** Something that a price is said to cover: an item of the car, or in words alone. */
export const quotedThingSchema = z.strictObject({ id: idSchema, item: idSchema.nullable(), text: plainText(200) });
export type QuotedThing = z.infer<typeof quotedThingSchema>;

/** A price that somebody named for work on a car, kept to be held against the same work done at home. */
export const heldQuoteSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  /** Who named it. */
  by: plainText(80),
  on: dateSchema,
  validUntil: dateSchema.nullable(),
  things: z.array(quotedThingSchema).min(1, refusedBy('quote-covers-nothing')).max(60),
  /** Its prices, each with the things that it covers together. */
  lines: z.array(quoteLineSchema).max(60),
  /** The sum as it was named: it is kept though its lines add up to another. */
  totalMinor: priceSchema.nullable(),
  /** The records of the work that was done in its place. */
  records: z.array(idSchema).max(20),
  paper: sha256Schema.nullable(),
  note: longText(500),
});
export type HeldQuote = z.infer<typeof heldQuoteSchema>;

export const heldQuotes = family('held-quote', 'ledger', heldQuoteSchema);
export const heldQuoteSet = factEntry('held-quote-set', heldQuotes, {
  car: () => null,
  refersTo: (quote) => [...refers(cars, quote.car), ...refers(serviceItems, ...quote.things.map((one) => one.item)), ...refers(workRecords, ...quote.records), ...refers(papers, quote.paper)],
});
export const heldQuoteRemoved = factRemoval('held-quote-removed', heldQuotes);
