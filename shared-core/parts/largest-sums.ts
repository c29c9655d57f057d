import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LARGEST_MINOR } from '../units/money.ts';
import type { Offer } from './offer.ts';
import { paidPrices } from './offer-price.ts';
import { LARGEST_QUANTITY } from './order-quantity.ts';
import type { Order } from './order.ts';
import { parts } from './part.ts';

/** Refuses an offer of which as few packs as have a price of their own cost more, or hold more, than is reckoned with. */
export function checkOfferSums(facts: Facts, offer: Offer): Result<unknown> {
  const { priceMinor, breaks } = paidPrices(offer);
  const dear = [{ packs: 1, priceMinor }, ...breaks].find((step) => step.packs * (step.priceMinor + offer.depositMinor) > LARGEST_MINOR);
  if (dear !== undefined) return refuse('offer-sum-too-large', { packs: dear.packs }, dear.packs === 1 ? ['priceMinor'] : ['breaks']);
  return mostInside(facts, offer.part) * offer.quantity > LARGEST_QUANTITY ? refuse('pack-holds-too-much', {}, ['quantity']) : ok(null);
}

/** Refuses an order that costs more, in a line or in all, than is reckoned with. */
export function checkOrderSums({ lines, deliveryMinor }: Order): Result<unknown> {
  const sums = lines.map((line) => line.packs * (line.priceMinor + line.depositMinor));
  const dear = sums.findIndex((sum) => sum > LARGEST_MINOR);
  if (dear >= 0) return refuse('order-sum-too-large', {}, ['lines', dear, 'priceMinor']);
  return sums.reduce((total, sum) => total + sum, deliveryMinor) > LARGEST_MINOR ? refuse('order-sum-too-large', {}, ['lines']) : ok(null);
}

/** Refuses a line that brings more of a part than a lot may hold. */
export function checkLineAmounts(facts: Facts, { lines }: Order): Result<unknown> {
  const much = lines.findIndex((line) => line.packs * line.quantity * mostInside(facts, line.part) > LARGEST_QUANTITY);
  return much >= 0 ? refuse('line-brings-too-much', {}, ['lines', much, 'packs']) : ok(null);
}

/** Of what a kit holds most, how much; 1 for a single part. */
function mostInside(facts: Facts, part: string): number {
  return Math.max(1, ...(facts.get(parts, part)?.contains ?? []).map((inside) => inside.quantity));
}
