import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import type { Message } from '../result/result.ts';
import { money } from '../sessions/plan-why.ts';
import type { ProposedOrder } from './order-lines.ts';
import type { OrderLineView, OrderView } from './order-view-schema.ts';

/** Packs that nobody takes and that only lift an order to its supplier's minimum, or to where delivery is free, each line with its sentence. */
export function spareNotes({ facts }: Pick<ProposedOrder, 'facts'>, { orders, currency }: Pick<OrderView, 'orders' | 'currency'>): readonly Message[] {
  return orders.flatMap((order) => {
    const supplier = facts.get(suppliers, order.supplier);
    const spare = order.lines.map((line) => ({ line, packs: line.packs - packsTaken(facts, line) })).filter(({ packs }) => packs > 0);
    const without = order.goodsMinor - spare.reduce((sum, { line, packs }) => sum + packs * line.priceMinor, 0);
    if (supplier === null) return [];
    const forMinimum = without < supplier.minimumMinor;
    const forFree = supplier.freeFromMinor !== null && without < supplier.freeFromMinor && order.goodsMinor >= supplier.freeFromMinor;
    if (!forMinimum && !forFree) return [];
    const sum = money(forMinimum ? supplier.minimumMinor : (supplier.freeFromMinor ?? 0), currency);
    return spare.map(({ line, packs }): Message => ({ key: forMinimum ? 'order-note-for-minimum' : 'order-note-for-free-delivery', values: { part: line.partName, packs, supplier: order.supplierName, sum } }));
  });
}

/** Whole packs that are at least begun by those whom they are for; of a kit, by whichever of its parts is taken most. */
function packsTaken(facts: Facts, line: OrderLineView): number {
  const contents = facts.get(parts, line.part)?.contains ?? [];
  const each = (contents.length > 0 ? contents : [{ part: line.part, quantity: 1 }]).map(({ part, quantity }) => {
    const taken = line.for.filter((one) => one.part === part).reduce((sum, one) => sum + one.quantity, 0);
    return Math.ceil(taken / (quantity * line.quantity) - 1e-6);
  });
  return Math.max(0, ...each);
}
