import { directSolver } from '../../../electron/solver/highs-instance.ts';
import { composePlanProblem } from '../../../shared-core/sessions/compose-plan-problem.ts';
import { planAccount, type PlanAccount } from '../../../shared-core/sessions/plan-account.ts';
import type { PlanAnswer } from '../../../shared-core/sessions/plan-answer.ts';
import { taskKey } from '../../../shared-core/sessions/task-ref.ts';
import type { PlanProblem } from '../../../shared-core/sessions/plan-problem.ts';
import { assert } from '../../../shared-core/result/assert.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { verifyPlan } from '../../../shared-core/sessions/plan-verify.ts';
import { choiceFaults } from '../../../shared-core/sessions/choice-faults.ts';
import { chosenOf, planView } from '../../../shared-core/views/plan-view.ts';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { planInput } from '../../../shared-core/views/plan-input.ts';
import { checkLegalDates } from '../../../shared-core/sessions/check-legal-dates.ts';
import { PLAN_TODAY, seededHousehold } from './plan-households.ts';

/** A plan of a seeded household, or the code it was refused with. */
export type SeededPlan = { readonly problem: PlanProblem; readonly answer: PlanAnswer; readonly view: PlanView } | { readonly refused: string };

const solver = directSolver();

export async function seededPlan(seed: number): Promise<SeededPlan> {
  const problem = composePlanProblem(planInput(seededHousehold(seed).facts(), PLAN_TODAY, null));
  const legal = checkLegalDates(problem);
  if (!legal.ok) return { refused: legal.refusal.code };
  const answer = await solvePlan(problem.instance, solver);
  if (!answer.ok) return { refused: answer.refusal.code };
  return { problem, answer: answer.value, view: planView(problem, answer.value, 'EUR') };
}

/** A late task that could stand in an earlier session, and what the plan would then cost, as the verifier has it. */
export interface Laggard {
  readonly task: string;
  readonly to: string;
  readonly deltaMinor: number;
}

/** Every late task with each earlier session of the plan that can hold it, by the verifier: moved there the plan breaks no rule and adds up. */
export function laggards({ problem, answer }: { readonly problem: PlanProblem; readonly answer: PlanAnswer }): readonly Laggard[] {
  const chosen = chosenOf(answer);
  const pinned = new Set(problem.input.pinned.flatMap((session) => session.tasks.map(taskKey)));
  const late = [...problem.tasks.values()].filter((task) => task.late).map((task) => task.key);
  return late.flatMap((task) => {
    const now = chosen.find((one) => one.task === task)?.day ?? '9999';
    return answer.sessions.filter((session) => session.day < now).flatMap((session) => {
      const moved = { task, day: session.day, place: session.place };
      const account = planAccount(problem, [...chosen.filter((one) => one.task !== task), moved]);
      const refused = verifyPlan(problem.instance, unproven(account)).length > 0;
      // Two checks that share nothing say the same: the instance's verifier, and the household's own rules.
      assert(refused === (pinned.has(task) || choiceFaults(problem, account, [moved]).length > 0), `two verdicts on ${task} on ${session.day}`);
      if (refused) return [];
      return [{ task, to: `${session.day} ${session.place}`, deltaMinor: account.totalMinor - answer.totalMinor }];
    });
  });
}

/** Any choice as an answer of which no proof is claimed. */
function unproven({ totalMinor, sessions, left }: PlanAccount): PlanAnswer {
  return { status: totalMinor === 0 ? 'optimal' : 'stopped', totalMinor, boundMinor: 0, sessions: sessions.map(({ day, place, tasks, minutes }) => ({ day, place, tasks: [...tasks], minutes })), left: [...left] };
}
