import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PlanAnswer } from '../../../shared-core/sessions/plan-answer.ts';
import type { PlanInstance, PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';
import type { PlanOptions } from '../../../shared-core/sessions/plan-prove.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { verifyPlan } from '../../../shared-core/sessions/plan-verify.ts';
import { readPlanInstance } from '../../../shared-core/sessions/read-plan-instance.ts';

type Written = PlanInstanceAsWritten;

/** One HiGHS for all tests of a file. */
const solver = directSolver();

/** The instance with its defaults; a test's own mistake throws. */
export function planInstanceOf(written: Written): PlanInstance {
  const read = readPlanInstance(written);
  if (!read.ok) throw new Error(JSON.stringify(read.refusal));
  return read.value;
}

/** Solves; an answer that its verifier refuses throws. */
export async function answered(written: Written, options?: PlanOptions): Promise<Result<PlanAnswer>> {
  const instance = planInstanceOf(written);
  const answer = await solvePlan(instance, solver, options);
  if (!answer.ok) return answer;
  const faults = verifyPlan(instance, answer.value);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return answer;
}

/** A proven plan that its verifier passes; a refusal throws. */
export async function provenPlan(written: Written): Promise<PlanAnswer> {
  const answer = await answered(written);
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  if (answer.value.status !== 'optimal') throw new Error(`not proven: ${answer.value.boundMinor} of ${answer.value.totalMinor}`);
  return answer.value;
}
