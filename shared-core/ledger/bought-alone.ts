import type { Facts } from '../journal/facts.ts';
import { deliveryCharge } from '../parts/delivery-charge.ts';
import { standingOffers, type Offer } from '../parts/offer.ts';
import { packPaidMinor } from '../parts/offer-price.ts';
import { parts } from '../parts/part.ts';
import { suppliers, type Supplier } from '../parts/supplier.ts';

/** A quantity of what must meet a specification. */
export interface Wanted {
  readonly specification: string;
  readonly quantity: number;
}

/** So many suppliers are tried in every combination; of more, each alone and all together. */
const MOST_COMBINED = 10;

/**
 * What it costs to buy some things by themselves, whole packs with their delivery, in minor units: the cheapest of every combination of
 * suppliers, each thing by the one offer of them that is cheapest for it. Kits, and packs of which two things share the contents, are left
 * to an order. Null where one of the things is offered by nobody, or only below the sum that a supplier asks for.
 *
 * @example boughtAlone(facts, [{ specification: 'oil', quantity: 4 }]) //=> 3995 for one can of 34.95 and 5.00 of delivery
 */
export function boughtAlone(facts: Facts, wanted: readonly Wanted[]): number | null {
  if (wanted.length === 0) return 0;
  const choices = wanted.map((one) => offersOf(facts, one));
  const selling = facts.all(suppliers).filter((supplier) => choices.some((offers) => offers.some((offer) => offer.supplier === supplier.id)));
  const sums = combinations(selling).flatMap((some) => landedFrom(some, choices) ?? []);
  return sums.length === 0 ? null : Math.min(...sums);
}

/** What offers of a thing cost in goods, whole packs. */
interface PackedOffer {
  readonly supplier: string;
  readonly goodsMinor: number;
}

function offersOf(facts: Facts, { specification, quantity }: Wanted): readonly PackedOffer[] {
  return standingOffers(facts).flatMap((offer): PackedOffer[] => {
    const packs = packsFor(offer, quantity);
    if (facts.get(parts, offer.part)?.meets.includes(specification) !== true || packs > (offer.most ?? Infinity)) return [];
    return [{ supplier: offer.supplier, goodsMinor: packs * packPaidMinor(offer, packs) }];
  });
}

function packsFor(offer: Offer, quantity: number): number {
  return Math.ceil(Math.round(quantity * 1000) / Math.round(offer.quantity * 1000));
}

function combinations(selling: readonly Supplier[]): readonly (readonly Supplier[])[] {
  if (selling.length > MOST_COMBINED) return [...selling.map((one) => [one]), selling];
  return Array.from({ length: 2 ** selling.length - 1 }, (_, at) => selling.filter((_one, bit) => ((at + 1) & (1 << bit)) !== 0));
}

function landedFrom(some: readonly Supplier[], choices: readonly (readonly PackedOffer[])[]): number | null {
  const goods = new Map<string, number>();
  for (const offers of choices) {
    const best = offers.filter((offer) => some.some((one) => one.id === offer.supplier)).reduce<PackedOffer | null>((least, one) => (least === null || one.goodsMinor < least.goodsMinor ? one : least), null);
    if (best === null) return null;
    goods.set(best.supplier, (goods.get(best.supplier) ?? 0) + best.goodsMinor);
  }
  const used = some.flatMap((one) => (goods.has(one.id) ? [{ supplier: one, sum: goods.get(one.id) ?? 0 }] : []));
  if (used.some(({ supplier, sum }) => sum < supplier.minimumMinor)) return null;
  return used.reduce((total, { supplier, sum }) => total + sum + deliveryCharge(supplier, sum), 0);
}
