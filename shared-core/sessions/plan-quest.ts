import type { SolveProgress, StopSignal } from '../integer-program/solver.ts';
import { must } from '../result/assert.ts';
import { penaltiesOf, type PlanBound } from './plan-bound.ts';
import type { Board } from './plan-board.ts';
import type { Placement, PlanFacts } from './plan-facts.ts';
import { greatestDivisor, slotKnapsacks, type Keep, type SlotKnapsack } from './plan-knapsack.ts';
import { patternKey, patternOf, type PlanPattern } from './plan-pattern.ts';

/** What is known of a plan while it is looked for: the best plan so far, and what has been proved. */
export interface Quest {
  readonly facts: PlanFacts;
  /** Every plan's cost is a multiple of this. */
  readonly grain: number;
  /** The best plan so far and its cost. */
  placement: Placement;
  totalMinor: number;
  /** No plan costs less than this. */
  provedMinor: number;
  /** What prices prove of the options that still matter. */
  priced: PlanBound | null;
  sacks: readonly SlotKnapsack[];
  /** Which options still matter: no plan cheaper than the best takes another. */
  keep: Keep;
  /** Sessions to make plans of: what was the best of its slot under some prices, and what a plan near the bound could hold. */
  readonly pool: Map<string, PlanPattern>;
}

/** How a long search breathes: it tells how far it is, lets others have their turn, and hears that it is to stop. */
export interface QuestOptions {
  readonly onProgress?: (progress: SolveProgress) => void;
  readonly stop?: StopSignal;
  /** Waited for every few milliseconds, so that the thread can do other things. */
  readonly pause?: () => Promise<void>;
}

/** Starts from a plan that places every must-do task. */
export function startQuest(facts: PlanFacts, board: Board): Quest {
  const keep: Keep = () => true;
  const sacks = slotKnapsacks(facts, keep);
  return { facts, grain: grainOf(facts), placement: board.placement.slice(), totalMinor: board.totalMinor, provedMinor: 0, priced: null, sacks, pool: new Map(), keep };
}

/** The largest number that divides every sum of money in the problem. */
function grainOf({ slots, tasks, groups }: PlanFacts): number {
  const opened = slots.flatMap(({ openingMinor, minuteMinor }) => [openingMinor, ...groups.map(({ minutes }) => minutes * minuteMinor)]);
  const placed = tasks.flatMap(({ options, leftMinor, mustDo }) => [...options.map(({ costMinor }) => costMinor), ...(mustDo ? [] : [leftMinor])]);
  return [...opened, ...placed].reduce(greatestDivisor, 0) || 1;
}

/** Takes over a board where it is better than what is known. */
export function offerBoard(quest: Quest, board: Board): void {
  if (board.totalMinor >= quest.totalMinor) return;
  quest.totalMinor = board.totalMinor;
  quest.placement = board.placement.slice();
}

/** Notes that no plan costs less than a sum; what is better than the best plan means that it is the cheapest. */
export function noteProved(quest: Quest, minor: number): void {
  const whole = Math.ceil(minor / quest.grain - 1e-6) * quest.grain;
  quest.provedMinor = Math.max(quest.provedMinor, Math.min(whole, quest.totalMinor));
}

/** Whether the best plan is proved to be the cheapest. */
export function isProved(quest: Quest): boolean {
  return quest.provedMinor >= quest.totalMinor;
}

/** Drops every option that no plan cheaper than the best can take; what is proved from then on holds for plans cheaper than the best. */
export function dropOptions(quest: Quest): void {
  const { facts, sacks, priced } = quest;
  if (priced === null) return;
  const penalties = penaltiesOf(facts, sacks, priced);
  const gap = quest.totalMinor - quest.grain - priced.minor;
  quest.keep = (task, slot) => (penalties[slot * facts.tasks.length + task] ?? Infinity) <= gap;
  quest.sacks = slotKnapsacks(facts, quest.keep);
}

/** Remembers the best sessions of a bound. */
export function rememberSessions({ facts, pool }: Quest, { sessions }: PlanBound): void {
  sessions.forEach(({ tasks }, slot) => {
    const pattern = tasks.length === 0 ? null : patternOf(facts, slot, tasks);
    if (pattern !== null) pool.set(patternKey(pattern), pattern);
  });
}

/** The sessions of the best plan. */
export function sessionsOf({ facts, placement }: Quest): readonly PlanPattern[] {
  const slots = [...new Set(placement)].filter((slot) => slot >= 0).sort((a, b) => a - b);
  return slots.map((slot) => must(patternOf(facts, slot, [...placement.keys()].filter((task) => placement[task] === slot)), 'room in a plan'));
}
