import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { comingOffers, comingSupply } from './coming-supply.ts';
import { standingOffers, type Offer } from './offer.ts';
import { paidPrices } from './offer-price.ts';
import type { OrderInstance, OrderNeed, OrderOffer } from './order-instance.ts';
import { parts, type Part } from './part.ts';
import { suppliers } from './supplier.ts';

/** What stands on the shelf of a part, and until when it is good. */
export interface StockOnShelf {
  readonly part: string;
  readonly quantity: number;
  readonly expires: LocalDate | null;
}

/** What a proposal is held to beside the needs. */
export interface BuyingTerms {
  /** Buy from this supplier alone; null: from any. */
  readonly onlySupplier: string | null;
  /** By specification, the one part that may meet it. */
  readonly onlyParts: ReadonlyMap<string, string>;
  /** Buy nothing that would be left over. */
  readonly noLeftovers: boolean;
}

/** No terms at all. */
export const ANY_TERMS: BuyingTerms = { onlySupplier: null, onlyParts: new Map(), noLeftovers: false };

/**
 * The bare order problem of a household: what is needed, the offers that could meet it, what the shelf still holds, and what is on the way,
 * which is used before anything is bought.
 */
export function composeInstance(facts: Facts, needs: readonly OrderNeed[], shelf: readonly StockOnShelf[], orderOn: LocalDate, terms: BuyingTerms = ANY_TERMS): OrderInstance {
  const all = facts.all(parts).map((part) => ({ ...part, meets: part.meets.filter((one) => (terms.onlyParts.get(one) ?? part.id) === part.id) }));
  const wanted = usefulParts(all, new Set(needs.map((need) => need.spec)));
  const ids = new Set(wanted.map((part) => part.id));
  const coming = comingOffers(comingSupply(facts, orderOn).filter((one) => ids.has(one.line.part)), orderOn);
  const offers = standingOffers(facts).filter((offer) => ids.has(offer.part) && (terms.onlySupplier ?? offer.supplier) === offer.supplier);
  return {
    suppliers: [...coming.suppliers, ...facts.all(suppliers).map(({ id, deliveryMinor, freeFromMinor, minimumMinor, leadDays }) => ({ id, deliveryMinor, freeFromMinor, minimumMinor, leadDays }))],
    parts: wanted.map(({ id, meets, contains }) => ({ id, meets: [...meets], contains: contains.map((inside) => ({ ...inside })) })),
    offers: [...coming.offers, ...offers.map((offer) => ({ id: offer.id, supplier: offer.supplier, part: offer.part, quantity: offer.quantity, most: offer.most, ...instancePrices(offer) }))],
    needs: [...needs],
    shelf: shelf.filter((stock) => ids.has(stock.part) && stock.quantity > 0).map((stock) => ({ ...stock })),
    orderOn,
    ...(terms.noLeftovers ? { noLeftovers: true } : {}),
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
