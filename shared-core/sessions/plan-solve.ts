import type { Solver } from '../integer-program/solver.ts';
import { ok, type Result } from '../result/result.ts';
import type { PlanAnswer } from './plan-answer.ts';
import { composePlan } from './plan-compose.ts';
import { moveEarlier } from './plan-improve.ts';
import { boardWith } from './plan-insert.ts';
import type { PlanInstance } from './plan-instance.ts';
import { provePlan, type PlanOptions } from './plan-prove.ts';
import { offerBoard, startQuest } from './plan-quest.ts';
import { firstPlan } from './plan-start.ts';
import { workOutPlan } from './work-out-plan.ts';

/**
 * The cheapest plan, or the best found with its bound where a stop came, or where the work was measured and used up. Of plans of equal cost it
 * takes one whose tasks stand as early as single moves can bring them. Refuses `figures-too-large`, `plan-must-do-not-all` and `plan-not-found`.
 *
 * @example
 * const read = readPlanInstance(JSON.parse(text));
 * if (read.ok) await solvePlan(read.value, solver); //=> { ok: true, value: { status: 'optimal', totalMinor: 8250, ... } }
 */
export async function solvePlan(instance: PlanInstance, solver: Solver, options: PlanOptions = {}): Promise<Result<PlanAnswer>> {
  const facts = workOutPlan(instance);
  if (!facts.ok) return facts;
  const first = await firstPlan(facts.value, solver, options);
  if (!first.ok) return first;
  const quest = startQuest(facts.value, first.value);
  await provePlan(quest, solver, options);
  const board = boardWith(quest.facts, quest.placement);
  moveEarlier(board);
  offerBoard(quest, board);
  return ok(composePlan(quest, board));
}
