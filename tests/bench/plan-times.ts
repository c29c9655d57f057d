import { directSolver } from '../../electron/solver/highs-instance.ts';
import { solvePlan } from '../../shared-core/sessions/plan-solve.ts';
import { verifyPlan } from '../../shared-core/sessions/plan-verify.ts';
import { readPlanInstance } from '../../shared-core/sessions/read-plan-instance.ts';
import { LARGE_PLAN, largePlan } from './large-plan.ts';
import { referenceMilliseconds } from './reference.ts';

/**
 * How long plans at the far end of what a household could ask take, how near to their bound they come, and how that compares with a program of
 * known work solved in the same run: `node tests/bench/plan-times.ts [first seed] [last seed]`. Prints; it judges nothing.
 */
const [first = 1, last = 6] = process.argv.slice(2).map(Number);
const reference = referenceMilliseconds() / 1000;
console.log(`${LARGE_PLAN.tasks} tasks, ${LARGE_PLAN.days} days, 2 places, ${LARGE_PLAN.cars} cars; the reference takes ${reference.toFixed(2)} s of the processor`);

for (let seed = first; seed <= last; seed += 1) {
  const read = readPlanInstance(largePlan(seed));
  if (!read.ok) throw new Error(`seed ${seed} was refused: ${read.refusal.code}`);
  const [started, used] = [performance.now(), process.cpuUsage()];
  const plan = await solvePlan(read.value, directSolver());
  const seconds = process.cpuUsage(used).user / 1e6;
  const spent = `${((performance.now() - started) / 1000).toFixed(1)} s (${seconds.toFixed(1)} s of the processor, ${(seconds / reference).toFixed(1)} times the reference)`;
  if (!plan.ok) {
    console.log(`seed ${seed}: ${plan.refusal.code} after ${spent}`);
    continue;
  }
  const { status, totalMinor, boundMinor, sessions } = plan.value;
  const faults = verifyPlan(read.value, plan.value).length;
  const gap = `${((100 * (totalMinor - boundMinor)) / Math.max(1, totalMinor)).toFixed(2)} %`;
  console.log(`seed ${seed}: ${status} ${totalMinor}, bound ${boundMinor} (${gap}), ${sessions.length} sessions, ${faults} faults, ${spent}`);
}
