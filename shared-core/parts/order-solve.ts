import type { SolveOptions, Solver } from '../integer-program/solver.ts';
import { refuse, type Result } from '../result/result.ts';
import type { OrderAnswer } from './order-answer.ts';
import { foundIn, solveCheapest, type CheapestOrder } from './order-cheapest.ts';
import { composeAnswer } from './order-compose.ts';
import type { OrderFacts } from './order-facts.ts';
import { isMeetable } from './order-groups.ts';
import type { NeedRank, OrderInstance } from './order-instance.ts';
import { largestSum, orderModel, type OrderModel } from './order-model.ts';
import { workOutOrder } from './work-out-order.ts';

/** Limits hold for each of the programs solved: one where all needs can be met together, otherwise up to five. */
export type OrderOptions = Pick<SolveOptions, 'nodeLimit' | 'iterationLimit' | 'timeLimitSeconds' | 'onProgress' | 'stop'>;

/**
 * The cheapest order that meets as many needs as possible, rank by rank. First it is tried to meet all needs that have a source; where that
 * cannot be, as many as possible of rank 0 are met, then of 1, then of 2, then the cost is made least: each in a program of its own.
 * Refuses `figures-too-large`, or `offer-too-large` where one offer alone is, and `order-not-found` where a limit or a stop came before any order was found.
 *
 * @example
 * const read = readOrderInstance(JSON.parse(text));
 * if (read.ok) await solveOrder(read.value, solver); //=> { ok: true, value: { status: 'optimal', totalMinor: 3994, ... } }
 */
export async function solveOrder(instance: OrderInstance, solver: Solver, options: OrderOptions = {}): Promise<Result<OrderAnswer>> {
  const facts = workOutOrder(instance);
  if (!facts.ok) return facts;
  const { sumMinor, dearest } = largestSum(facts.value);
  if (dearest !== null && dearest.minor > Number.MAX_SAFE_INTEGER) return refuse('offer-too-large', { offer: dearest.offer });
  if (sumMinor > Number.MAX_SAFE_INTEGER) return refuse('figures-too-large');
  for (const tolerance of [1e-6, 1e-9]) {
    // All costs are whole, so a gap below 1 proves as much as none.
    const found = await solveStages({ facts: facts.value, solver, options: { ...options, tolerance, absoluteGap: 0.9, relativeGap: 0 } });
    if (found === null) return refuse('order-not-found');
    const answer = composeAnswer(found.facts, found.solved);
    if (answer !== null) return { ok: true, value: answer };
  }
  throw new Error('Bug: the solution does not bear being reckoned exactly');
}

interface Solving {
  readonly facts: OrderFacts;
  readonly solver: Solver;
  readonly options: SolveOptions;
}

/** A solution and the problem it speaks of. */
type Solved = Pick<CheapestOrder, 'facts' | 'solved'>;

async function solveStages({ facts, solver, options }: Solving): Promise<Solved | null> {
  const all = await solveCheapest(facts, 'all', solver, options);
  if (all !== 'infeasible' && (all !== null || options.stop?.stopped === true)) return all;
  const floor = new Map<NeedRank, number>();
  let [before, proved]: [{ readonly model: OrderModel; readonly values: readonly number[] } | null, boolean] = [null, true];
  for (const rank of [0, 1, 2] as const) {
    if (!facts.needs.some((need) => isMeetable(need) && need.need.rank === rank)) continue;
    const model = orderModel(facts, { kind: 'met', rank }, floor);
    const answer = await solver.solve(model.program, { ...options, ...(before === null ? {} : { start: before.values }) });
    const found = foundIn(answer);
    if (found === null) return null;
    floor.set(rank, Math.round(-found.objective));
    before = { model, values: found.values };
    proved &&= answer.status === 'optimal';
  }
  const cheapest = await solveCheapest(facts, floor, solver, options);
  if (cheapest === 'infeasible') throw new Error('Bug: what was met can be met');
  if (cheapest !== null) return { ...cheapest, solved: { ...cheapest.solved, bound: proved ? cheapest.solved.bound : null } };
  return before === null ? null : { facts, solved: { ...before, bound: null } };
}
