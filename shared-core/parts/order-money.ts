import { deliveryCharge } from './delivery-charge.ts';
import type { OfferFacts, OrderFacts } from './order-facts.ts';
import type { OrderLine } from './order-answer.ts';
import type { OrderSupplier } from './order-instance.ts';

/** What one used supplier charges, in minor units. */
export interface SupplierCharge {
  readonly supplier: string;
  readonly goodsMinor: number;
  readonly deliveryMinor: number;
  /** Whether its goods reach the least sum it sends. */
  readonly reachesMinimum: boolean;
}

/** The charges of every supplier used by lines, in the order of the suppliers; whole minor units, from the lines alone. */
export function orderCharges(facts: OrderFacts, lines: readonly OrderLine[]): readonly SupplierCharge[] {
  const packs = new Map(lines.map((line) => [line.offer, line.packs]));
  const goods = new Map<OrderSupplier, number>();
  for (const offer of facts.offers) {
    const bought = packs.get(offer.offer.id) ?? 0;
    if (bought > 0) goods.set(offer.supplier, (goods.get(offer.supplier) ?? 0) + bought * packPriceMinor(offer, bought));
  }
  return facts.instance.suppliers.flatMap((supplier) => {
    const goodsMinor = goods.get(supplier);
    return goodsMinor === undefined ? [] : [chargeOf(supplier, goodsMinor)];
  });
}

function chargeOf(supplier: OrderSupplier, goodsMinor: number): SupplierCharge {
  return { supplier: supplier.id, goodsMinor, deliveryMinor: deliveryCharge(supplier, goodsMinor), reachesMinimum: goodsMinor >= supplier.minimumMinor };
}

/** The price of one pack when so many are bought: that of the highest break reached. @example packPriceMinor(offer, 3) //=> 3199 */
export function packPriceMinor({ offer }: OfferFacts, packs: number): number {
  const reached = offer.breaks.filter((step) => step.packs <= packs).sort((a, b) => b.packs - a.packs)[0];
  return reached?.priceMinor ?? offer.priceMinor;
}

/** Goods and delivery of charges. */
export function paidMinor(charges: readonly SupplierCharge[]): number {
  return charges.reduce((sum, { goodsMinor, deliveryMinor }) => sum + goodsMinor + deliveryMinor, 0);
}
