import { must } from '../result/assert.ts';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { whyNoLegalDay } from './check-legal-dates.ts';
import { isLegalNow } from './compose-plan-problem.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlanAccount } from './plan-account.ts';
import type { PlanTask } from './plan-instance.ts';
import type { PlanProblem } from './plan-problem.ts';
import { money } from './plan-why.ts';
import { notPriced, whyNowhere } from './why-nowhere.ts';

/**
 * Why a task is left out of a plan: it has no day at all; it is due later; doing it would cost more than leaving it; or the days on
 * which it would be worth its cost are full.
 */
export function whyLeft(problem: PlanProblem, account: PlanAccount, key: string, currency: string): Message {
  const task = must(problem.tasks.get(key), 'task');
  const left = must(account.leftTerms.get(key), 'cost of leaving');
  const planned = must(problem.instance.tasks.find((one) => one.id === key), 'task of the instance');
  const cheapest = cheapestMinor(problem, account, planned);
  const values = { last: problem.lastDay, likely: task.likely, amount: money(left.totalMinor, currency) };
  if (cheapest === null) return noDay(problem, task, values);
  if (task.likely !== null && task.likely > problem.lastDay) return { key: 'left-not-yet', values };
  if (cheapest >= left.totalMinor) return { key: 'left-dearer', values: { ...values, cost: money(cheapest, currency) } };
  return { key: 'left-no-room', values };
}

/** It has no place, or no day at any: then what is in the way says what would help. */
function noDay(problem: PlanProblem, task: HouseholdTask, values: Message['values']): Message {
  const { input, lastDay } = problem;
  if (task.legal !== null && !task.late && isLegalNow(task, lastDay)) {
    const refused = whyNoLegalDay(problem, task);
    if (refused !== null) return { key: refused.code, values: refused.values };
  }
  const unpriced = notPriced(input, task);
  if (task.prices.size === 0) return unpriced === null ? { key: 'left-no-place', values } : { key: 'left-not-priced', values: { ...values, why: say(unpriced) } };
  const why = whyNowhere(input, task, lastDay);
  if (why === null) return { key: 'left-no-day', values };
  return { key: 'left-no-day-for', values: { ...values, why: [why, ...(unpriced === null ? [] : [unpriced])].map(say).join(' ') } };
}

/** The least that the task would add to the plan anywhere, if every day had room: its own cost, its minutes, an opening where there is no session yet. */
function cheapestMinor({ instance }: PlanProblem, { sessions }: PlanAccount, task: PlanTask): number | null {
  const costs = instance.places.flatMap((place) => instance.days.flatMap((day, at) => {
    const own = task.costMinor[place.id]?.[at] ?? null;
    if (own === null) return [];
    const held = sessions.some((one) => one.day === day && one.place === place.id);
    return [own + task.minutes * place.minuteMinor + (held ? 0 : place.openingMinor)];
  }));
  return costs.length === 0 ? null : Math.min(...costs);
}
