import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { deliveries, type Delivery } from './delivery.ts';
import { orders, type Order, type OrderedLine } from './order.ts';
import { orderReturns, type OrderReturn } from './order-return.ts';

/** Where a line of an order stands, in packs. */
export interface StandingLine {
  readonly line: OrderedLine;
  readonly good: number;
  /** Came wrong or damaged. */
  readonly aside: number;
  readonly notComing: number;
  /** Is still to come. */
  readonly open: number;
  readonly goodsReturned: number;
  readonly depositsReturned: number;
}

/** An order with all that came of it. */
export interface StandingOrder {
  readonly order: Order;
  readonly lines: readonly StandingLine[];
  readonly deliveries: readonly Delivery[];
  readonly returns: readonly OrderReturn[];
  readonly state: 'on-the-way' | 'part-delivered' | 'delivered' | 'cancelled';
}

/** An order as it stands, by what was delivered, sent back and cancelled since. */
export function standingOrder(facts: Facts, order: Order): StandingOrder {
  const came = facts.all(deliveries).filter((one) => one.order === order.id).sort(byDay);
  const back = facts.all(orderReturns).filter((one) => one.order === order.id).sort(byDay);
  const lines = order.lines.map((line) => standingLine(order, line, came, back));
  return { order, lines, deliveries: came, returns: back, state: stateOf(order, lines, came) };
}

/** All orders, the latest placed first. */
export function standingOrders(facts: Facts): readonly StandingOrder[] {
  return facts.all(orders).map((order) => standingOrder(facts, order)).sort((a, b) => byDay({ on: b.order.placedOn, id: b.order.id }, { on: a.order.placedOn, id: a.order.id }));
}

function standingLine(order: Order, line: OrderedLine, came: readonly Delivery[], back: readonly OrderReturn[]): StandingLine {
  const rows = came.flatMap((one) => one.lines).filter((one) => one.line === line.id);
  const packs = (list: readonly { readonly packs: number }[]) => list.reduce((sum, one) => sum + one.packs, 0);
  const returned = back.flatMap((one) => one.lines).filter((one) => one.line === line.id);
  const settled = packs(rows.filter((one) => !one.again));
  return {
    line,
    good: packs(rows.filter((one) => one.found === 'good')),
    aside: packs(rows.filter((one) => one.found === 'wrong' || one.found === 'damaged')),
    notComing: packs(rows.filter((one) => one.found === 'not-coming')),
    open: order.cancelledOn === null ? Math.max(0, line.packs - settled) : 0,
    goodsReturned: packs(returned.filter((one) => one.what === 'goods')),
    depositsReturned: packs(returned.filter((one) => one.what === 'deposit')),
  };
}

function stateOf(order: Order, lines: readonly StandingLine[], came: readonly Delivery[]): StandingOrder['state'] {
  if (order.cancelledOn !== null) return 'cancelled';
  if (lines.every((line) => line.open === 0)) return 'delivered';
  return came.length === 0 ? 'on-the-way' : 'part-delivered';
}

function byDay(a: { readonly on: LocalDate; readonly id: string }, b: { readonly on: LocalDate; readonly id: string }): number {
  return a.on === b.on ? (a.id < b.id ? -1 : a.id > b.id ? 1 : 0) : a.on < b.on ? -1 : 1;
}
