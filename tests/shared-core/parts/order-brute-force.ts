import type { OrderInstanceAsWritten } from '../../../shared-core/parts/order-instance.ts';

type Written = OrderInstanceAsWritten;

/** The best there is: needs met (or left for later) of ranks 0, 1 and 2, and the least cost among the orders that do so. */
export interface BruteBest {
  readonly settled: readonly [number, number, number];
  readonly totalMinor: number;
}

/** Quantities in small orders are halves, kits multiply them by whole numbers. */
const halves = (quantity: number) => Math.round(quantity * 2);
const day = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

/**
 * Solves a small order by trying every number of packs of every offer, and for each every way to share what is then there. It shares no
 * code and no idea with the order program.
 */
export function bruteForce(instance: Written): BruteBest {
  const limits = packLimits(instance);
  const problem = problemOf(instance);
  // More goods never settle fewer needs: no order settles more than buying all there is would.
  const most = bestSharing(problem, limits);
  let best: BruteBest | null = null;
  for (const packs of everyChoice(limits)) {
    const money = moneyOf(instance, packs);
    if (money === null || (best !== null && best.settled.join() === most.settled.join() && money >= best.totalMinor)) continue;
    const sharing = bestSharing(problem, packs);
    const found: BruteBest = { settled: sharing.settled, totalMinor: money + sharing.laterMinor };
    if (best === null || isBetter(found, best)) best = found;
  }
  if (best === null) throw new Error('buying nothing is always allowed');
  return best;
}

function isBetter(a: BruteBest, b: BruteBest): boolean {
  for (const rank of [0, 1, 2] as const) if (a.settled[rank] !== b.settled[rank]) return a.settled[rank] > b.settled[rank];
  return a.totalMinor < b.totalMinor;
}

/** More packs than this can never help: enough for all needs, and for every threshold, and for the last break, on top of one another. */
export function packLimits(instance: Written): readonly number[] {
  return instance.offers.map((offer) => {
    const supplier = instance.suppliers.find(({ id }) => id === offer.supplier);
    const specs = (part: string) => instance.parts.find(({ id }) => id === part)?.meets ?? [];
    const covers = [...contentsOf(instance, offer.part, halves(offer.quantity))].map(([part, units]) => {
      const wanted = instance.needs.filter(({ spec }) => specs(part).includes(spec)).reduce((sum, { quantity }) => sum + halves(quantity), 0);
      return Math.ceil(wanted / units);
    });
    const cheapest = Math.min(...[offer.priceMinor, ...(offer.breaks ?? []).map(({ priceMinor }) => priceMinor)]);
    const threshold = Math.max(supplier?.freeFromMinor ?? 0, supplier?.minimumMinor ?? 0);
    const reaching = cheapest > 0 ? Math.ceil(threshold / cheapest) : 0;
    const lastBreak = Math.max(0, ...(offer.breaks ?? []).map(({ packs }) => packs));
    return Math.min(offer.most ?? Infinity, Math.max(...covers) + reaching + lastBreak);
  });
}

function* everyChoice(limits: readonly number[]): Generator<readonly number[]> {
  const packs = limits.map(() => 0);
  for (;;) {
    yield packs;
    let at = 0;
    while (at < packs.length && packs[at] === limits[at]) packs[at++] = 0;
    if (at === packs.length) return;
    packs[at] = (packs[at] ?? 0) + 1;
  }
}

/** Goods and delivery; null where a supplier would not send so little. */
function moneyOf(instance: Written, packs: readonly number[]): number | null {
  let money = 0;
  for (const supplier of instance.suppliers) {
    let [goods, used] = [0, false];
    instance.offers.forEach((offer, at) => {
      const count = packs[at] ?? 0;
      if (offer.supplier !== supplier.id || count === 0) return;
      used = true;
      let [price, from] = [offer.priceMinor, 0];
      for (const step of offer.breaks ?? []) if (step.packs <= count && step.packs >= from) [price, from] = [step.priceMinor, step.packs];
      goods += count * price;
    });
    if (!used) continue;
    if (goods < (supplier.minimumMinor ?? 0)) return null;
    const free = supplier.freeFromMinor !== null && supplier.freeFromMinor !== undefined && goods >= supplier.freeFromMinor;
    money += goods + (free ? 0 : supplier.deliveryMinor);
  }
  return money;
}

function contentsOf(instance: Written, partId: string, units: number): ReadonlyMap<string, number> {
  const contains = instance.parts.find(({ id }) => id === partId)?.contains ?? [];
  if (contains.length === 0) return new Map([[partId, units]]);
  const found = new Map<string, number>();
  for (const inner of contains) found.set(inner.part, (found.get(inner.part) ?? 0) + inner.quantity * units);
  return found;
}

/** Something to take from: a lot on the shelf or the packs of an offer; `name` is what an allocation would call it. */
interface Pile {
  readonly name: string;
  readonly part: string;
  /** Units there without buying, and in each pack of the offer (by number). */
  readonly units: number;
  readonly offer: number | null;
}

interface Sharing {
  readonly settled: readonly [number, number, number];
  readonly laterMinor: number;
}

interface Problem {
  readonly needs: Written['needs'];
  readonly piles: readonly Pile[];
  /** For each need, the piles it may take from. */
  readonly usable: readonly (readonly number[])[];
  /** For each pile, what could be taken from it at most: more in it changes nothing. */
  readonly wanted: readonly number[];
  readonly known: Map<string, Sharing>;
}

function problemOf(instance: Written): Problem {
  const meets = (part: string, spec: string) => instance.parts.find(({ id }) => id === part)?.meets.includes(spec) ?? false;
  const lots = instance.shelf.flatMap(({ part, quantity, expires }) =>
    [...contentsOf(instance, part, halves(quantity))].map(([single, units]) => ({
      ...{ name: `shelf ${single}`, part: single, units, offer: null, comes: -Infinity },
      goes: expires === null || expires === undefined ? Infinity : day(expires),
    })),
  );
  const bought = instance.offers.flatMap(({ id, supplier, part, quantity }, offer) => {
    const comes = day(instance.orderOn) + (instance.suppliers.find((each) => each.id === supplier)?.leadDays ?? 0);
    return [...contentsOf(instance, part, halves(quantity))].map(([single, units]) => ({ name: `${id} ${single}`, part: single, units, offer, comes, goes: Infinity }));
  });
  const piles = [...lots, ...bought];
  const usable = instance.needs.map(({ spec, neededBy, usedOn }) =>
    piles.flatMap(({ part, comes, goes }, at) => (meets(part, spec) && comes <= day(neededBy) && goes >= day(usedOn ?? neededBy) ? [at] : [])),
  );
  const wanted = piles.map((_, at) => instance.needs.reduce((sum, { quantity }, need) => sum + (usable[need]?.includes(at) === true ? halves(quantity) : 0), 0));
  return { needs: instance.needs, piles, usable, wanted, known: new Map() };
}

function bestSharing(problem: Problem, packs: readonly number[]): Sharing {
  const there = problem.piles.map(({ units, offer }, at) => Math.min(problem.wanted[at] ?? 0, offer === null ? units : units * (packs[offer] ?? 0)));
  return shareFrom(problem, 0, there);
}

/** The best that can be done for the needs from one on, with so much left in each pile. */
function shareFrom(problem: Problem, from: number, left: readonly number[]): Sharing {
  const need = problem.needs[from];
  if (need === undefined) return { settled: [0, 0, 0], laterMinor: 0 };
  const key = `${from}:${left.join()}`;
  const before = problem.known.get(key);
  if (before !== undefined) return before;
  const rank = need.rank ?? 1;
  const later = need.laterMinor ?? null;
  let best = later === null ? shareFrom(problem, from + 1, left) : plus(shareFrom(problem, from + 1, left), rank, later);
  for (const then of waysToMeet(problem, from, left)) {
    const found = plus(shareFrom(problem, from + 1, then), rank, 0);
    if (isBetter({ ...found, totalMinor: found.laterMinor }, { ...best, totalMinor: best.laterMinor })) best = found;
  }
  problem.known.set(key, best);
  return best;
}

function plus({ settled, laterMinor }: Sharing, rank: 0 | 1 | 2, more: number): Sharing {
  const [late, due, wish] = settled;
  return { settled: [late + (rank === 0 ? 1 : 0), due + (rank === 1 ? 1 : 0), wish + (rank === 2 ? 1 : 0)], laterMinor: laterMinor + more };
}

/** Every different set of leftovers after meeting a need. */
function waysToMeet({ needs, piles, usable: allUsable }: Problem, at: number, left: readonly number[]): readonly (readonly number[])[] {
  const need = needs[at];
  if (need === undefined) return [];
  const usable = (allUsable[at] ?? []).filter((pile) => (left[pile] ?? 0) > 0);
  const behind = usable.map((_, i) => usable.slice(i).reduce((sum, pile) => sum + (left[pile] ?? 0), 0));
  const found: (readonly number[])[] = [];
  const step = need.step === undefined || need.step === null ? null : halves(need.step);
  const take = (i: number, wanted: number, then: readonly number[]): void => {
    const pile = usable[i];
    if (wanted > (behind[i] ?? 0)) return;
    if (pile === undefined || wanted === 0) {
      if (isAllowed(piles, need, left, then, step)) found.push(then);
      return;
    }
    for (let units = 0; units <= Math.min(wanted, then[pile] ?? 0); units += 1) take(i + 1, wanted - units, then.with(pile, (then[pile] ?? 0) - units));
  };
  take(0, halves(need.quantity), left);
  return found;
}

function isAllowed(piles: readonly Pile[], need: Written['needs'][number], before: readonly number[], after: readonly number[], step: number | null): boolean {
  const byName = new Map<string, number>();
  const parts = new Set<string>();
  piles.forEach(({ name, part }, at) => {
    const units = (before[at] ?? 0) - (after[at] ?? 0);
    if (units === 0) return;
    parts.add(part);
    byName.set(name, (byName.get(name) ?? 0) + units);
  });
  return (need.mix !== false || parts.size <= 1) && (step === null || [...byName.values()].every((units) => units % step === 0));
}
