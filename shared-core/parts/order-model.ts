import { draftProgram, type Program, type ProgramDraft } from '../integer-program/program.ts';
import { must } from '../result/assert.ts';
import type { OrderFacts } from './order-facts.ts';
import type { NeedRank } from './order-instance.ts';
import { addNeeds, isMeetable, type NeedVariables, type Take } from './order-model-needs.ts';
import { addPacks, type PackVariables } from './order-model-packs.ts';
import { addSupply } from './order-model-supply.ts';
import { greatestDivisor } from './order-quantity.ts';

/** What the program is to make as good as it can be: as many needs of a rank as possible, or the cost. */
export type OrderGoal = { readonly kind: 'met'; readonly rank: NeedRank } | { readonly kind: 'cost' };

/** How many needs must be met: every one that could be by itself, or at least so many of each rank. */
export type OrderFloor = 'all' | ReadonlyMap<NeedRank, number>;

/** An order problem as a program, and which variable says what. The variables are the same for every goal and floor. */
export interface OrderModel {
  readonly program: Program;
  /** The program's cost is in so many minor units (the greatest that divides every sum), or in needs not met. */
  readonly minorEach: number;
  readonly packs: ReadonlyMap<string, PackVariables>;
  readonly needs: ReadonlyMap<string, NeedVariables>;
  readonly takes: readonly Take[];
}

/**
 * Writes an order problem as a program: whole packs, one choice for each supplier used and each free delivery reached, shares of each need
 * from each source. Every share is bound to its supplier and to its packs by a row of its own, which keeps the relaxation tight.
 */
export function orderModel(facts: OrderFacts, goal: OrderGoal, floor: OrderFloor): OrderModel {
  const draft = draftProgram();
  const minorEach = minorUnit(facts);
  const costEach = goal.kind === 'cost' ? 1 / minorEach : 0;
  const packs = addPacks(draft, facts, (minor) => Math.round(minor * costEach));
  const { needs, takes } = addNeeds(draft, facts, (need) => ({
    metCost: goal.kind === 'met' && need.rank === goal.rank ? -1 : 0,
    laterCost: Math.round((need.laterMinor ?? 0) * costEach),
    mustMeet: floor === 'all',
  }));
  addSupply(draft, facts, packs, takes);
  if (floor !== 'all') addFloors(draft, facts, needs, floor);
  return { program: draft.program(), minorEach, packs: packs.offers, needs, takes };
}

/** More than any order of the program can cost, in minor units: the sum of all packs it allows. */
export function largestSumMinor(facts: OrderFacts): number {
  const { program, minorEach } = orderModel(facts, { kind: 'cost' }, new Map());
  return program.variables.reduce((sum, { upper, cost }) => sum + upper * Math.max(0, cost) * minorEach, 0);
}

function addFloors(draft: ProgramDraft, facts: OrderFacts, needs: ReadonlyMap<string, NeedVariables>, floor: ReadonlyMap<NeedRank, number>): void {
  for (const [rank, least] of floor) {
    const counted = facts.needs.filter((need) => isMeetable(need) && need.need.rank === rank);
    draft.row(least, counted.map(({ need }) => [must(needs.get(need.id), 'variables of a need').met, 1]), Infinity);
  }
}

/** Every sum of money in the problem is a whole number of these. */
function minorUnit({ offers, instance }: OrderFacts): number {
  const prices = offers.flatMap((offer) => offer.prices.map(({ priceMinor }) => priceMinor));
  const others = [...instance.suppliers.map(({ deliveryMinor }) => deliveryMinor), ...instance.needs.map(({ laterMinor }) => laterMinor ?? 0)];
  return greatestDivisor([...prices, ...others]) || 1;
}
