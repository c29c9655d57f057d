import type { LocalDate } from '../calendar/local-date.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { standingOffers } from '../parts/offer.ts';
import { paidPrices } from '../parts/offer-price.ts';
import { parts } from '../parts/part.ts';
import { standingLots } from '../records/shelf-left.ts';
import type { WorkRecord } from '../records/work-record.ts';

/** A price in minor units; `missing`: something in it is not known and counts as nothing. */
export interface KnownPrice {
  readonly minor: number;
  readonly missing: boolean;
}

/** What things cost per unit, by specification. */
export interface PriceBook {
  readonly unitMinor: ReadonlyMap<string, number>;
}

const WORK_COSTS: ReadonlySet<string> = new Set(['parts', 'labour', 'consumables', 'fee', 'shelf']);

/**
 * Prices per unit of what meets each specification: where a lot of it is still on the shelf, what was paid for that lot with its
 * delivery; else the cheapest offer by the unit. Delivery of what is yet to be bought is not in it: orders share that.
 */
export function priceBook(facts: Facts, today: LocalDate): PriceBook {
  const meets = new Map(facts.all(parts).map((part) => [part.id, part.meets]));
  const [offered, landed] = [new Map<string, number>(), new Map<string, number>()];
  for (const offer of standingOffers(facts)) for (const one of meets.get(offer.part) ?? []) offered.set(one, Math.min(offered.get(one) ?? Infinity, paidPrices(offer).priceMinor / offer.quantity));
  for (const { lot, left, goodUntil } of standingLots(facts)) {
    const { paidMinor, quantity, part } = lot;
    if (left <= 0 || (goodUntil !== null && goodUntil < today) || paidMinor === null) continue;
    for (const one of meets.get(part) ?? []) landed.set(one, Math.min(landed.get(one) ?? Infinity, paidMinor / quantity));
  }
  return { unitMinor: new Map([...offered, ...landed]) };
}

/** What the parts of an item cost at home: by the book; where the book does not know them all, by what was last paid for it alone. */
export function homePrice(book: PriceBook, item: ServiceItem, records: readonly WorkRecord[]): KnownPrice {
  const known = item.needs.flatMap(({ specification, quantity }) => {
    const unit = book.unitMinor.get(specification);
    return unit === undefined ? [] : [unit * quantity];
  });
  const byBook = Math.round(known.reduce((sum, minor) => sum + minor, 0));
  if (known.length === item.needs.length) return { minor: byBook, missing: false };
  const paid = lastPaid(item.id, records, 'home');
  return paid === null ? { minor: byBook, missing: true } : { minor: paid, missing: false };
}

/** What a garage asks for an item: as entered, else as last paid for it alone; null where nobody knows. */
export function garagePrice(item: ServiceItem, records: readonly WorkRecord[]): number | null {
  return item.garagePrice ?? lastPaid(item.id, records, 'garage');
}

/** The cost of the latest record of such a place whose only line is the item: only then is it the item's own. */
export function lastPaid(item: string, records: readonly WorkRecord[], place: 'home' | 'garage'): number | null {
  const alone = records.filter((record) => record.place === place && record.lines.length === 1 && record.lines[0]?.item === item && record.costs.length > 0);
  const last = alone.reduce<WorkRecord | null>((best, one) => (best === null || one.date > best.date ? one : best), null);
  if (last === null) return null;
  return Math.max(0, last.costs.filter((cost) => WORK_COSTS.has(cost.kind) || cost.kind === 'discount').reduce((sum, cost) => sum + cost.amountMinor, 0));
}
