import type { Refusal } from '../result/result.ts';
import type { PlanAnswer } from './plan-answer.ts';
import type { PlanInstance } from './plan-instance.ts';
import { minutesOf, tasksIn } from './plan-verify-sessions.ts';

/** Faults in the money: the total is reckoned anew in whole minor units, and `optimal` is said exactly when the bound reaches it. */
export function planMoneyFaults(instance: PlanInstance, answer: PlanAnswer): readonly Refusal[] {
  const is = totalOf(instance, answer);
  return [...(BigInt(answer.totalMinor) === is ? [] : [{ code: 'total-wrong', values: { said: answer.totalMinor, is: Number(is) }, path: ['totalMinor'] }]), ...proofFaults(answer)];
}

/** Openings, minutes and costs of all sessions, and what leaving the others out costs. */
function totalOf(instance: PlanInstance, { sessions, left }: PlanAnswer): bigint {
  let total = 0n;
  for (const session of sessions) {
    const place = instance.places.find(({ id }) => id === session.place);
    total += BigInt(place?.openingMinor ?? 0) + BigInt(minutesOf(instance, session)) * BigInt(place?.minuteMinor ?? 0);
    for (const task of tasksIn(instance, session)) total += BigInt(task.costMinor[session.place]?.[instance.days.indexOf(session.day)] ?? 0);
  }
  for (const task of instance.tasks) if (left.includes(task.id)) total += BigInt(task.leftUndoneMinor);
  return total;
}

function proofFaults({ totalMinor, boundMinor, status }: PlanAnswer): readonly Refusal[] {
  const values = { totalMinor, boundMinor };
  if (boundMinor > totalMinor || boundMinor < 0) return [{ code: 'bound-wrong', values, path: ['boundMinor'] }];
  const right = totalMinor - boundMinor < 1 ? 'optimal' : 'stopped';
  return status === right ? [] : [{ code: 'status-wrong', values, path: ['status'] }];
}
