import { shareOrder, type OrderShares } from './order-allocation.ts';
import { orderAnswerSchema, type OrderAnswer, type Unmet } from './order-answer.ts';
import { readChoice, type OrderChoice } from './order-choice.ts';
import type { OrderFacts } from './order-facts.ts';
import type { OrderModel } from './order-model.ts';
import { orderCharges } from './order-money.ts';
import { fromUnits } from './order-quantity.ts';
import { trimOrder } from './order-trim.ts';
import { verifyOrder } from './order-verify.ts';

/** A solution of the program, and how far it is proved. */
export interface SolvedOrder {
  readonly model: OrderModel;
  readonly values: readonly number[];
  /** No order that meets as much costs less than this, in the program's own cost; null where that was not proved. */
  readonly bound: number | null;
}

/**
 * The answer of a solution, every figure reckoned anew in whole numbers from the packs bought; null where the solution, made whole,
 * does not hold (a solver reckons in fractions), so that nothing leaves here that the verifier has not passed.
 */
export function composeAnswer(facts: OrderFacts, solved: SolvedOrder): OrderAnswer | null {
  const choice = trimOrder(facts, readChoice(facts, solved.model, solved.values));
  const shares = shareOrder(facts, choice);
  if (shares === null) return null;
  const answer = orderAnswerSchema.safeParse(answerOf(facts, choice, shares, solved));
  return answer.success && verifyOrder(facts.instance, answer.data).length === 0 ? answer.data : null;
}

function answerOf(facts: OrderFacts, choice: OrderChoice, shares: OrderShares, solved: SolvedOrder): OrderAnswer {
  const charges = orderCharges(facts, choice.lines);
  const goodsMinor = sum(charges.map((charge) => charge.goodsMinor));
  const deliveryMinor = sum(charges.map((charge) => charge.deliveryMinor));
  const laterMinor = sum(facts.instance.needs.map((need) => (choice.later.has(need.id) ? (need.laterMinor ?? 0) : 0)));
  const totalMinor = goodsMinor + deliveryMinor + laterMinor;
  const boundMinor = Math.min(totalMinor, wholeBound(solved));
  const inUnits = ({ units, ...row }: { readonly units: number }) => ({ ...row, quantity: fromUnits(units, facts.decimals) });
  return {
    status: totalMinor - boundMinor < 1 ? 'optimal' : 'stopped',
    ...{ totalMinor, boundMinor, goodsMinor, deliveryMinor, laterMinor },
    lines: [...choice.lines],
    allocation: shares.taken.map(({ need, part, from, units }) => ({ need, part, ...inUnits({ units }), from })),
    left: shares.left.map(({ part, units }) => ({ part, ...inUnits({ units }) })),
    later: facts.instance.needs.filter(({ id }) => choice.later.has(id)).map(({ id }) => id),
    unmet: unmetOf(facts, choice),
  };
}

/** Costs come in whole units, so the least cost is the next whole one at or above the bound; the bound itself is a fraction that may be a hair too high. */
function wholeBound({ model, bound }: SolvedOrder): number {
  return bound === null ? 0 : Math.max(0, Math.ceil(bound - 1e-3 - 1e-11 * Math.abs(bound)) * model.minorEach);
}

function unmetOf(facts: OrderFacts, choice: OrderChoice): Unmet[] {
  return facts.needs
    .filter(({ need }) => !choice.met.has(need.id) && !choice.later.has(need.id))
    .map(({ need, sources }) => ({ need: need.id, code: sources.length === 0 ? 'none-in-time' : 'not-enough' }));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
