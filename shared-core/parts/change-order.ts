import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { orderedLineSchema, orders, orderSchema, orderSet, type Order } from './order.ts';
import { standingOrder, type StandingOrder } from './order-standing.ts';
import { checkOrder } from './place-order.ts';

const shape = orderSchema.shape;

/** The order of an id, as it stands. */
export function findOrder(facts: Facts, id: string): Result<StandingOrder> {
  const order = facts.get(orders, id);
  return order === null ? refuse('unknown-order', { order: id }, ['order']) : ok(standingOrder(facts, order));
}

/** Corrects an order: when it is expected, its number, its last day for sending back; and what it costs, while nothing of it has come. */
export const changeOrder = change({
  request: z.strictObject({
    order: idSchema,
    number: shape.number.optional(),
    expectedOn: shape.expectedOn.optional(),
    returnBy: shape.returnBy.optional(),
    note: shape.note.optional(),
    deliveryMinor: shape.deliveryMinor.optional(),
    discountMinor: shape.discountMinor.optional(),
    lines: z.array(z.strictObject({ id: idSchema, priceMinor: orderedLineSchema.shape.priceMinor })).max(200).optional(),
  }),
  reply: z.object({ order: orderSchema }),
  decide: (facts, { order: id, lines, ...fields }, moment) => {
    const found = findOrder(facts, id);
    if (!found.ok) return found;
    const { order, deliveries } = found.value;
    if (order.cancelledOn !== null) return refuse('order-cancelled', { date: order.cancelledOn }, ['order']);
    const money = lines !== undefined || fields.deliveryMinor !== undefined || fields.discountMinor !== undefined;
    if (money && deliveries.length > 0) return refuse('order-came-already', {}, ['order']);
    const strange = lines?.find((one) => !order.lines.some((line) => line.id === one.id));
    if (strange !== undefined) return refuse('unknown-order-line', { line: strange.id }, ['lines']);
    const changed: Order = orderSchema.parse({ ...order, ...fields, lines: order.lines.map((line) => ({ ...line, priceMinor: lines?.find((one) => one.id === line.id)?.priceMinor ?? line.priceMinor })) });
    const sound = checkOrder(changed, moment);
    return sound.ok ? ok({ entries: [newEntry(orderSet, changed)], reply: { order: changed } }) : sound;
  },
});

/** Cancels what has not come yet of an order. */
export const cancelOrder = change({
  request: z.strictObject({ order: idSchema, on: shape.placedOn.optional(), note: shape.note.optional() }),
  reply: z.object({ order: orderSchema }),
  decide: (facts, request, moment) => {
    const found = findOrder(facts, request.order);
    if (!found.ok) return found;
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < found.value.order.placedOn) return refuse('cancelled-before-placed', { date: on, placed: found.value.order.placedOn }, ['on']);
    const last = found.value.deliveries.at(-1);
    if (last !== undefined && on < last.on) return refuse('cancelled-before-came', { date: on, came: last.on }, ['on']);
    if (found.value.lines.every((line) => line.open === 0)) return refuse('order-nothing-open', {}, ['order']);
    const order: Order = { ...found.value.order, cancelledOn: on, note: request.note ?? found.value.order.note };
    return ok({ entries: [newEntry(orderSet, order)], reply: { order } });
  },
});
