import type { Facts } from '../journal/facts.ts';
import type { ChosenPlace } from '../sessions/plan-baseline.ts';
import type { PlanInput } from '../sessions/plan-problem.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { openTasks } from './plan-input.ts';

/** Where each task stands that is proposed or kept for today or later; what was proposed and has become no task since is passed over. */
export function standingChoices(facts: Facts, { today, tasks }: Pick<PlanInput, 'today' | 'tasks'>): readonly ChosenPlace[] {
  const known = new Set(tasks.map((task) => task.key));
  const ahead = facts.all(sessions).filter((one) => one.day >= today && (one.state === 'proposed' || isPinned(one)));
  return ahead.flatMap((one) => choicesOf(facts, one)).filter((one) => known.has(one.task));
}

/** The places of a session's open tasks. */
function choicesOf(facts: Facts, session: Session): readonly ChosenPlace[] {
  return openTasks(facts, session).map((task) => ({ task: taskKey(task), day: session.day, place: session.place }));
}
