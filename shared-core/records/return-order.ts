import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { findOrder } from '../parts/change-order.ts';
import { lots } from '../parts/lot.ts';
import { orderReturned, orderReturns, orderReturnSchema, returnedLineSchema, type OrderReturn, type ReturnedLine } from '../parts/order-return.ts';
import type { StandingLine, StandingOrder } from '../parts/order-standing.ts';
import { shelfTaken, shelfTakingSchema, type ShelfTaking } from '../parts/shelf-taking.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { checkTaking } from './take-from-shelf.ts';

const shape = orderReturnSchema.shape;

/**
 * Sends something of an order back: goods by the last day for it, old parts and empties for their deposit. What of it stood on the shelf is
 * named by its lot and leaves the shelf; what came wrong or damaged never stood there.
 */
export const returnOrder = change({
  request: z.strictObject({
    id: idSchema.optional(),
    order: idSchema,
    on: shape.on.optional(),
    lines: z.array(z.strictObject({ ...returnedLineSchema.shape, what: returnedLineSchema.shape.what.default('goods') })).min(1).max(200),
    lots: z.array(z.strictObject({ lot: idSchema, quantity: shelfTakingSchema.shape.quantity })).max(200).default([]),
    /** Without it: the prices of the goods and the deposits, without delivery. */
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
    const sound = checkReturn(found.value, request.lines, on, moment, request.sure);
    if (!sound.ok) return sound;
    const back: OrderReturn = {
      id: request.id ?? moment.newId(), order: request.order, on, lines: request.lines, refundExpectedMinor: request.refundExpectedMinor ?? expectedMinor(found.value, request.lines), refunds: [], papers: request.papers, note: request.note,
    };
    if (facts.get(orderReturns, back.id) !== null) return refuse('id-taken', { id: back.id }, ['id']);
    const takings = request.lots.map(({ lot, quantity }): ShelfTaking => ({ id: moment.newId(), lot, on, quantity, why: 'returned', car: null, note: request.note.slice(0, 300) }));
    for (const taking of takings) {
      const ours = checkLot(facts, taking, request.order, moment);
      if (!ours.ok) return ours;
    }
    return ok({ entries: [newEntry(orderReturned, back), ...takings.map((taking) => newEntry(shelfTaken, taking))], reply: { return: back, takings } });
  },
});

function checkReturn({ order, lines }: StandingOrder, asked: readonly ReturnedLine[], on: OrderReturn['on'], { today }: Moment, sure: boolean): Result<unknown> {
  if (on > today) return refuse('date-in-future', { date: on }, ['on']);
  if (on < order.placedOn) return refuse('return-before-placed', { date: on, placed: order.placedOn }, ['on']);
  if (asked.some((one) => one.what === 'goods') && order.returnBy !== null && on > order.returnBy && !sure) return refuse('return-too-late', { date: order.returnBy }, ['on']);
  for (const [at, one] of asked.entries()) {
    const standing = lines.find(({ line }) => line.id === one.line);
    if (standing === undefined) return refuse('unknown-order-line', { line: one.line }, ['lines', at, 'line']);
    const same = asked.filter((other) => other.line === one.line && other.what === one.what).reduce((sum, other) => sum + other.packs, 0);
    const most = one.what === 'goods' ? standing.good + standing.aside - standing.goodsReturned : depositsOpen(standing);
    if (same > most) return refuse(one.what === 'goods' ? 'returns-more-than-came' : 'deposit-not-open', { line: one.line, most }, ['lines', at, 'packs']);
  }
  return ok(null);
}

/** Deposits paid for what was kept, and not yet given back. */
export function depositsOpen({ line, good, goodsReturned, depositsReturned }: StandingLine): number {
  return line.depositMinor === 0 ? 0 : Math.max(0, good - goodsReturned - depositsReturned);
}

function expectedMinor({ lines }: StandingOrder, asked: readonly ReturnedLine[]): number {
  return asked.reduce((sum, one) => {
    const { line } = must(lines.find((each) => each.line.id === one.line), 'line');
    return sum + one.packs * (one.what === 'goods' ? line.priceMinor + line.depositMinor : line.depositMinor);
  }, 0);
}

function checkLot(facts: Facts, taking: ShelfTaking, order: string, moment: Moment): Result<unknown> {
  if (facts.get(lots, taking.lot)?.order !== order) return refuse('lot-of-another-order', { lot: taking.lot }, ['lots']);
  return checkTaking(facts, taking, moment);
}

/** Writes down what came back for something returned. */
export const refundReturn = change({
  request: z.strictObject({ return: idSchema, on: shape.on.optional(), minor: shape.refundExpectedMinor }),
  reply: z.object({ return: orderReturnSchema }),
  decide: (facts, request, moment) => {
    const back = facts.get(orderReturns, request.return);
    if (back === null) return refuse('unknown-return', { return: request.return }, ['return']);
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (back.refunds.length === 20) return refuse('refunds-too-many', {}, ['return']);
    const refunded: OrderReturn = { ...back, refunds: [...back.refunds, { on, minor: request.minor }] };
    return ok({ entries: [newEntry(orderReturned, refunded)], reply: { return: refunded } });
  },
});
