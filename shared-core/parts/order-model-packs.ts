import type { ProgramDraft, Term } from '../integer-program/program.ts';
import type { OfferFacts, OrderFacts } from './order-facts.ts';
import { FROM_SHELF, type OrderSupplier } from './order-instance.ts';
import { greatestDivisor } from './order-quantity.ts';

/** The variables whose sum is the number of packs of an offer: one for each range of prices. */
export interface PackVariables {
  readonly packs: readonly number[];
  /** No cheapest order needs more packs than this. */
  readonly bound: number;
  /** The choice to use the supplier, where using it costs or demands something. */
  readonly used: number | null;
  /** Whether that choice only costs, and no sum has to be reached for it. */
  readonly onlyCosts: boolean;
}

/** Packs by the offer's id; offers that no cheapest order needs are absent. */
export type Packs = ReadonlyMap<string, PackVariables>;

/** Adds packs, prices by range, suppliers with their delivery, free-from and minimum. `cost` turns minor units into the program's cost. */
export function addPacks(draft: ProgramDraft, facts: OrderFacts, cost: (minor: number) => number): Packs {
  const demand = demandByOffer(facts);
  const found = new Map<string, PackVariables>();
  for (const supplier of facts.instance.suppliers) {
    const offers = facts.offers.filter((offer) => offer.supplier === supplier);
    const terms = supplierTerms(supplier);
    const bounds = offers.map((offer) => packBound(offer, demand.get(offer.offer.id) ?? 0, Math.max(terms.free ?? 0, terms.least)));
    const used = terms.charge > 0 || terms.least > 0 ? draft.variable({ upper: 1, whole: true, cost: cost(terms.charge) }) : null;
    const goods: Term[] = [];
    offers.forEach((offer, at) => {
      const bound = bounds[at] ?? 0;
      if (bound === 0) return;
      const priced = addRanges(draft, offer, bound, used, cost);
      found.set(offer.offer.id, { packs: priced.map(([packs]) => packs), bound, used, onlyCosts: terms.free === null && terms.least === 0 });
      goods.push(...priced);
    });
    if (used !== null) addThresholds(draft, terms, used, goods, cost);
  }
  return found;
}

interface SupplierTerms {
  /** What delivery costs when it is not free; 0 where it always is. */
  readonly charge: number;
  /** Goods from which delivery is free; null where it never is, or always. */
  readonly free: number | null;
  readonly least: number;
}

/** Where the minimum already earns free delivery, there is no charge to speak of. */
function supplierTerms({ deliveryMinor, freeFromMinor, minimumMinor }: OrderSupplier): SupplierTerms {
  const always = deliveryMinor === 0 || (freeFromMinor !== null && freeFromMinor <= minimumMinor);
  return always
    ? { charge: 0, free: null, least: minimumMinor }
    : { charge: deliveryMinor, free: freeFromMinor, least: minimumMinor };
}

/** Packs that would cover all that could be taken from each offer. */
function demandByOffer({ offers, needs }: OrderFacts): ReadonlyMap<string, number> {
  const wanted = new Map<string, Map<string, number>>();
  for (const need of needs) {
    for (const { part, from } of need.sources) {
      if (from === FROM_SHELF) continue;
      const parts = wanted.get(from) ?? new Map<string, number>();
      wanted.set(from, parts.set(part, (parts.get(part) ?? 0) + need.units));
    }
  }
  return new Map(
    offers.map(({ offer, gives }) => {
      const parts = [...(wanted.get(offer.id) ?? [])];
      return [offer.id, Math.max(0, ...parts.map(([part, units]) => Math.ceil(units / (gives.get(part) ?? 1))))];
    }),
  );
}

/**
 * One pack more than this can be put back: all needs stay covered, the price stays that of the last range, and this offer's
 * goods alone still reach the threshold.
 */
function packBound({ most, prices }: OfferFacts, demand: number, threshold: number): number {
  const last = prices.at(-1);
  if (last === undefined || (demand === 0 && threshold === 0)) return 0;
  const forThreshold = last.priceMinor > 0 ? Math.ceil(threshold / last.priceMinor) : 0;
  return Math.min(most, Math.max(demand, last.first, forThreshold));
}

/** One range needs one variable; more need a choice each, of which one at most is made. Hands out packs with their price. */
function addRanges(draft: ProgramDraft, offer: OfferFacts, bound: number, used: number | null, cost: (minor: number) => number): readonly Term[] {
  const ranges = offer.prices.filter(({ first }) => first <= bound);
  const only = ranges.length === 1 ? ranges[0] : undefined;
  if (only !== undefined && only.first === 1) {
    const packs = draft.variable({ upper: bound, whole: true, cost: cost(only.priceMinor) });
    if (used !== null) draft.row(-Infinity, [[packs, 1], [used, -bound]], 0);
    return [[packs, only.priceMinor]];
  }
  const choices: number[] = [];
  const priced = ranges.map(({ first, last, priceMinor }): Term => {
    const most = Math.min(last, bound);
    const packs = draft.variable({ upper: most, whole: true, cost: cost(priceMinor) });
    const chosen = draft.variable({ upper: 1, whole: true });
    draft.row(0, [[packs, 1], [chosen, -first]], Infinity);
    draft.row(-Infinity, [[packs, 1], [chosen, -most]], 0);
    choices.push(chosen);
    return [packs, priceMinor];
  });
  const chosen = choices.map((choice): Term => [choice, 1]);
  draft.row(-Infinity, used === null ? chosen : [...chosen, [used, -1]], used === null ? 1 : 0);
  return priced;
}

/** goods >= minimum for a used supplier, and >= free-from where free delivery takes its charge back. Sums are whole multiples of the prices' divisor. */
function addThresholds(draft: ProgramDraft, terms: SupplierTerms, used: number, goods: readonly Term[], cost: (minor: number) => number): void {
  const each = greatestDivisor(goods.map(([, price]) => price)) || 1;
  const least = Math.ceil(terms.least / each);
  const row: Term[] = goods.map(([packs, price]) => [packs, price / each]);
  if (terms.free !== null) {
    const free = draft.variable({ upper: 1, whole: true, cost: -cost(terms.charge) });
    draft.row(-Infinity, [[free, 1], [used, -1]], 0);
    row.push([free, least - Math.ceil(terms.free / each)]);
  }
  if (terms.free !== null || least > 0) draft.row(0, [...row, [used, -least]], Infinity);
}
