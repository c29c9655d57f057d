import { z } from 'zod';
import { localDate } from '../calendar/local-date.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';
import { decimalsOf, LARGEST_QUANTITY, MOST_DECIMALS } from './order-quantity.ts';

/** Where an allocation comes from when it is not an offer. No offer may bear this id. */
export const FROM_SHELF = 'shelf';

const noQuantity = refusedBy('not-a-quantity');
const id = z.string().min(1, refusedBy('text-empty')).max(200, refusedBy('text-too-long'));
const packs = z.int().min(0).max(1_000_000_000);
const amount = z
  .number(noQuantity)
  .min(0, noQuantity)
  .max(LARGEST_QUANTITY, noQuantity)
  .refine((value) => decimalsOf(value, MOST_DECIMALS) !== null, refusedBy('order-quantity-too-fine'));
const quantity = amount.refine((value) => value > 0, noQuantity);
const date = z.string(refusedBy('not-a-date')).transform((text, context) => {
  const read = localDate(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: refusedBy('not-a-date').error });
  return z.NEVER;
});

/** A shop: what it charges to deliver, from which sum of goods it delivers free (null: never), the least sum it sends, calendar days until the goods are here. */
export const orderSupplierSchema = z.strictObject({
  id,
  deliveryMinor: priceSchema,
  freeFromMinor: priceSchema.nullable().default(null),
  minimumMinor: priceSchema.default(0),
  leadDays: z.int().min(0).max(3650),
});
export type OrderSupplier = z.infer<typeof orderSupplierSchema>;

/** A part and the specifications it meets; or, where it contains others, a kit, which counts as its contents and nothing else. */
export const orderPartSchema = z.strictObject({
  id,
  meets: z.array(id).max(1000),
  contains: z.array(z.strictObject({ part: id, quantity })).max(200).default([]),
});
export type OrderPart = z.infer<typeof orderPartSchema>;

/** A pack at a price: `quantity` of the part in each; `most` packs can be had (null: any number); from `packs` on, a break's price holds for all of them. */
export const orderOfferSchema = z.strictObject({
  id,
  supplier: id,
  part: id,
  quantity,
  priceMinor: priceSchema,
  most: packs.nullable().default(null),
  breaks: z.array(z.strictObject({ packs: packs.min(1), priceMinor: priceSchema })).max(100).default([]),
});
export type OrderOffer = z.infer<typeof orderOfferSchema>;

/** 0 late or legal, 1 due, 2 a wish. */
export const needRankSchema = z.union([z.literal(0), z.literal(1), z.literal(2)]);
export type NeedRank = z.infer<typeof needRankSchema>;

/** A quantity that must meet a specification by a date, for a car. See HEADLESS: mix, step, rank, laterMinor (null: not to be left for later). */
export const orderNeedSchema = z.strictObject({
  id,
  car: id,
  spec: id,
  quantity,
  neededBy: date,
  /** The day on which it is used, where that is another: what comes off the shelf must still be good then. */
  usedOn: date.optional(),
  mix: z.boolean().default(true),
  step: quantity.nullable().default(null),
  rank: needRankSchema.default(1),
  laterMinor: priceSchema.nullable().default(null),
});
export type OrderNeed = z.infer<typeof orderNeedSchema>;

/** What stands on the shelf already; good through the day it expires, not to be used for what is used after it (null: it keeps). */
export const shelfStockSchema = z.strictObject({ part: id, quantity: amount, expires: date.nullable().default(null) });
export type ShelfStock = z.infer<typeof shelfStockSchema>;

/** The bare order problem; quantities in the specification's own unit, money in minor units, order day and dates as YYYY-MM-DD. */
export const orderInstanceSchema = z.strictObject({
  suppliers: z.array(orderSupplierSchema).max(1000),
  parts: z.array(orderPartSchema).max(50_000),
  offers: z.array(orderOfferSchema).max(50_000),
  needs: z.array(orderNeedSchema).max(20_000),
  shelf: z.array(shelfStockSchema).max(50_000),
  orderOn: date,
  /** Nothing may be bought that no need takes. */
  noLeftovers: z.boolean().optional(),
});
export type OrderInstance = z.infer<typeof orderInstanceSchema>;
/** The instance as it may be written: what has a default may be absent. */
export type OrderInstanceAsWritten = z.input<typeof orderInstanceSchema>;
