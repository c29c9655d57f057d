import { addDays, earliest, later, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { Solver } from '../integer-program/solver.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { lotsAside, wishNeeds } from '../ledger/wish-aside.ts';
import { openWishes } from '../ledger/wish-state.ts';
import type { Wish } from '../ledger/wish.ts';
import { composeInstance, type StockOnShelf } from '../parts/compose-instance.ts';
import { mayMix } from '../parts/mix-rule.ts';
import type { OrderAnswer } from '../parts/order-answer.ts';
import { FROM_SHELF, type OrderNeed } from '../parts/order-instance.ts';
import { offersAfter, shelfAfter } from '../parts/order-per-car.ts';
import { solveOrder, type OrderOptions } from '../parts/order-solve.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { standingLots } from '../records/shelf-left.ts';
import type { Message } from '../result/result.ts';
import { money } from '../sessions/plan-why.ts';
import type { HouseholdNeed } from './household-needs.ts';
import type { PreferredOrder } from './order-preferences.ts';
import type { OrderRequest } from './order-view-schema.ts';
import { openCosts, wishSavings } from './wishes-view.ts';

/** What becomes of a wish in an order: it joins and saves something against buying it alone later, or it is left, and why. */
export interface WishInOrder {
  readonly wish: Wish;
  readonly joins: boolean;
  /** What buying its parts alone later would cost; null where that was not reckoned, or nobody offers them. */
  readonly aloneMinor: number | null;
  readonly savesMinor: number;
  readonly why: Message;
}

/** An order with the wishes that join it. */
export interface OrderWithWishes {
  readonly found: PreferredOrder;
  /** The needs of the wishes that join. */
  readonly needs: readonly HouseholdNeed[];
  readonly wishes: readonly WishInOrder[];
}

/** What wishes are weighed with. */
export interface WishOrdering {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly currency: string;
  readonly request: OrderRequest;
  readonly solver: Solver;
  readonly options: OrderOptions;
}

/** The shelf but for what is put aside for wishes. */
export function freeStock(facts: Facts): readonly StockOnShelf[] {
  const aside = lotsAside(facts);
  return standingLots(facts).filter(({ lot }) => !aside.has(lot.id)).map(({ lot, left, goodUntil }) => ({ part: lot.part, quantity: left, expires: goodUntil }));
}

interface Candidate {
  readonly wish: Wish;
  readonly needs: readonly HouseholdNeed[];
  readonly aloneMinor: number;
}

/**
 * Lets wishes join an order where that is cheaper than buying their parts alone later. Only those that are saved up, the one wanted most
 * first, may; whole or not at all. What is late or due keeps what it has without them: met by the same day, and from the shelf what it takes from there.
 */
export async function joinWishes(ordering: WishOrdering, base: PreferredOrder): Promise<OrderWithWishes> {
  const { facts, options } = ordering;
  const planned = new Set(base.instance.needs.map((need) => need.id));
  const wanted = openWishes(facts).map((wish) => ({ wish, needs: needsOfWish(ordering, wish) })).filter(({ wish, needs }) => needs.length > 0 && !wish.needs.some((need) => planned.has(`${wish.item ?? ''}/${need.specification}`)));
  const told = new Map<string, WishInOrder>();
  const candidates: Candidate[] = [];
  const saved = savedUp(ordering);
  for (const { wish, needs } of wanted) {
    const alone = await aloneCost(ordering, base, needs);
    if (options.stop?.stopped === true) return { found: base, needs: [], wishes: [] };
    const why = alone === null ? 'wish-order-not-offered' : alone === 0 ? 'wish-order-at-home' : saved.get(wish.id) ?? null;
    if (why === null && alone !== null) candidates.push({ wish, needs, aloneMinor: alone });
    else told.set(wish.id, { wish, joins: false, aloneMinor: alone, savesMinor: 0, why: { key: why ?? 'wish-order-dearer', values: {} } });
  }
  const joined = await chosen(ordering, base, candidates);
  for (const { wish, aloneMinor } of candidates) {
    const savesMinor = joined.saves.get(wish.id) ?? null;
    const values = { saves: money(savesMinor ?? 0, ordering.currency), alone: money(aloneMinor, ordering.currency) };
    told.set(wish.id, { wish, joins: savesMinor !== null, aloneMinor, savesMinor: savesMinor ?? 0, why: { key: savesMinor === null ? 'wish-order-dearer' : 'wish-order-joins', values } });
  }
  return { found: joined.found, needs: candidates.filter(({ wish }) => joined.saves.has(wish.id)).flatMap((one) => one.needs), wishes: wanted.flatMap(({ wish }) => told.get(wish.id) ?? []) };
}

/** What a wish lacks yet, as needs without a day: they wait for the slowest supplier. */
function needsOfWish({ facts, today, request }: WishOrdering, wish: Wish): readonly HouseholdNeed[] {
  const slowest = Math.max(0, ...facts.all(suppliers).map((supplier) => supplier.leadDays));
  const by = later(addDays(today, request.horizonDays), addDays(today, slowest));
  return wishNeeds(facts, wish).filter((need) => need.lacking > 0).map(({ specification, lacking }) => ({
    item: wish.item, itemName: wish.name, wish: wish.id, session: null,
    need: {
      id: `wish/${wish.id}/${specification}`, car: wish.car, spec: specification, quantity: lacking, neededBy: earliest(by, request.arriveBy) ?? by,
      mix: mayMix(facts, specification), step: facts.get(specifications, specification)?.step ?? null, rank: 2, laterMinor: null,
    },
  }));
}

/** Why a wish is not saved up, by its id; null where it is, with all that is wanted more. */
function savedUp({ facts, today }: WishOrdering): ReadonlyMap<string, string | null> {
  const costs = openCosts(facts, today);
  const { wishes } = wishSavings(facts, today, householdAccount(facts, today), costs);
  return new Map(wishes.map(({ id, paidForOn }) => [id, (costs.get(id)?.unpriced.length ?? 0) > 0 ? 'wish-order-unpriced' : paidForOn !== null && paidForOn <= today ? null : 'wish-order-not-saved']));
}

/** What buying a wish's parts alone costs, on what the order leaves on the shelf; null where it cannot be had whole. */
async function aloneCost({ facts, today, solver, options }: WishOrdering, base: PreferredOrder, needs: readonly HouseholdNeed[]): Promise<number | null> {
  const rest = shelfAfter({ ...base.instance, shelf: [...freeStock(facts)] }, base.answer);
  const alone = composeInstance(facts, needs.map((one) => one.need), rest, today, base.terms);
  const answer = await solveOrder({ ...alone, offers: offersAfter(alone.offers, base.answer) }, solver, options);
  return !answer.ok || answer.value.unmet.length > 0 ? null : answer.value.totalMinor;
}

interface Joined {
  readonly found: PreferredOrder;
  /** What each that joins saves. */
  readonly saves: ReadonlyMap<string, number>;
}

/** First all at once, each need to be left for what it would cost later; then those that joined whole, without whom it costs no less. */
async function chosen(ordering: WishOrdering, base: PreferredOrder, candidates: readonly Candidate[]): Promise<Joined> {
  const nobody: Joined = { found: base, saves: new Map() };
  if (candidates.length === 0) return nobody;
  const weighed = await solved(ordering, base, candidates.flatMap(({ needs, aloneMinor }) => needs.map((one, at) => ({ ...one.need, laterMinor: shareOf(aloneMinor, needs.length, at) }))));
  if (weighed === null) return nobody;
  const waiting = new Set([...weighed.answer.later, ...weighed.answer.unmet.map((one) => one.need)]);
  let joining = candidates.filter(({ needs }) => needs.some((one) => !waiting.has(one.need.id)));
  while (joining.length > 0) {
    const found = await solved(ordering, base, needsOf(joining));
    const worst = found === null ? joining.at(-1) : await notWorthIt(ordering, base, joining, found);
    if (found !== null && worst === undefined) return { found, saves: await savings(ordering, base, joining, found) };
    joining = joining.filter((one) => one !== worst);
  }
  return nobody;
}

/** The one wanted least of those that are not met whole, take something from what is due, or save nothing; none where all is well. */
async function notWorthIt(ordering: WishOrdering, base: PreferredOrder, joining: readonly Candidate[], found: PreferredOrder): Promise<Candidate | undefined> {
  const unmet = new Set(found.answer.unmet.map((one) => one.need));
  const lacking = joining.filter(({ needs }) => needs.some((one) => unmet.has(one.need.id)));
  if (lacking.length > 0) return lacking.at(-1);
  if (takesFromDue(base, found)) return joining.at(-1);
  const saves = await savings(ordering, base, joining, found);
  return joining.filter(({ wish }) => (saves.get(wish.id) ?? 0) <= 0).at(-1);
}

/** What each saves: the order without it and its parts alone later, less the order with it. */
async function savings(ordering: WishOrdering, base: PreferredOrder, joining: readonly Candidate[], found: PreferredOrder): Promise<ReadonlyMap<string, number>> {
  const saves = new Map<string, number>();
  for (const one of joining) {
    const others = joining.filter((other) => other !== one);
    const without = others.length === 0 ? base : await solved(ordering, base, needsOf(others));
    if (without !== null) saves.set(one.wish.id, without.answer.totalMinor + one.aloneMinor - found.answer.totalMinor);
  }
  return saves;
}

function needsOf(joining: readonly Candidate[]): readonly OrderNeed[] {
  return joining.flatMap(({ needs }) => needs.map((one) => one.need));
}

/** The order of what is due, held to what it has without wishes, and of some needs beside it; null where it was stopped or refused. */
async function solved({ facts, today, solver, options }: WishOrdering, base: PreferredOrder, more: readonly OrderNeed[]): Promise<PreferredOrder | null> {
  const instance = composeInstance(facts, [...heldTo(base), ...more], freeStock(facts), today, base.terms);
  const answer = await solveOrder(instance, solver, options);
  return answer.ok && answer.value.status === 'optimal' ? { ...base, instance, answer: answer.value } : null;
}

/** What is due as it is met without wishes: no later than then, and what cannot be met stands behind all that can. */
function heldTo({ instance, answer }: PreferredOrder): readonly OrderNeed[] {
  const leads = new Map(instance.suppliers.map((one) => [one.id, one.leadDays]));
  const arrives = new Map(instance.offers.map((offer) => [offer.id, addDays(instance.orderOn, leads.get(offer.supplier) ?? 0)]));
  const unmet = new Set(answer.unmet.map((one) => one.need));
  return instance.needs.map((need): OrderNeed => {
    if (unmet.has(need.id)) return { ...need, rank: 2 };
    const here = answer.allocation.filter((row) => row.need === need.id).map((row) => (row.from === FROM_SHELF ? instance.orderOn : (arrives.get(row.from) ?? instance.orderOn)));
    return { ...need, neededBy: here.reduce(later, instance.orderOn), usedOn: need.usedOn ?? need.neededBy };
  });
}

/** Whether something due is met no more, or takes less from the shelf than without wishes. */
function takesFromDue(base: PreferredOrder, found: PreferredOrder): boolean {
  const fromShelf = (answer: OrderAnswer, need: string) => answer.allocation.filter((row) => row.need === need && row.from === FROM_SHELF).reduce((sum, row) => sum + row.quantity, 0);
  const unmet = (answer: OrderAnswer, need: string) => answer.unmet.some((one) => one.need === need);
  return base.instance.needs.some(({ id }) => unmet(base.answer, id) !== unmet(found.answer, id) || fromShelf(found.answer, id) < fromShelf(base.answer, id) - 1e-9);
}

function shareOf(minor: number, parts: number, at: number): number {
  return Math.floor((minor * (at + 1)) / parts) - Math.floor((minor * at) / parts);
}
