import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { deliveries, type Delivery } from './delivery.ts';
import { orders, type Order, type OrderedLine } from './order.ts';
import { lots } from './lot.ts';
import { orderReturns, type OrderReturn } from './order-return.ts';
import { parts } from './part.ts';
import { shelfTakings } from './shelf-taking.ts';

/** Where a line of an order stands, in packs. */
export interface StandingLine {
  readonly line: OrderedLine;
  readonly good: number;
  /** Came wrong or damaged. */
  readonly aside: number;
  /** Of those, the ones that others come for: they were paid for once. */
  readonly again: number;
  readonly notComing: number;
  /** Was still to come when the order was cancelled. */
  readonly cancelled: number;
  /** Is still to come. */
  readonly open: number;
  readonly goodsReturned: number;
  /** Of those, the ones that had come wrong or damaged; they go back before the good ones, unless the shelf says that good ones went. */
  readonly asideReturned: number;
  readonly depositsReturned: number;
  /** The money was asked for without sending anything back. */
  readonly claimed: number;
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
  const lines = order.lines.map((line) => standingLine(order, line, came, back, back.length === 0 ? 0 : packsOffShelf(facts, order, line)));
  return { order, lines, deliveries: came, returns: back, state: stateOf(order, lines, came) };
}

/** All orders, the latest placed first. */
export function standingOrders(facts: Facts): readonly StandingOrder[] {
  return facts.all(orders).map((order) => standingOrder(facts, order)).sort((a, b) => byDay({ on: b.order.placedOn, id: b.order.id }, { on: a.order.placedOn, id: a.order.id }));
}

/** Packs of a line's part that went back from the shelf, begun ones as well; of a kit, by whichever of its parts went most. */
function packsOffShelf(facts: Facts, order: Order, line: OrderedLine): number {
  const ours = new Map(facts.all(lots).filter((lot) => lot.order === order.id).map((lot) => [lot.id, lot.part]));
  const contents = facts.get(parts, line.part)?.contains ?? [];
  const gone = facts.all(shelfTakings).filter((one) => one.why === 'returned');
  const packs = (contents.length > 0 ? contents : [{ part: line.part, quantity: 1 }]).map(({ part, quantity }) => {
    const sum = gone.filter((one) => ours.get(one.lot) === part).reduce((total, one) => total + one.quantity, 0);
    return Math.ceil(sum / (quantity * line.quantity) - 1e-6);
  });
  return Math.max(...packs);
}

function standingLine(order: Order, line: OrderedLine, came: readonly Delivery[], back: readonly OrderReturn[], offShelf: number): StandingLine {
  const rows = came.flatMap((one) => one.lines).filter((one) => one.line === line.id);
  const packs = (list: readonly { readonly packs: number }[]) => list.reduce((sum, one) => sum + one.packs, 0);
  const returned = back.flatMap((one) => one.lines).filter((one) => one.line === line.id);
  const rest = Math.max(0, line.packs - packs(rows.filter((one) => !one.again)));
  const sent = (what: OrderReturn['lines'][number]['what']) => packs(returned.filter((one) => one.what === what));
  const aside = packs(rows.filter((one) => one.found === 'wrong' || one.found === 'damaged'));
  return {
    line,
    good: packs(rows.filter((one) => one.found === 'good')),
    aside,
    again: packs(rows.filter((one) => one.again)),
    notComing: packs(rows.filter((one) => one.found === 'not-coming')),
    cancelled: order.cancelledOn === null ? 0 : rest,
    open: order.cancelledOn === null ? rest : 0,
    goodsReturned: sent('goods'),
    asideReturned: Math.max(0, Math.min(aside, sent('goods') - offShelf)),
    depositsReturned: sent('deposit'),
    claimed: sent('claim'),
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
