import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { findOrder } from '../parts/change-order.ts';
import { orderReturned, orderReturns, orderReturnSchema, returnedLineSchema, type OrderReturn, type ReturnedLine } from '../parts/order-return.ts';
import { claimable, depositsOpen, goodsToReturn } from '../parts/order-owed.ts';
import type { StandingLine, StandingOrder } from '../parts/order-standing.ts';
import { parts } from '../parts/part.ts';
import { shelfTaken, shelfTakingSchema } from '../parts/shelf-taking.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { goodsOfReturn, takingOf } from './return-order-lots.ts';
import { checkExpected, expectedBack } from './return-order-sums.ts';

const shape = orderReturnSchema.shape;

/**
 * Sends something of an order back: goods by the last day for it, old parts and empties for their deposit; or claims the money for what never
 * came, or need not go back. What goes back leaves the lots it came into: those named, else the newest of that part; what came wrong or
 * damaged never stood there.
 */
export const returnOrder = change({
  request: z.strictObject({
    id: idSchema.optional(),
    order: idSchema,
    on: shape.on.optional(),
    lines: z.array(z.strictObject({ ...returnedLineSchema.shape, what: returnedLineSchema.shape.what.default('goods') })).min(1).max(200),
    lots: z.array(z.strictObject({ lot: idSchema, quantity: shelfTakingSchema.shape.quantity })).max(200).default([]),
    /** Without it: the prices of the goods, less their share of a discount, and the deposits still open; no delivery. */
    refundExpectedMinor: shape.refundExpectedMinor.optional(),
    papers: shape.papers.default([]),
    note: shape.note.default(''),
    /** The supplier takes it though the last day has passed. */
    sure: z.boolean().default(false),
  }),
  reply: z.object({ return: orderReturnSchema, takings: z.array(shelfTakingSchema) }),
  decide: (facts, request, moment) => {
    const found = findOrder(facts, request.order);
    if (!found.ok) return found;
    const on = request.on ?? moment.today;
    const sound = checkReturn(facts, found.value, request.lines, on, moment, request.sure);
    if (!sound.ok) return sound;
    const goods = goodsOfReturn(facts, found.value, request.lines, request.lots, on, moment);
    if (!goods.ok) return goods;
    const back: OrderReturn = {
      id: request.id ?? moment.newId(), order: request.order, on, lines: request.lines, refundExpectedMinor: request.refundExpectedMinor ?? expectedBack(found.value, request.lines, goods.value.lines), refunds: [], papers: request.papers, note: request.note,
    };
    if (facts.get(orderReturns, back.id) !== null) return refuse('id-taken', { id: back.id }, ['id']);
    const paid = checkExpected(facts, found.value, back);
    if (!paid.ok) return paid;
    const takings = goods.value.lots.map((one) => takingOf(one, on, request.note, moment.newId()));
    return ok({ entries: [newEntry(orderReturned, back), ...takings.map((taking) => newEntry(shelfTaken, taking))], reply: { return: back, takings } });
  },
});

function checkReturn(facts: Facts, { order, lines, deliveries }: StandingOrder, asked: readonly ReturnedLine[], on: OrderReturn['on'], { today }: Moment, sure: boolean): Result<unknown> {
  if (on > today) return refuse('date-in-future', { date: on }, ['on']);
  if (on < order.placedOn) return refuse('return-before-placed', { date: on, placed: order.placedOn }, ['on']);
  if (asked.some((one) => one.what === 'goods') && order.returnBy !== null && on > order.returnBy && !sure) return refuse('return-too-late', { date: order.returnBy }, ['on']);
  for (const [at, one] of asked.entries()) {
    const standing = lines.find(({ line }) => line.id === one.line);
    if (standing === undefined) return refuse('unknown-order-line', { line: one.line }, ['lines', at, 'line']);
    const part = facts.get(parts, standing.line.part)?.name ?? standing.line.part;
    const same = asked.filter((other) => other.line === one.line && other.what === one.what).reduce((sum, other) => sum + other.packs, 0);
    if (same > MOST[one.what](standing)) return refuse(TOO_MANY[one.what], { part, most: MOST[one.what](standing) }, ['lines', at, 'packs']);
    const came = deliveries.find((delivery) => delivery.lines.some((row) => row.line === one.line && row.found !== 'not-coming'));
    if (one.what !== 'claim' && came !== undefined && on < came.on) return refuse('return-before-came', { part, date: on, came: came.on }, ['on']);
  }
  return ok(null);
}

const MOST: Readonly<Record<ReturnedLine['what'], (one: StandingLine) => number>> = { goods: goodsToReturn, deposit: depositsOpen, claim: claimable };
const TOO_MANY: Readonly<Record<ReturnedLine['what'], string>> = { goods: 'returns-more-than-came', deposit: 'deposit-not-open', claim: 'claims-more-than-lacks' };
