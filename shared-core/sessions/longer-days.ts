import type { LocalDate } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import type { HouseholdTask } from './household-task.ts';
import { minutesTogether } from './minutes-together.ts';
import type { Place } from './place.ts';
import type { PlanTask } from './plan-instance.ts';
import type { PlanInput } from './plan-problem.ts';
import { taskKey } from './task-ref.ts';
import { minutesAlone, minutesOf } from './why-not-there.ts';

/**
 * The days that may hold more minutes at a place than it usually has, and how many: those on which a task may be done that takes longer
 * by itself than one likes to work, and those of pinned sessions that take longer.
 */
export function longerDays(input: PlanInput, place: Place, days: readonly LocalDate[], tasks: readonly PlanTask[]): readonly (readonly [LocalDate, number])[] {
  const long = longerThanLiked(input, place, tasks).flatMap(({ planned, minutes }) =>
    days.filter((_day, at) => (planned.costMinor[place.id]?.[at] ?? null) !== null).map((day) => [day, minutes] as const));
  const pinned = input.pinned.filter((one) => one.place === place.id).map((one) => [one.day, pinnedMinutes(input, one.tasks.map(taskKey))] as const);
  return [...long, ...pinned].filter(([, minutes]) => minutes > minutesOf(input, place)).sort(([, a], [, b]) => a - b);
}

/** A task that takes longer than one likes to work, and its minutes by itself. */
export interface LongTask {
  readonly planned: PlanTask;
  readonly task: HouseholdTask;
  readonly minutes: number;
}

/** Those of the tasks that may be done at a place within the plan, are not pinned, and take longer by themselves than one likes to work there. */
export function longerThanLiked(input: PlanInput, place: Place, tasks: readonly PlanTask[]): readonly LongTask[] {
  const pins = new Set(input.pinned.flatMap((one) => one.tasks.map(taskKey)));
  const known = new Map(input.tasks.map((task) => [task.key, task]));
  const open = tasks.filter((task) => !pins.has(task.id) && task.costMinor[place.id]?.some((cost) => cost !== null) === true);
  return open.flatMap((planned) => {
    const task = must(known.get(planned.id), 'task');
    const minutes = minutesAlone(input, task);
    return minutes > minutesOf(input, place) ? [{ planned, task, minutes }] : [];
  });
}

/** The minutes of a pinned session: what the keeper wants done in one day is their own judgement. */
function pinnedMinutes(input: PlanInput, keys: readonly string[]): number {
  return minutesTogether(input.accessGroups, input.tasks.filter((task) => keys.includes(task.key)));
}
