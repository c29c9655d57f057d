import { daysBetween, later, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { OrderOffer, OrderSupplier } from './order-instance.ts';
import type { OrderedLine } from './order.ts';
import { standingOrders } from './order-standing.ts';

/** Packs of a placed order that are still to come. */
export interface ComingLine {
  readonly order: string;
  readonly supplier: string;
  readonly line: OrderedLine;
  readonly packs: number;
  readonly expectedOn: LocalDate;
  /** When it is reckoned with: what is overdue may come any day, so today. */
  readonly on: LocalDate;
  readonly overdue: boolean;
}

/** What is on the way, by the day on which it is reckoned with. */
export function comingSupply(facts: Facts, today: LocalDate): readonly ComingLine[] {
  const lines = standingOrders(facts).flatMap(({ order, lines: standing }) => standing.filter((one) => one.open > 0).map(({ line, open }): ComingLine => ({
    order: order.id, supplier: order.supplier, line, packs: open, expectedOn: order.expectedOn, on: later(order.expectedOn, today), overdue: order.expectedOn < today,
  })));
  return lines.sort((a, b) => (a.on === b.on ? (comingId(a) < comingId(b) ? -1 : 1) : a.on < b.on ? -1 : 1));
}

/** The id under which a line on the way stands among the offers of an instance: no offer's own id has a stroke. */
export function comingId(line: ComingLine): string {
  return `coming/${line.order}/${line.line.id}`;
}

/** Whether a source of an allocation is on the way already. */
export function isComing(from: string): boolean {
  return from.startsWith('coming/');
}

/** What is on the way as offers that cost nothing more, from suppliers who deliver on the expected day: so it is used before anything is bought. */
export function comingOffers(coming: readonly ComingLine[], orderOn: LocalDate): { readonly suppliers: readonly OrderSupplier[]; readonly offers: readonly OrderOffer[] } {
  return {
    suppliers: coming.map((one) => ({ id: comingId(one), deliveryMinor: 0, freeFromMinor: null, minimumMinor: 0, leadDays: Math.min(3650, daysBetween(orderOn, one.on)) })),
    offers: coming.map((one) => ({ id: comingId(one), supplier: comingId(one), part: one.line.part, quantity: one.line.quantity, priceMinor: 0, most: one.packs, breaks: [] })),
  };
}
