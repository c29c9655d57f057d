import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { orderAnswerSchema } from '../parts/order-answer.ts';
import { takerSchema } from '../parts/order.ts';
import { orderSheetSchema } from './order-sheets.ts';
import { saidSchema } from './plan-said.ts';

export const orderRequestSchema = z.strictObject({
  /** Items likely due, or planned, within so many days are bought for. */
  horizonDays: z.int().min(0).max(1826).default(90),
  /** What if: from this supplier alone, here by a day, nothing left over. */
  onlySupplier: z.string().min(1).max(80).nullable().default(null),
  arriveBy: dateSchema.nullable().default(null),
  noLeftovers: z.boolean().default(false),
  /** Let wishes that are saved up join where that makes them cheaper. */
  wishes: z.boolean().default(true),
  /** A name under which progress is told and the solving can be stopped. */
  job: z.string().min(1).max(80).nullable().default(null),
});
export type OrderRequest = z.output<typeof orderRequestSchema>;

/** Where what a need takes comes from. */
const sourceSchema = z.object({ from: z.enum(['shelf', 'coming', 'offer']), part: z.string(), partName: z.string(), quantity: z.number(), offer: z.string().nullable(), order: z.string().nullable(), on: dateSchema });

export const needViewSchema = z.object({
  need: z.string(), car: z.string(), carName: z.string(), /** Null for a wish that is not planned yet. */ item: z.string().nullable(), itemName: z.string(), /** The wish that it is for. */ wish: z.string().nullable(),
  specification: z.string(), specificationName: z.string(), unit: z.string(), quantity: z.number(), neededBy: dateSchema,
  state: z.enum(['met', 'later', 'none-in-time', 'not-enough']),
  session: z.object({ id: z.string(), day: dateSchema }).nullable(),
  sources: z.array(sourceSchema),
  /** When all of it is here; null where it is not met. */
  readyOn: dateSchema.nullable(),
  /** It is not here the day before its session. */
  tooLateForSession: z.boolean(),
});
export type NeedView = z.infer<typeof needViewSchema>;

const forSchema = z.object({ car: z.string(), carName: z.string(), item: z.string(), itemName: z.string(), part: z.string(), quantity: z.number(), unit: z.string() });

export const orderLineViewSchema = z.object({
  offer: z.string(), part: z.string(), partName: z.string(), number: z.string().nullable(),
  /** The number that this one was replaced by; null where it still holds. */
  numberNow: z.string().nullable(),
  packs: z.int(), quantity: z.number(), unit: z.string().nullable(), priceMinor: z.int(), totalMinor: z.int(), depositMinor: z.int(),
  /** With its share of delivery. */
  landedMinor: z.int(),
  seenOn: dateSchema, stale: z.boolean(),
  for: z.array(forSchema),
});
export type OrderLineView = z.infer<typeof orderLineViewSchema>;

export const supplierOrderSchema = z.object({
  supplier: z.string(), supplierName: z.string(), goodsMinor: z.int(), deliveryMinor: z.int(),
  /** Deposits paid beside it, which come back. */
  depositsMinor: z.int(),
  leadDays: z.int(), expectedOn: dateSchema,
  lines: z.array(orderLineViewSchema),
  /** What `order.place` is to be sent for it. */
  place: z.object({ supplier: z.string(), lines: z.array(z.object({ offer: z.string(), packs: z.int(), for: z.array(takerSchema) })) }),
});
export type SupplierOrder = z.infer<typeof supplierOrderSchema>;

const againstSchema = z.object({ supplier: z.string(), supplierName: z.string(), totalMinor: z.int(), met: z.int() });

export const lackingToolSchema = z.object({ tool: z.string(), name: z.string(), why: z.enum(['missing', 'borrowed-until']), until: dateSchema.nullable(), lender: z.string().nullable(), items: z.array(z.object({ car: z.string(), item: z.string(), itemName: z.string(), day: dateSchema.nullable() })) });
export type LackingTool = z.infer<typeof lackingToolSchema>;

/** The bare answer with its needs, its orders by supplier, its proof in words, and what it is held against. */
export const orderViewSchema = orderAnswerSchema.extend({
  today: dateSchema,
  horizonDays: z.int(),
  terms: z.object({ onlySupplier: z.string().nullable(), arriveBy: dateSchema.nullable(), noLeftovers: z.boolean() }),
  currency: z.string(),
  needs: z.array(needViewSchema),
  orders: z.array(supplierOrderSchema),
  depositsMinor: z.int(),
  /** What falls on each car, and on the shelf (null): together goods and delivery, to the last minor unit. */
  shares: z.array(z.object({ car: z.string().nullable(), carName: z.string().nullable(), minor: z.int() })),
  perCar: z.object({ totalMinor: z.int(), met: z.int(), cars: z.array(z.object({ car: z.string(), totalMinor: z.int(), met: z.int() })) }),
  /** What buying together saves; null where each car alone would not meet the same number of needs. */
  savedMinor: z.int().nullable(),
  /** Each supplier alone; the cheapest that meets as many needs, null where none does. */
  perSupplier: z.array(againstSchema),
  cheapestSupplier: againstSchema.nullable(),
  preferences: z.array(z.object({ specification: z.string(), specificationName: z.string(), part: z.string(), partName: z.string(), taken: z.boolean(), moreMinor: z.int().nullable() })),
  toolsLacking: z.array(lackingToolSchema),
  /** The wishes that were weighed: what joining saves against buying their parts alone later, or why they are left. */
  wishes: z.array(z.object({ wish: z.string(), name: z.string(), carName: z.string(), joins: z.boolean(), aloneMinor: z.int().nullable(), savesMinor: z.int(), why: saidSchema })),
  /** One for each supplier: to print, as a table, as an e-mail, for a counter. */
  sheets: z.array(orderSheetSchema),
  /** What it comes to, how far it is proven, what it saves. */
  proof: z.array(saidSchema),
  /** What to look at before ordering. */
  notes: z.array(saidSchema),
});
export type OrderView = z.infer<typeof orderViewSchema>;
