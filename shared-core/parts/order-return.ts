import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';
import { MOST_PACKS, orders } from './order.ts';

/**
 * Packs sent back: the goods themselves, or the old parts and empties that their deposit was paid for. A `claim` asks for the money alone: for
 * packs that never came, or that came wrong or damaged and need not go back.
 */
export const returnedLineSchema = z.strictObject({ line: idSchema, packs: z.int().min(1).max(MOST_PACKS), what: z.enum(['goods', 'deposit', 'claim']) });
export type ReturnedLine = z.infer<typeof returnedLineSchema>;

/** What was sent back or claimed of an order, what is expected for it, and what has come back. */
export const orderReturnSchema = z.strictObject({
  id: idSchema,
  order: idSchema,
  on: dateSchema,
  lines: z.array(returnedLineSchema).min(1).max(200),
  refundExpectedMinor: priceSchema,
  refunds: z.array(z.strictObject({ on: dateSchema, minor: priceSchema })).max(20),
  papers: z.array(sha256Schema).max(20),
  note: longText(500),
});
export type OrderReturn = z.infer<typeof orderReturnSchema>;

export const orderReturns = family('order-return', 'parts', orderReturnSchema);
export const orderReturned = factEntry('order-returned', orderReturns, {
  version: 2,
  // Version 1 was before claims; all that it could say is said the same way still.
  upgrade: (values) => values,
  car: () => null,
  refersTo: (one) => [...refers(orders, one.order), ...one.papers.map((id) => ({ family: 'paper', id }))],
});

/** What has come back of a refund. */
export function refundedMinor(one: Pick<OrderReturn, 'refunds'>): number {
  return one.refunds.reduce((sum, { minor }) => sum + minor, 0);
}
