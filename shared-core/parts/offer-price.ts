import type { Offer } from './offer.ts';

/**
 * A price as it is paid, in minor units: with the tax that comes on top, rounded to the nearest minor unit for each pack, halves up (ours,
 * no source; a receipt's own sum is kept as printed).
 *
 * @example withTax(1045, 2000) //=> 1254
 */
export function withTax(priceMinor: number, taxAdded: number | null): number {
  if (taxAdded === null) return priceMinor;
  return Number((BigInt(priceMinor) * BigInt(10_000 + taxAdded) + 5_000n) / 10_000n);
}

/** The offer's prices as they are paid: of one pack, and of each from every break on. */
export function paidPrices({ priceMinor, breaks, taxAdded }: Pick<Offer, 'priceMinor' | 'breaks' | 'taxAdded'>): Pick<Offer, 'priceMinor' | 'breaks'> {
  return { priceMinor: withTax(priceMinor, taxAdded), breaks: breaks.map((step) => ({ packs: step.packs, priceMinor: withTax(step.priceMinor, taxAdded) })) };
}

/** What one pack is paid with when so many are bought: the price of the highest break reached, with tax. @example packPaidMinor(offer, 3) //=> 3199 */
export function packPaidMinor(offer: Pick<Offer, 'priceMinor' | 'breaks' | 'taxAdded'>, packs: number): number {
  const paid = paidPrices(offer);
  return [...paid.breaks].sort((a, b) => b.packs - a.packs).find((step) => packs >= step.packs)?.priceMinor ?? paid.priceMinor;
}
