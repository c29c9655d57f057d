import type { OfferFacts, OrderFacts } from './order-facts.ts';
import { FROM_SHELF, type OrderPart } from './order-instance.ts';
import { isPlain } from './order-eased.ts';

/**
 * The offers that a cheapest order need not buy: all that is wanted of such a pack can be had from others for no more, in time, in any
 * number, and without a charge that is not paid anyway. Of two that replace each other the first stays.
 *
 * First each offer is held against others of the same parts; then each part whose offers can all be replaced by those of another part that
 * meets as much. A part that is on the shelf, or comes in a kit that stays, may have to go with its own kind, and stays.
 */
export function dominatedOffers(facts: OrderFacts): ReadonlySet<string> {
  const dropped = new Set<string>();
  // A pack that replaces another may hold more than is wanted.
  if (facts.instance.noLeftovers === true) return dropped;
  const market = marketOf(facts);
  for (const offer of facts.offers.toReversed()) {
    if (mayGo(offer) && leastInstead(market, dropped, offer, (part) => part) <= lowestPrice(offer)) dropped.add(offer.offer.id);
  }
  const meeting = new Map<string, OrderPart[]>();
  for (const part of facts.instance.parts) for (const spec of part.meets) meeting.set(spec, [...(meeting.get(spec) ?? []), part]);
  for (const { id, meets } of facts.instance.parts.toReversed()) {
    const own = (market.giving.get(id) ?? []).filter(({ offer }) => !dropped.has(offer.id) && market.wanted.get(offer.id)?.has(id) === true);
    if (own.length === 0 || own.some((offer) => offer.gives.size > 1 || !mayGo(offer)) || facts.lots.some(({ part }) => part === id)) continue;
    const others = (meeting.get(meets[0] ?? '') ?? []).filter((other) => other.id !== id && meets.every((spec) => other.meets.includes(spec)));
    const stands = others.some((other) => own.every((offer) => leastInstead(market, dropped, offer, () => other.id) <= lowestPrice(offer)));
    if (stands) for (const { offer } of own) dropped.add(offer.id);
  }
  return dropped;
}

/** Buying less from its supplier breaks no terms. */
function mayGo({ supplier, most }: OfferFacts): boolean {
  return most > 0 && supplier.minimumMinor === 0 && (supplier.freeFromMinor === null || supplier.deliveryMinor === 0);
}

interface Market {
  /** What each offer gives that some need takes from it. */
  readonly wanted: ReadonlyMap<string, ReadonlySet<string>>;
  /** The offers that give a part. */
  readonly giving: ReadonlyMap<string, readonly OfferFacts[]>;
  /** The first day on which anything is needed: what comes by then is in time for all. */
  readonly first: number;
}

function marketOf({ needs, offers }: OrderFacts): Market {
  const wanted = new Map<string, Set<string>>();
  for (const { part, from } of needs.flatMap(({ sources }) => sources)) if (from !== FROM_SHELF) wanted.set(from, (wanted.get(from) ?? new Set()).add(part));
  const giving = new Map<string, OfferFacts[]>();
  for (const offer of offers) {
    for (const part of offer.gives.keys()) {
      const known = giving.get(part);
      if (known === undefined) giving.set(part, [offer]);
      else known.push(offer);
    }
  }
  return { wanted, giving, first: needs.reduce((found, { by }) => Math.min(found, by), Infinity) };
}

/** The least that what is wanted of a pack costs elsewhere, each part as another or as itself; infinite where it cannot be had. */
function leastInstead(market: Market, dropped: ReadonlySet<string>, offer: OfferFacts, as: (part: string) => string): number {
  let sum = 0;
  for (const [part, units] of offer.gives) {
    if (market.wanted.get(offer.offer.id)?.has(part) !== true) continue;
    const others = (market.giving.get(as(part)) ?? []).filter((other) => !dropped.has(other.offer.id) && mayReplace(market, offer, other));
    sum += others.reduce((least, other) => Math.min(least, Math.ceil(units / (other.gives.get(as(part)) ?? 1)) * (other.prices[0]?.priceMinor ?? Infinity)), Infinity);
  }
  return sum;
}

/** Whether more may be bought of another offer at any time: as soon, in any number, never dearer by the pack for more, and with no charge of its own. */
function mayReplace({ first }: Market, offer: OfferFacts, other: OfferFacts): boolean {
  return (
    other !== offer &&
    other.most === Infinity &&
    other.arrives <= Math.max(offer.arrives, first) &&
    (other.supplier === offer.supplier || isPlain(other.supplier)) &&
    other.prices.every(({ priceMinor }, at) => at === 0 || priceMinor <= (other.prices[at - 1]?.priceMinor ?? 0))
  );
}

function lowestPrice({ prices }: OfferFacts): number {
  return prices.reduce((least, { priceMinor }) => Math.min(least, priceMinor), Infinity);
}

/** The problem without some offers. */
export function withoutOffers(facts: OrderFacts, dropped: ReadonlySet<string>): OrderFacts {
  return {
    ...facts,
    offers: facts.offers.filter(({ offer }) => !dropped.has(offer.id)),
    needs: facts.needs.map((need) => ({ ...need, sources: need.sources.filter(({ from }) => !dropped.has(from)) })),
  };
}
