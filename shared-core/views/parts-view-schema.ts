import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { deliverySchema } from '../parts/delivery.ts';
import { lotSchema } from '../parts/lot.ts';
import { neverMixSchema } from '../parts/never-mix.ts';
import { offerSchema } from '../parts/offer.ts';
import { orderReturnSchema } from '../parts/order-return.ts';
import { orderedLineSchema, orderSchema } from '../parts/order.ts';
import { partSchema, statementSchema } from '../parts/part.ts';
import { preferenceSchema } from '../parts/part-preference.ts';
import { supersededSchema } from '../parts/part-number.ts';
import { partsSettingsSchema } from '../parts/parts-settings.ts';
import { specificationSchema } from '../parts/specification.ts';
import { stocktakeSchema } from '../parts/stocktake.ts';
import { supplierSchema } from '../parts/supplier.ts';
import { toolSchema } from '../parts/tool.ts';
import { wasteSchema } from '../parts/waste.ts';
import { lackingToolSchema } from './order-view-schema.ts';
import { orderSheetSchema } from './order-sheets.ts';
import { saidSchema } from './plan-said.ts';

/** A specification with who asks for it, what meets it, and what it may not meet. */
export const specificationViewSchema = z.object({
  specification: specificationSchema,
  askedBy: z.array(z.object({ car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(), quantity: z.number() })),
  metBy: z.array(z.object({ part: z.string(), name: z.string(), statement: statementSchema, said: z.string(), offers: z.int(), onShelf: z.number(), preferred: z.int().nullable() })),
  preference: preferenceSchema.nullable(),
  neverWith: z.array(z.object({ specification: z.string(), name: z.string(), rule: z.enum(['never', 'ask']), why: saidSchema })),
  onShelf: z.number(),
  coming: z.number(),
});
export type SpecificationView = z.infer<typeof specificationViewSchema>;

export const partViewSchema = z.object({
  part: partSchema,
  unit: z.string().nullable(),
  /** The number that its own was replaced by, and the older ones that lead to it. */
  numberNow: z.string().nullable(),
  formerNumbers: z.array(z.string()),
  contains: z.array(z.object({ part: z.string(), name: z.string(), quantity: z.number() })),
  onShelf: z.number(),
});

export const offerViewSchema = z.object({ offer: offerSchema, supplierName: z.string(), partName: z.string(), unit: z.string().nullable(), paidMinor: z.int(), stale: z.boolean(), ageDays: z.int(), numberNow: z.string().nullable() });

/** A lot as it stands on the shelf. */
export const lotViewSchema = z.object({
  lot: lotSchema, partName: z.string(), unit: z.string().nullable(), left: z.number(), openedOn: dateSchema.nullable(), goodUntil: dateSchema.nullable(),
  state: z.enum(['whole', 'opened', 'expired', 'used-up']),
  /** What was paid for what is left, to the nearest minor unit; null where that is not known. */
  worthMinor: z.int().nullable(),
  /** Its place among what is to be used first of its part; null where it is not to be used. */
  useAs: z.int().nullable(),
});
export type LotView = z.infer<typeof lotViewSchema>;

const lineViewSchema = z.object({ line: orderedLineSchema, partName: z.string(), unit: z.string().nullable(), good: z.int(), aside: z.int(), again: z.int(), notComing: z.int(), cancelled: z.int(), open: z.int(), goodsReturned: z.int(), claimed: z.int(), depositsOpen: z.int(), landedMinor: z.int(),
  /** Packs that came wrong and still lie there; packs that can still go back; and packs whose money can be asked for without sending anything: never come, or wrong with nothing in their place. */
  asideLeft: z.int(), goodsToReturn: z.int(), claimable: z.int(),
});

/** A placed order with what came of it, what is still to come or to come back, and on whom it falls. */
export const placedOrderViewSchema = z.object({
  order: orderSchema, supplierName: z.string(),
  state: z.enum(['on-the-way', 'part-delivered', 'delivered', 'cancelled']),
  overdueDays: z.int().nullable(),
  lines: z.array(lineViewSchema),
  deliveries: z.array(deliverySchema),
  returns: z.array(orderReturnSchema),
  /** Of what came or is still to come; delivery as charged. */
  goodsMinor: z.int(), paidMinor: z.int(), depositsMinor: z.int(), depositsOpenMinor: z.int(),
  /** For what never comes, deposits included, and not claimed yet: it comes back if it was paid. */
  owedBackMinor: z.int(),
  refundOpenMinor: z.int(),
  /** Days left to send something back; null where no last day is known or it has passed. */
  returnDaysLeft: z.int().nullable(),
  shares: z.array(z.object({ car: z.string().nullable(), carName: z.string().nullable(), minor: z.int() })),
  sheet: orderSheetSchema,
});
export type PlacedOrderView = z.infer<typeof placedOrderViewSchema>;

/** What a session at home has to hand and what it lacks. */
export const sessionPartsSchema = z.object({
  session: z.string(), day: dateSchema, daysAhead: z.int(),
  needs: z.array(z.object({
    car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(), specification: z.string(), specificationName: z.string(), unit: z.string(), quantity: z.number(),
    taken: z.array(z.object({ lot: z.string(), part: z.string(), partName: z.string(), quantity: z.number(), where: z.string().nullable() })),
    coming: z.number(), comingOn: dateSchema.nullable(), lacking: z.number(),
  })),
  toolsLacking: z.array(lackingToolSchema),
});
export type SessionParts = z.infer<typeof sessionPartsSchema>;

/** All that the Parts screen shows, but for the proposal, which is solved. */
export const partsViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  settings: partsSettingsSchema,
  specifications: z.array(specificationViewSchema),
  parts: z.array(partViewSchema),
  suppliers: z.array(supplierSchema),
  offers: z.array(offerViewSchema),
  neverMix: z.array(neverMixSchema),
  superseded: z.array(supersededSchema),
  shelf: z.array(lotViewSchema),
  stocktakes: z.array(stocktakeSchema),
  orders: z.array(placedOrderViewSchema),
  sessions: z.array(sessionPartsSchema),
  tools: z.array(toolSchema.extend({ takenBy: z.array(z.object({ car: z.string(), item: z.string(), itemName: z.string() })), overdue: z.boolean() })),
  waste: z.array(wasteSchema),
  /** What wants to be looked at: overdue orders, refunds, last days for sending back, expired lots, tools to give back. */
  notes: z.array(saidSchema),
});
export type PartsView = z.infer<typeof partsViewSchema>;
