import type { FoundValues, ProgramAnswer, SolveOptions, Solver } from '../integer-program/solver.ts';
import { readChoice } from './order-choice.ts';
import type { SolvedOrder } from './order-compose.ts';
import { dominatedOffers, withoutOffers } from './order-dominated.ts';
import { easeTerms } from './order-eased.ts';
import type { OrderFacts } from './order-facts.ts';
import { orderModel, type OrderFloor, type OrderModel } from './order-model.ts';
import { orderCharges, type SupplierCharge } from './order-money.ts';
import { solveInPieces } from './order-pieces.ts';

/** A solution, and the problem whose offers and needs it speaks of: the given one, perhaps without offers that nobody needs. */
export interface CheapestOrder {
  readonly facts: OrderFacts;
  readonly solved: SolvedOrder;
}

/**
 * The cheapest order that meets so many needs: 'infeasible' where none does, null where a limit or a stop came before one was found.
 *
 * What suppliers ask for (a least sum, delivery free from a sum) is left out at first, and taken in for those of them only whose terms the
 * cheapest order then breaks, until none is broken: most orders of many suppliers reach them anyway, and without them the problem falls
 * into pieces and most offers are dominated.
 */
export async function solveCheapest(facts: OrderFacts, floor: OrderFloor, solver: Solver, options: SolveOptions): Promise<CheapestOrder | 'infeasible' | null> {
  const all = new Set(facts.instance.suppliers.map(({ id }) => id));
  let kept: ReadonlySet<string> = new Set();
  let best: CheapestOrder | null = null;
  for (;;) {
    const eased = easeTerms(facts, kept);
    const dropped = dominatedOffers(eased);
    const model = orderModel(withoutOffers(eased, dropped), { kind: 'cost' }, floor);
    const answer = await solveInPieces(model.program, linksOf(model), solver, options);
    if (answer.status === 'infeasible') return 'infeasible';
    const found = foundIn(answer);
    const lean = withoutOffers(facts, dropped);
    const broken = found === null ? [] : brokenTerms(lean, eased, model, found.values);
    const last = kept.size === all.size;
    if (found !== null && (last || broken.every(({ reachesMinimum }) => reachesMinimum))) {
      const bound = answer.status === 'optimal' || answer.status === 'stopped' ? answer.bound : null;
      best = { facts: lean, solved: { model, values: found.values, bound } };
      if (broken.length === 0) return best;
    }
    if (last || options.stop?.stopped === true) return best;
    const more = new Set([...kept, ...broken.map(({ supplier }) => supplier)]);
    kept = answer.status === 'optimal' && more.size > kept.size ? more : all;
  }
}

/** Suppliers whose terms were left out and are not kept by what is bought. */
function brokenTerms(facts: OrderFacts, eased: OrderFacts, model: OrderModel, values: readonly number[]): readonly SupplierCharge[] {
  const free = new Set(eased.instance.suppliers.flatMap(({ id, deliveryMinor }) => (deliveryMinor === 0 ? [id] : [])));
  const charges = orderCharges(facts, readChoice(facts, model, values).lines);
  return charges.filter(({ supplier, deliveryMinor, reachesMinimum }) => !reachesMinimum || (deliveryMinor > 0 && free.has(supplier)));
}

/** The choices to use a supplier that only cost: where there are no sums to be reached, nothing else hangs on them. */
function linksOf({ packs }: OrderModel): ReadonlySet<number> {
  return new Set([...packs.values()].flatMap(({ used, onlyCosts }) => (used !== null && onlyCosts ? [used] : [])));
}

/** The values of an answer, where it has any. */
export function foundIn(answer: ProgramAnswer): FoundValues | null {
  if (answer.status === 'optimal') return answer;
  if (answer.status === 'stopped') return answer.best;
  throw new Error(answer.status === 'infeasible' ? 'Bug: an order that meets no need at all is always allowed' : 'Bug: no order costs less than nothing');
}
