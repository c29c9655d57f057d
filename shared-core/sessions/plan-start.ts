import type { Solver } from '../integer-program/solver.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { emptyBoard, type Board } from './plan-board.ts';
import { LEFT, type PlanFacts } from './plan-facts.ts';
import { improve } from './plan-improve.ts';
import { boardWith, insertAll } from './plan-insert.ts';
import { placementIn, planModel } from './plan-model.ts';
import { limitsOf, type PlanOptions } from './plan-prove.ts';

/**
 * A first plan, which places every must-do task. Where putting one task after another does not place them all, the solver looks for a way.
 * Refuses `plan-must-do-not-all` with a task that cannot be placed with the others, and `plan-not-found` where a limit or a stop came first.
 */
export async function firstPlan(facts: PlanFacts, solver: Solver, options: PlanOptions): Promise<Result<Board>> {
  const board = emptyBoard(facts);
  insertAll(board);
  improve(board);
  if (unplacedIn(board).length === 0) return ok(board);
  const model = planModel(facts, 'unplaced', () => true);
  const answer = await solver.solve(model.program, { ...limitsOf(options), absoluteGap: 0.9, relativeGap: 0 });
  const found = answer.status === 'optimal' ? answer : answer.status === 'stopped' ? answer.best : null;
  if (found === null || (answer.status === 'stopped' && found.objective > 0.5)) return refuse('plan-not-found');
  const placed = boardWith(facts, placementIn(facts, model, found.values));
  const unplaced = unplacedIn(placed);
  if (unplaced.length > 0) return refuse('plan-must-do-not-all', unplacedValues(facts, unplaced), ['tasks', must(unplaced[0], 'task')]);
  insertAll(placed);
  improve(placed);
  return ok(placed);
}

function unplacedIn({ facts, placement }: Board): readonly number[] {
  return [...facts.tasks.keys()].filter((task) => facts.tasks[task]?.mustDo === true && placement[task] === LEFT);
}

function unplacedValues({ instance }: PlanFacts, unplaced: readonly number[]): { tasks: string; count: number } {
  return { tasks: unplaced.map((task) => must(instance.tasks[task], 'task').id).join(', '), count: unplaced.length };
}
