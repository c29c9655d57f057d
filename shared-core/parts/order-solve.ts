import type { FoundValues, ProgramAnswer, SolveOptions, Solver } from '../integer-program/solver.ts';
import { assertNever } from '../result/assert.ts';
import { refuse, type Result } from '../result/result.ts';
import type { OrderAnswer } from './order-answer.ts';
import { composeAnswer, type SolvedOrder } from './order-compose.ts';
import type { OrderFacts } from './order-facts.ts';
import { isMeetable } from './order-groups.ts';
import type { NeedRank, OrderInstance } from './order-instance.ts';
import { largestSumMinor, orderModel, type OrderFloor, type OrderGoal, type OrderModel } from './order-model.ts';
import { workOutOrder } from './work-out-order.ts';

/** Limits hold for each of the programs solved: one where all needs can be met together, otherwise up to five. */
export type OrderOptions = Pick<SolveOptions, 'nodeLimit' | 'iterationLimit' | 'timeLimitSeconds' | 'onProgress' | 'stop'>;

/**
 * The cheapest order that meets as many needs as possible, rank by rank. First it is tried to meet all needs that have a source; where that
 * cannot be, as many as possible of rank 0 are met, then of 1, then of 2, then the cost is made least: each in a program of its own.
 * Refuses `figures-too-large`, and `order-not-found` where a limit or a stop came before any order was found.
 *
 * @example
 * const read = readOrderInstance(JSON.parse(text));
 * if (read.ok) await solveOrder(read.value, solver); //=> { ok: true, value: { status: 'optimal', totalMinor: 3994, ... } }
 */
export async function solveOrder(instance: OrderInstance, solver: Solver, options: OrderOptions = {}): Promise<Result<OrderAnswer>> {
  const facts = workOutOrder(instance);
  if (!facts.ok) return facts;
  if (largestSumMinor(facts.value) > Number.MAX_SAFE_INTEGER) return refuse('figures-too-large');
  for (const tolerance of [1e-6, 1e-9]) {
    const solved = await solveStages({ facts: facts.value, solver, options: { ...options, tolerance } });
    if (solved === null) return refuse('order-not-found');
    const answer = composeAnswer(facts.value, solved);
    if (answer !== null) return { ok: true, value: answer };
  }
  throw new Error('Bug: the solution does not bear being reckoned exactly');
}

interface Solving {
  readonly facts: OrderFacts;
  readonly solver: Solver;
  readonly options: SolveOptions;
}

async function solveStages(solving: Solving): Promise<SolvedOrder | null> {
  const all = await solveFor(solving, { kind: 'cost' }, 'all', null);
  const solved = all.answer.status === 'infeasible' ? null : solvedOf(all.model, all.answer, true, null);
  if (solved !== null || solving.options.stop?.stopped === true) return solved;
  const floor = new Map<NeedRank, number>();
  let [start, proved]: [readonly number[] | null, boolean] = [null, true];
  for (const rank of [0, 1, 2] as const) {
    if (!solving.facts.needs.some((need) => isMeetable(need) && need.need.rank === rank)) continue;
    const { answer } = await solveFor(solving, { kind: 'met', rank }, floor, start);
    const found = foundIn(answer);
    if (found === null) return null;
    floor.set(rank, Math.round(-found.objective));
    start = found.values;
    proved &&= answer.status === 'optimal';
  }
  const { model, answer } = await solveFor(solving, { kind: 'cost' }, floor, start);
  return solvedOf(model, answer, proved, start);
}

async function solveFor({ facts, solver, options }: Solving, goal: OrderGoal, floor: OrderFloor, start: readonly number[] | null) {
  const model = orderModel(facts, goal, floor);
  // All costs are whole, so a gap below 1 proves as much as none.
  const answer = await solver.solve(model.program, { ...options, absoluteGap: 0.9, relativeGap: 0, ...(start === null ? {} : { start }) });
  return { model, answer };
}

/** The best values of an answer; the values of the stage before where this one found none. */
function solvedOf(model: OrderModel, answer: ProgramAnswer, proved: boolean, before: readonly number[] | null): SolvedOrder | null {
  const values = foundIn(answer)?.values ?? before;
  if (values === null) return null;
  const bound = answer.status === 'optimal' || answer.status === 'stopped' ? answer.bound : null;
  return { model, values, bound: proved ? bound : null };
}

function foundIn(answer: ProgramAnswer): FoundValues | null {
  switch (answer.status) {
    case 'optimal':
      return answer;
    case 'stopped':
      return answer.best;
    case 'infeasible':
      throw new Error('Bug: an order that meets no need at all is always allowed');
    case 'unbounded':
      throw new Error('Bug: no order costs less than nothing');
    default:
      return assertNever(answer);
  }
}
