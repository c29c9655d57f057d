import { landedCost } from './landed-cost.ts';
import { largestRemainder } from './largest-remainder.ts';
import { goodsMinor, type Order, type OrderedLine } from './order.ts';

/** What each line of an order really costs, delivery and discount shared; the lines sum to what is paid without deposits. */
export function landedLines(order: Pick<Order, 'lines' | 'deliveryMinor' | 'discountMinor'>): ReadonlyMap<string, number> {
  const landed = landedCost(order.lines.map((line) => ({ goodsMinor: goodsMinor(line), line })), order);
  return new Map(landed.map(({ line, landedMinor }) => [line.line.id, landedMinor]));
}

/** What each pack of a line really costs, the first pack first; they sum to the line's. */
export function landedPacks(order: Pick<Order, 'lines' | 'deliveryMinor' | 'discountMinor'>, line: OrderedLine): readonly number[] {
  return largestRemainder(landedLines(order).get(line.id) ?? 0, Array.from({ length: line.packs }, () => 1));
}

/** What is paid for an order: goods, delivery and discount; and the deposits beside it, which come back. */
export function orderPaid(order: Pick<Order, 'lines' | 'deliveryMinor' | 'discountMinor'>): { readonly goodsMinor: number; readonly paidMinor: number; readonly depositsMinor: number } {
  const goods = order.lines.reduce((sum, line) => sum + goodsMinor(line), 0);
  const deposits = order.lines.reduce((sum, line) => sum + line.packs * line.depositMinor, 0);
  return { goodsMinor: goods, paidMinor: goods + order.deliveryMinor - order.discountMinor, depositsMinor: deposits };
}
