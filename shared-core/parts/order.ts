import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { quantitySchema } from '../units/quantity.ts';
import { offers } from './offer.ts';
import { parts } from './part.ts';
import { specifications } from './specification.ts';
import { suppliers } from './supplier.ts';

/** For whom some of a line was bought: so much of a single part, for a need of a car. */
export const takerSchema = z.strictObject({ car: idSchema, item: idSchema.nullable(), specification: idSchema.nullable(), part: idSchema, quantity: quantitySchema });
export type Taker = z.infer<typeof takerSchema>;

/** The most packs that one line of an order may have. */
export const MOST_PACKS = 10_000;

/** Packs of one part, at the price agreed. What nobody takes goes to the shelf. */
export const orderedLineSchema = z.strictObject({
  id: idSchema,
  part: idSchema,
  offer: idSchema.nullable(),
  number: plainText(60).nullable(),
  packs: z.int().min(1).max(MOST_PACKS),
  /** How much is in a pack. */
  quantity: quantitySchema,
  /** What a pack costs, tax included, and the deposit paid beside it. */
  priceMinor: priceSchema,
  depositMinor: priceSchema,
  for: z.array(takerSchema).max(200),
});
export type OrderedLine = z.infer<typeof orderedLineSchema>;

/** What is bought from one supplier in one go. */
export const orderSchema = z.strictObject({
  id: idSchema,
  supplier: idSchema,
  /** The supplier's own number of it. */
  number: plainText(60).nullable(),
  placedOn: dateSchema,
  expectedOn: dateSchema,
  lines: z.array(orderedLineSchema).min(1).max(200),
  deliveryMinor: priceSchema,
  discountMinor: priceSchema,
  /** The last day on which it may be sent back. */
  returnBy: dateSchema.nullable(),
  /** The day on which what had not come by then was cancelled. */
  cancelledOn: dateSchema.nullable(),
  note: longText(500),
});
export type Order = z.infer<typeof orderSchema>;

export const orders = family('order', 'parts', orderSchema);
export const orderSet = factEntry('order-set', orders, {
  car: () => null,
  refersTo: (order) => [
    ...refers(suppliers, order.supplier),
    ...order.lines.flatMap((line) => [
      ...refers(parts, line.part),
      ...refers(offers, line.offer),
      ...line.for.flatMap((taker) => [...refers(cars, taker.car), ...refers(serviceItems, taker.item), ...refers(specifications, taker.specification), ...refers(parts, taker.part)]),
    ]),
  ],
});

/** What the goods of a line cost. */
export function goodsMinor(line: Pick<OrderedLine, 'packs' | 'priceMinor'>): number {
  return line.packs * line.priceMinor;
}
