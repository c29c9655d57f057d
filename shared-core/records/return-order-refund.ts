import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { findOrder } from '../parts/change-order.ts';
import { orderReturned, orderReturns, orderReturnSchema, type OrderReturn } from '../parts/order-return.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { checkRefunded } from './return-order-sums.ts';

const refund = orderReturnSchema.shape.refunds.element.shape;

/** Writes down what came back for something returned or claimed. */
export const refundReturn = change({
  request: z.strictObject({ return: idSchema, on: refund.on.optional(), minor: refund.minor }),
  reply: z.object({ return: orderReturnSchema }),
  decide: (facts, request, moment) => {
    const back = facts.get(orderReturns, request.return);
    if (back === null) return refuse('unknown-return', { return: request.return }, ['return']);
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    if (on < back.on) return refuse('refund-before-return', { date: on, returned: back.on }, ['on']);
    if (back.refunds.length === 20) return refuse('refunds-too-many', {}, ['return']);
    const order = findOrder(facts, back.order);
    if (!order.ok) return order;
    const refunded: OrderReturn = { ...back, refunds: [...back.refunds, { on, minor: request.minor }] };
    const paid = checkRefunded(facts, order.value, refunded);
    return paid.ok ? ok({ entries: [newEntry(orderReturned, refunded)], reply: { return: refunded } }) : paid;
  },
});
