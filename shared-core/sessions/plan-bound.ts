import { leftCost } from './plan-board.ts';
import type { PlanFacts } from './plan-facts.ts';
import type { SlotKnapsack } from './plan-knapsack.ts';
import { cheapestSession, cheapestSessionsWith, type PricedSession } from './plan-session-price.ts';

/** What prices prove: no plan costs less than `minor`; and the sessions that would be best if a task could be done twice or not at all. */
export interface PlanBound {
  readonly minor: number;
  readonly prices: Float64Array;
  readonly sessions: readonly PricedSession[];
}

/** Prices are multiples of this, so that every sum with them is exact: a bound has no error of rounding. */
const PRICE_STEP = 1 / 64;

/** Prices brought to where they mean something: 0 or more, and no more than leaving the task out costs. */
export function soundPrices(facts: PlanFacts, prices: Float64Array): Float64Array {
  return prices.map((price, at) => {
    const task = facts.tasks[at];
    return task === undefined ? 0 : Math.max(0, Math.min(leftCost(facts, task), Math.round(price / PRICE_STEP) * PRICE_STEP));
  });
}

/**
 * The bound that a price for each task proves. Any plan pays for each task its price or more, or leaves it out; what it then has over is a
 * choice of sessions, of which each slot has at best its cheapest.
 *
 * Source: Lagrangian relaxation of "each task once" (Geoffrion 1974), from memory.
 */
export function boundOf(facts: PlanFacts, sacks: readonly SlotKnapsack[], from: Float64Array): PlanBound {
  const prices = soundPrices(facts, from);
  const sessions = sacks.map((sack) => cheapestSession(sack, prices));
  // A sound price is never above what leaving the task out costs, so the cheaper of the two is the price.
  const minor = sessions.reduce((sum, { value }) => sum + value, prices.reduce((sum, price) => sum + price, 0));
  return { minor, prices, sessions };
}

/** For each option, by `slot * tasks + task`: how far above the bound any plan is that takes it; Infinity where the option does not stand in the sacks. */
export function penaltiesOf(facts: PlanFacts, sacks: readonly SlotKnapsack[], bound: PlanBound): Float64Array {
  const penalties = new Float64Array(sacks.length * facts.tasks.length).fill(Infinity);
  sacks.forEach((sack, slot) => {
    for (const { task, value } of cheapestSessionsWith(sack, bound.prices)) {
      penalties[slot * facts.tasks.length + task] = value - (bound.sessions[slot]?.value ?? 0);
    }
  });
  return penalties;
}
