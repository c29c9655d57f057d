import type { OrderFacts } from './order-facts.ts';
import type { OrderSupplier } from './order-instance.ts';

/**
 * The problem with the terms of most suppliers left out that goods can overcome: a least sum, and a delivery that is free from a sum. No
 * order costs less under the whole terms, so what is cheapest here and keeps them is cheapest of all. Those of `kept` stay as they are.
 */
export function easeTerms(facts: OrderFacts, kept: ReadonlySet<string>): OrderFacts {
  const eased = new Map(facts.instance.suppliers.map((supplier) => [supplier, kept.has(supplier.id) ? supplier : easedSupplier(supplier)]));
  const of = (supplier: OrderSupplier) => eased.get(supplier) ?? supplier;
  return {
    ...facts,
    instance: { ...facts.instance, suppliers: facts.instance.suppliers.map(of) },
    offers: facts.offers.map((offer) => ({ ...offer, supplier: of(offer.supplier) })),
  };
}

/** Whether a supplier charges nothing and demands nothing, whatever is bought. */
export function isPlain({ deliveryMinor, minimumMinor }: OrderSupplier): boolean {
  return deliveryMinor === 0 && minimumMinor === 0;
}

function easedSupplier(supplier: OrderSupplier): OrderSupplier {
  return { ...supplier, minimumMinor: 0, freeFromMinor: null, deliveryMinor: supplier.freeFromMinor === null ? supplier.deliveryMinor : 0 };
}
