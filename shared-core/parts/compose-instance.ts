import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { lots, type Lot } from './lot.ts';
import { standingOffers, type Offer } from './offer.ts';
import { paidPrices } from './offer-price.ts';
import type { OrderInstance, OrderNeed, OrderOffer } from './order-instance.ts';
import { parts, type Part } from './part.ts';
import { suppliers } from './supplier.ts';

/** Thousandths are the finest a quantity is kept to. */
const THOUSAND = 1000;

/**
 * The bare order problem of a household: what is needed, the offers that could meet it, and what the shelf still holds.
 * `used` is what records have taken of each lot.
 */
export function composeInstance(facts: Facts, needs: readonly OrderNeed[], used: ReadonlyMap<string, number>, orderOn: LocalDate): OrderInstance {
  const wanted = usefulParts(facts.all(parts), new Set(needs.map((need) => need.spec)));
  const ids = new Set(wanted.map((part) => part.id));
  return {
    suppliers: facts.all(suppliers).map(({ id, deliveryMinor, freeFromMinor, minimumMinor, leadDays }) => ({ id, deliveryMinor, freeFromMinor, minimumMinor, leadDays })),
    parts: wanted.map(({ id, meets, contains }) => ({ id, meets: [...meets], contains: contains.map((inside) => ({ ...inside })) })),
    offers: standingOffers(facts).filter((offer) => ids.has(offer.part)).map((offer) => ({ id: offer.id, supplier: offer.supplier, part: offer.part, quantity: offer.quantity, most: offer.most, ...instancePrices(offer) })),
    needs: [...needs],
    shelf: facts.all(lots).filter((lot) => ids.has(lot.part)).flatMap((lot) => stockOf(lot, used)),
    orderOn,
  };
}

/** Prices as they are paid. */
function instancePrices(offer: Offer): Pick<OrderOffer, 'priceMinor' | 'breaks'> {
  const { priceMinor, breaks } = paidPrices(offer);
  return { priceMinor, breaks: breaks.map((step) => ({ ...step })) };
}

/** Parts that meet what is needed, the kits that hold such a part, and whatever else is in those kits. */
function usefulParts(all: readonly Part[], specifications: ReadonlySet<string>): readonly Part[] {
  const meeting = new Set(all.filter((part) => part.meets.some((one) => specifications.has(one))).map((part) => part.id));
  const kits = all.filter((part) => part.contains.some((inside) => meeting.has(inside.part)));
  const inside = new Set(kits.flatMap((kit) => kit.contains.map((one) => one.part)));
  return all.filter((part) => meeting.has(part.id) || inside.has(part.id) || kits.includes(part));
}

/** What is left of a lot. */
export function leftOf(lot: Lot, used: ReadonlyMap<string, number>): number {
  return Math.round((lot.quantity - (used.get(lot.id) ?? 0)) * THOUSAND) / THOUSAND;
}

function stockOf(lot: Lot, used: ReadonlyMap<string, number>): OrderInstance['shelf'] {
  const quantity = leftOf(lot, used);
  return quantity > 0 ? [{ part: lot.part, quantity, expires: lot.expires }] : [];
}
