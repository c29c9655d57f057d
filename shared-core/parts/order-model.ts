import { draftProgram, type Program, type ProgramDraft } from '../integer-program/program.ts';
import type { OrderFacts } from './order-facts.ts';
import { groupNeeds, isMeetable } from './order-groups.ts';
import type { NeedRank } from './order-instance.ts';
import { addGroup, type GroupVariables } from './order-model-needs.ts';
import { addPacks, type PackVariables } from './order-model-packs.ts';
import { addSupply } from './order-model-supply.ts';
import { greatestDivisor } from './order-quantity.ts';

/** What the program is to make as good as it can be: as many needs of a rank as possible, or the cost. */
export type OrderGoal = { readonly kind: 'met'; readonly rank: NeedRank } | { readonly kind: 'cost' };

/** How many needs must be met: every one that could be by itself, or at least so many of each rank. */
export type OrderFloor = 'all' | ReadonlyMap<NeedRank, number>;

/** An order problem as a program, and which variable says what. The variables are the same for every goal, and for every floor but `all`. */
export interface OrderModel {
  readonly program: Program;
  /** The program's cost is in so many minor units (the greatest that divides every sum), or in needs not met. */
  readonly minorEach: number;
  readonly packs: ReadonlyMap<string, PackVariables>;
  readonly groups: readonly GroupVariables[];
}

/**
 * Writes an order problem as a program: whole packs, one choice for each supplier used and each free delivery reached, shares of the needs
 * from each source, alike needs together. Every share is bound to its supplier and to its packs by a row of its own, which keeps the
 * relaxation tight.
 */
export function orderModel(facts: OrderFacts, goal: OrderGoal, floor: OrderFloor): OrderModel {
  const draft = draftProgram();
  const minorEach = minorUnit(facts);
  const cost = (minor: number) => (goal.kind === 'cost' ? minor / minorEach : 0);
  const packs = addPacks(draft, facts, cost);
  const groups = groupNeeds(facts, floor === 'all').map((group) =>
    addGroup(draft, group, (need) => ({
      metCost: goal.kind === 'met' && need.rank === goal.rank ? -1 : 0,
      laterCost: cost(need.laterMinor ?? 0),
      mustMeet: floor === 'all',
    })),
  );
  addSupply(draft, facts, packs, groups.flatMap(({ takes }) => takes));
  if (floor !== 'all') addFloors(draft, groups, floor);
  return { program: draft.program(), minorEach, packs, groups };
}

/** More than any order of the program can cost, in minor units: the sum of all packs it allows; and the offer that adds most to it. */
export function largestSum(facts: OrderFacts): { readonly sumMinor: number; readonly dearest: { readonly offer: string; readonly minor: number } | null } {
  const { program, minorEach, packs } = orderModel(facts, { kind: 'cost' }, new Map());
  const costs = program.variables.map(({ upper, cost }) => upper * Math.max(0, cost) * minorEach);
  const offers = [...packs].map(([offer, { packs: ranges }]) => ({ offer, minor: Math.max(0, ...ranges.map((at) => costs[at] ?? 0)) }));
  return { sumMinor: costs.reduce((sum, cost) => sum + cost, 0), dearest: offers.sort((a, b) => b.minor - a.minor)[0] ?? null };
}

function addFloors(draft: ProgramDraft, groups: readonly GroupVariables[], floor: ReadonlyMap<NeedRank, number>): void {
  for (const [rank, least] of floor) {
    const counted = groups.filter(({ group }) => group.members.some((need) => isMeetable(need) && need.need.rank === rank));
    draft.row(least, counted.map(({ met }) => [met, 1]), Infinity);
  }
}

/** Every sum of money in the problem is a whole number of these. */
function minorUnit({ offers, instance }: OrderFacts): number {
  const prices = offers.flatMap((offer) => offer.prices.map(({ priceMinor }) => priceMinor));
  const others = [...instance.suppliers.map(({ deliveryMinor }) => deliveryMinor), ...instance.needs.map(({ laterMinor }) => laterMinor ?? 0)];
  return greatestDivisor([...prices, ...others]) || 1;
}
