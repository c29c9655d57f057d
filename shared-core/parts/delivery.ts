import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { refers } from '../journal/entry-kind.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { MOST_PACKS, orders } from './order.ts';

/** How packs of a line were found: good ones go to the shelf; `not-coming` are said not to come any more. */
export const foundSchema = z.enum(['good', 'wrong', 'damaged', 'not-coming']);

export const deliveredLineSchema = z.strictObject({
  line: idSchema,
  packs: z.int().min(1).max(MOST_PACKS),
  found: foundSchema,
  /** Others are to come in the place of wrong or damaged ones. */
  again: z.boolean(),
  note: longText(300),
});
export type DeliveredLine = z.infer<typeof deliveredLineSchema>;

/** What came of an order on a day, with its papers. */
export const deliverySchema = z.strictObject({
  id: idSchema,
  order: idSchema,
  on: dateSchema,
  lines: z.array(deliveredLineSchema).min(1).max(400),
  papers: z.array(sha256Schema).max(20),
  note: longText(500),
});
export type Delivery = z.infer<typeof deliverySchema>;

export const deliveries = family('delivery', 'parts', deliverySchema);
export const deliveryRecorded = factEntry('delivery-recorded', deliveries, {
  car: () => null,
  // Papers belong to a later stage, so they are named by their family.
  refersTo: (delivery) => [...refers(orders, delivery.order), ...delivery.papers.map((id) => ({ family: 'paper', id }))],
});
