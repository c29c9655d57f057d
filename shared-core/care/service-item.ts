import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { quantitySchema } from '../units/quantity.ts';
import { itemIntervalSchema } from './limit.ts';
import { itemMeasureSchema } from './wear-limit.ts';

/** From what the next date is counted. */
export const anchorSchema = z.discriminatedUnion('kind', [
  /** From the last completion. */
  z.strictObject({ kind: z.literal('completion') }),
  /** From a fixed first date, in whole steps of the interval; no distance. */
  z.strictObject({ kind: z.literal('calendar'), firstDate: dateSchema }),
  /** A certificate with a last valid day that an early renewal keeps. */
  z.strictObject({ kind: z.literal('keep-date'), lastValidDay: dateSchema }),
]);
export type Anchor = z.infer<typeof anchorSchema>;

/** What is known of the time before the first record of the item. */
export const historySchema = z.enum(['never-done', 'unknown', 'from-purchase']);

/** How much of something the work takes, and what it must meet. */
export const itemNeedSchema = z.strictObject({ specification: idSchema, quantity: quantitySchema });

/** One thing that is cared for on one car. */
export const serviceItemSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  name: plainText(80),
  work: z.enum(['replace', 'check']),
  /** What waiting too long harms. */
  harm: z.enum(['safety', 'damage', 'comfort']),
  /** What is done once has none: it is due at no time. */
  interval: itemIntervalSchema,
  anchor: anchorSchema,
  history: historySchema,
  /** A date printed on the thing itself, after which it is not to be used. */
  printedDate: dateSchema.nullable(),
  /** Where the interval comes from: a handbook page, a maker's sheet; null where nobody has said. */
  source: plainText(120).nullable(),
  /** The keeper has compared it with the source. */
  confirmed: z.boolean(),
  minutes: z.int().min(1).max(6000).nullable(),
  /** What must be opened to reach it, by name; shared by other items. */
  access: z.array(plainText(40)).max(10),
  needs: z.array(itemNeedSchema).max(20),
  place: z.enum(['home', 'garage', 'either']),
  /** What a garage asks for it, parts and labour. */
  garagePrice: priceSchema.nullable(),
  /** What it is measured by, and its limit: the earlier of wear and interval makes it due. Null where it is not measured. */
  measure: itemMeasureSchema.nullable(),
});
export type ServiceItem = z.infer<typeof serviceItemSchema>;

export const serviceItems = family('service-item', 'care', serviceItemSchema);
export const serviceItemSet = factEntry('service-item-set', serviceItems, {
  version: 2,
  car: (item) => item.car,
  // Version 1 was before items were measured.
  upgrade: (values) => ({ ...values, measure: null }),
  // Specifications belong to a later stage, so they are named by their family.
  refersTo: (item) => [...refers(cars, item.car), ...item.needs.map((need) => ({ family: 'specification', id: need.specification }))],
});
/** Only what was to be done once, and was not, is taken away again. */
export const serviceItemRemoved = factRemoval('service-item-removed', serviceItems);
