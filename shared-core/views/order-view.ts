import { earliest } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Solver } from '../integer-program/solver.ts';
import type { Facts } from '../journal/facts.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import type { Moment } from '../journal/operation.ts';
import { ANY_TERMS, composeInstance, type BuyingTerms } from '../parts/compose-instance.ts';
import type { OrderAnswer } from '../parts/order-answer.ts';
import { orderPerCar, type PerCarOrder } from '../parts/order-per-car.ts';
import { solveOrder, type OrderOptions } from '../parts/order-solve.ts';
import { verifyOrder } from '../parts/order-verify.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { assert } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { householdNeeds, type HouseholdNeed } from './household-needs.ts';
import { proposedShares, supplierOrders, type ProposedOrder } from './order-lines.ts';
import { boughtLines, needViews } from './order-needs.ts';
import { preferredOrder, type PreferredOrder } from './order-preferences.ts';
import type { OrderRequest, OrderView } from './order-view-schema.ts';
import { orderSheet } from './order-sheets.ts';
import { orderNotes, orderProof } from './order-words.ts';
import { freeStock, joinWishes, type WishInOrder } from './order-wishes.ts';
import { carName } from './money-names.ts';
import { said } from './plan-said.ts';
import { toolsLacking } from './tools-lacking.ts';

/**
 * Merges what all cars need into orders, under the terms asked for: solved to the proven cheapest, checked by the verifier, and held
 * against buying for each car alone and from each supplier alone. An answer that fails the verifier is our bug and is never shown. Where it
 * is stopped, the best found so far stands and is held against nothing.
 */
export async function proposeOrder(standing: Facts, request: OrderRequest, moment: Pick<Moment, 'today'>, solver: Solver, options: OrderOptions = {}): Promise<Result<OrderView>> {
  const facts = rememberedFacts(standing);
  const household = findHousehold(facts);
  if (!household.ok) return household;
  if (request.onlySupplier !== null && facts.get(suppliers, request.onlySupplier) === null) return refuse('unknown-supplier', { id: request.onlySupplier }, ['onlySupplier']);
  if (request.arriveBy !== null && request.arriveBy < moment.today) return refuse('arrive-by-passed', { date: request.arriveBy }, ['arriveBy']);
  const due = neededBy(householdNeeds(facts, moment.today, request.horizonDays).filter((one) => request.wishes || one.wish === null), request);
  const shelf = freeStock(facts);
  const composeFor = (needs: readonly HouseholdNeed[]) => (terms: BuyingTerms) => composeInstance(facts, needs.map((one) => one.need), shelf, moment.today, terms);
  const plain: BuyingTerms = { ...ANY_TERMS, onlySupplier: request.onlySupplier, noLeftovers: request.noLeftovers };
  const preferred = await preferredOrder(facts, composeFor(due), plain, solver, options);
  if (!preferred.ok) return preferred;
  const { currency } = household.value;
  const weighed = request.wishes && preferred.value.answer.status === 'optimal' ? await joinWishes({ facts, today: moment.today, currency, request, solver, options }, preferred.value) : { found: preferred.value, needs: [], wishes: [] };
  const { found } = weighed;
  const needs = [...due, ...weighed.needs];
  const { instance, answer } = found;
  const faults = verifyOrder(instance, answer);
  assert(faults.length === 0, `an order that its verifier refuses: ${JSON.stringify(faults[0])}`);
  const compose = composeFor(needs);
  const against = await heldAgainst(facts, compose, { ...found, instance: compose(found.terms) }, solver, options);
  if (!against.ok) return against;
  return ok(composeView({ request, currency, found, against: against.value, wishes: weighed.wishes }, { facts, today: moment.today, needs, instance, answer }));
}

/** With a day by which all is to be here, nothing is needed later. */
function neededBy(needs: readonly HouseholdNeed[], { arriveBy }: OrderRequest): readonly HouseholdNeed[] {
  return needs.map((one) => ({ ...one, need: { ...one.need, neededBy: earliest(one.need.neededBy, arriveBy) ?? one.need.neededBy } }));
}

type Against = Pick<OrderView, 'perCar' | 'savedMinor' | 'perSupplier' | 'cheapestSupplier'>;
const NOTHING_AGAINST: Against = { perCar: { totalMinor: 0, met: 0, cars: [] }, savedMinor: null, perSupplier: [], cheapestSupplier: null };

async function heldAgainst(facts: Facts, compose: (terms: BuyingTerms) => ProposedOrder['instance'], { instance, answer, terms }: PreferredOrder, solver: Solver, options: OrderOptions): Promise<Result<Against>> {
  if (options.stop?.stopped === true) return ok(NOTHING_AGAINST);
  const perCar = await orderPerCar(instance, solver, options);
  if (!perCar.ok) return stoppedOr(perCar, options);
  const met = metOf(answer, instance.needs.length);
  const perSupplier: OrderView['perSupplier'] = [];
  for (const supplier of terms.onlySupplier === null ? facts.all(suppliers) : []) {
    const alone = await solveOrder(compose({ ...terms, onlySupplier: supplier.id }), solver, options);
    if (!alone.ok) return stoppedOr(alone, options);
    perSupplier.push({ supplier: supplier.id, supplierName: supplier.name, totalMinor: alone.value.totalMinor, met: metOf(alone.value, instance.needs.length) });
  }
  const able = perSupplier.filter((one) => one.met === met).sort((a, b) => a.totalMinor - b.totalMinor || (a.supplier < b.supplier ? -1 : 1));
  return ok({ perCar: { ...perCar.value, cars: [...perCar.value.cars] }, savedMinor: savedBy(answer, perCar.value, met), perSupplier, cheapestSupplier: able[0] ?? null });
}

function stoppedOr<Refused extends Result<never>>(refused: Refused, options: OrderOptions): Refused | Result<Against> {
  return options.stop?.stopped === true ? ok(NOTHING_AGAINST) : refused;
}

function metOf(answer: OrderAnswer, needs: number): number {
  return needs - answer.unmet.length - answer.later.length;
}

function savedBy(answer: OrderAnswer, perCar: PerCarOrder, met: number): number | null {
  return met === perCar.met ? perCar.totalMinor - answer.totalMinor : null;
}

interface Composed {
  readonly request: OrderRequest;
  readonly currency: string;
  readonly found: PreferredOrder;
  readonly against: Against;
  readonly wishes: readonly WishInOrder[];
}

function composeView({ request, currency, found, against, wishes }: Composed, proposed: ProposedOrder): OrderView {
  const { facts, today, answer } = proposed;
  const orders = supplierOrders(proposed);
  const named = found.tried.map((one) => ({ ...one, specificationName: facts.get(specifications, one.specification)?.name ?? one.specification, partName: facts.get(parts, one.part)?.name ?? one.part }));
  const tasks = [...new Map(proposed.needs.flatMap((one) => (one.item === null ? [] : [[one.item, { item: one.item, day: one.session?.day ?? null }] as const]))).values()];
  const view = {
    ...answer,
    lines: boughtLines(answer),
    today,
    horizonDays: request.horizonDays,
    terms: { onlySupplier: request.onlySupplier, arriveBy: request.arriveBy, noLeftovers: request.noLeftovers },
    currency,
    needs: needViews(proposed),
    orders,
    depositsMinor: orders.reduce((sum, order) => sum + order.depositsMinor, 0),
    shares: proposedShares(proposed, orders),
    ...against,
    preferences: named,
    toolsLacking: toolsLacking(facts, tasks, today),
    wishes: wishes.map(({ wish, joins, aloneMinor, savesMinor, why }) => ({ wish: wish.id, name: wish.name, carName: carName(facts, wish.car), joins, aloneMinor, savesMinor, why: said(why) })),
  };
  const sheets = orders.map((order) => orderSheet({ ...order, discountMinor: 0 }, currency, today));
  return { ...view, sheets, proof: orderProof(view).map(said), notes: orderNotes(proposed, view).map(said) };
}
