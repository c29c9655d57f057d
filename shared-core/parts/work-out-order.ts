import { dayNumber } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { LotFacts, NeedFacts, NeedSource, OfferFacts, OrderFacts, PriceRange } from './order-facts.ts';
import { FROM_SHELF, type OrderInstance, type OrderOffer, type OrderPart } from './order-instance.ts';
import { decimalsOf, MOST_DECIMALS, toUnits } from './order-quantity.ts';
import { liftSteps } from './order-steps.ts';

/** Whole numbers up to here add, multiply and divide exactly with room to spare. */
const LARGEST_EXACT = 2 ** 50;

/**
 * Works an instance out. Refuses `figures-too-large` where its quantities or sums cannot be reckoned exactly.
 *
 * @example workOutOrder(instance).value.needs[0].units //=> 43 for 4.3 litres, where no quantity has more than one decimal
 */
export function workOutOrder(instance: OrderInstance): Result<OrderFacts> {
  const decimals = decimalsNeeded(instance);
  const parts = new Map(instance.parts.map((part) => [part.id, part]));
  const offers = offerFacts(instance, parts, decimals);
  const lots = lotFacts(instance, parts, decimals);
  const needs = liftSteps(needFacts(instance, offers, lots, decimals), offers, lots);
  const facts: OrderFacts = { instance, decimals, offers, lots, needs };
  return largestFigure(facts) <= LARGEST_EXACT ? ok(facts) : refuse('figures-too-large');
}

/** Contents multiply two quantities, so their decimals add up. */
function decimalsNeeded({ parts, offers, needs, shelf }: OrderInstance): number {
  const most = (values: readonly number[]) => values.reduce((found, value) => Math.max(found, must(decimalsOf(value, MOST_DECIMALS), 'decimals')), 0);
  const plain = most([...offers, ...needs, ...shelf].map(({ quantity }) => quantity).concat(needs.flatMap(({ step }) => step ?? [])));
  return plain + most(parts.flatMap(({ contains }) => contains.map(({ quantity }) => quantity)));
}

/** Single parts in so much of a part: itself, or the contents of a kit. */
function singles(part: OrderPart, quantity: number, decimals: number): ReadonlyMap<string, number> {
  if (part.contains.length === 0) return new Map([[part.id, toUnits(quantity, decimals)]]);
  const contents = new Map<string, number>();
  for (const inner of part.contains) {
    const innerDecimals = must(decimalsOf(inner.quantity, MOST_DECIMALS), 'decimals');
    const units = toUnits(inner.quantity, innerDecimals) * toUnits(quantity, decimals - innerDecimals);
    contents.set(inner.part, (contents.get(inner.part) ?? 0) + units);
  }
  return contents;
}

function offerFacts(instance: OrderInstance, parts: ReadonlyMap<string, OrderPart>, decimals: number): readonly OfferFacts[] {
  const suppliers = new Map(instance.suppliers.map((supplier) => [supplier.id, supplier]));
  const today = dayNumber(instance.orderOn);
  return instance.offers.map((offer) => {
    const supplier = must(suppliers.get(offer.supplier), 'supplier');
    const gives = singles(must(parts.get(offer.part), 'part'), offer.quantity, decimals);
    return { offer, supplier, gives, arrives: today + supplier.leadDays, most: offer.most ?? Infinity, prices: priceRanges(offer) };
  });
}

/** The ranges of packs that can be bought at all, each with its price. @example priceRanges(offer) //=> [{ first: 1, last: 2, priceMinor: 350 }, { first: 3, last: Infinity, priceMinor: 320 }] */
function priceRanges({ priceMinor, breaks, most }: OrderOffer): readonly PriceRange[] {
  const starts = [{ packs: 1, priceMinor }, ...[...breaks].sort((a, b) => a.packs - b.packs)];
  return starts
    .map((start, i) => ({ first: start.packs, last: Math.min((starts[i + 1]?.packs ?? Infinity) - 1, most ?? Infinity), priceMinor: start.priceMinor }))
    .filter(({ first, last }) => first <= last);
}

function lotFacts(instance: OrderInstance, parts: ReadonlyMap<string, OrderPart>, decimals: number): readonly LotFacts[] {
  const lots = instance.shelf.flatMap(({ part, quantity, expires }) =>
    [...singles(must(parts.get(part), 'part'), quantity, decimals)].map(([single, units]) => ({
      part: single,
      units,
      expires: expires === null ? Infinity : dayNumber(expires),
    })),
  );
  return lots.filter(({ units }) => units > 0).sort((a, b) => (a.expires < b.expires ? -1 : a.expires > b.expires ? 1 : 0));
}

function needFacts(instance: OrderInstance, offers: readonly OfferFacts[], lots: readonly LotFacts[], decimals: number): readonly NeedFacts[] {
  const meeting = new Map<string, Set<string>>();
  for (const part of instance.parts) {
    if (part.contains.length > 0) continue;
    for (const spec of part.meets) meeting.set(spec, (meeting.get(spec) ?? new Set()).add(part.id));
  }
  const giving = new Map<string, OfferFacts[]>();
  for (const offer of offers) {
    for (const part of offer.gives.keys()) {
      const known = giving.get(part);
      if (known === undefined) giving.set(part, [offer]);
      else known.push(offer);
    }
  }
  const keeping = new Map<string, number>();
  for (const lot of lots) keeping.set(lot.part, Math.max(lot.expires, keeping.get(lot.part) ?? -Infinity));
  return instance.needs.map((need) => {
    const [here, by] = [dayNumber(need.neededBy), dayNumber(need.usedOn ?? need.neededBy)];
    const sources = [...(meeting.get(need.spec) ?? [])].flatMap((part): NeedSource[] => [
      ...((keeping.get(part) ?? -Infinity) >= by ? [{ part, from: FROM_SHELF }] : []),
      ...(giving.get(part) ?? []).filter((offer) => offer.arrives <= here && offer.most > 0).map(({ offer }) => ({ part, from: offer.id })),
    ]);
    return { need, units: toUnits(need.quantity, decimals), step: need.step === null ? null : toUnits(need.step, decimals), by, sources };
  });
}

function largestFigure({ offers, lots, needs }: OrderFacts): number {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const given = offers.flatMap(({ gives }) => [...gives.values()]);
  return Math.max(0, ...given, sum(needs.map(({ units }) => units)) + sum(lots.map(({ units }) => units)));
}
