import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { itemNeedSchema, serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { lots } from '../parts/lot.ts';
import { specifications } from '../parts/specification.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

const notRank = refusedBy('not-a-rank');

/** Something of a wish that has no specification of its own: a radio, a set of springs. */
export const wishPartSchema = z.strictObject({ text: plainText(120), priceMinor: priceSchema.nullable() });

/** An improvement that one is saving for. What it takes beside: a place to do it, minutes, what must be opened, and what a garage asks. */
export const wishSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  name: plainText(80),
  /** The lower, the sooner it is wanted. */
  rank: z.int(notRank).min(1, notRank).max(999, notRank),
  addedOn: dateSchema,
  /** What of it has a specification, and is bought with everything else. */
  needs: z.array(itemNeedSchema).max(20),
  others: z.array(wishPartSchema).max(20),
  place: z.enum(['home', 'garage']),
  minutes: z.int().min(1).max(6000).nullable(),
  access: z.array(plainText(40)).max(10),
  /** What a garage asks for the work. */
  garagePrice: priceSchema.nullable(),
  /** The service item by which it is planned and recorded; null while it is only a wish. */
  item: idSchema.nullable(),
  /** Lots on the shelf that are put aside for it. */
  lots: z.array(idSchema).max(40),
  /** It is wanted no more. */
  letGoOn: dateSchema.nullable(),
  note: longText(500),
});
export type Wish = z.infer<typeof wishSchema>;

export const wishes = family('wish', 'ledger', wishSchema);
export const wishSet = factEntry('wish-set', wishes, {
  // A wish is the household's own: what one would like is no part of a car's history.
  car: () => null,
  refersTo: (wish) => [...refers(cars, wish.car), ...refers(serviceItems, wish.item), ...refers(specifications, ...wish.needs.map((need) => need.specification)), ...refers(lots, ...wish.lots)],
});
export const wishRemoved = factRemoval('wish-removed', wishes);
