import { later, type LocalDate } from '../calendar/local-date.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlanInstance, PlanTask } from './plan-instance.ts';
import type { PlanProblem } from './plan-problem.ts';
import { emptyRoom } from './plan-room.ts';

/** A task on a day at a place. */
export interface ChosenPlace {
  readonly task: string;
  readonly day: LocalDate;
  readonly place: string;
}

/**
 * What one would do without a plan: each task on its first open day at or after the likely date (from today where it is late), at its
 * cheaper place; a legal one on the last open day it has; one likely due after the horizon is left. A day that is full, or that would
 * leave no everyday car, is not open. Null where something that must be done finds no day.
 *
 * Source: DESIGN section 4, "Saving of a plan".
 */
export function planBaseline(problem: PlanProblem): readonly ChosenPlace[] | null {
  const { instance } = problem;
  const room = emptyRoom(instance);
  const chosen: ChosenPlace[] = [];
  for (const task of inOrder(problem)) {
    const spot = spotsOf(problem, task).find((one) => room.fits(task, one.day, one.place));
    if (spot === undefined && task.mustDo) return null;
    if (spot === undefined) continue;
    room.put(task, spot.day, spot.place);
    chosen.push({ task: task.id, day: spot.day, place: spot.place });
  }
  return chosen;
}

/** What has only one day to stand on first, then what is due first. */
function inOrder({ instance, tasks }: PlanProblem): readonly PlanTask[] {
  const rank = (task: PlanTask) => (task.mustDo ? 0 : 1);
  const due = (task: PlanTask) => tasks.get(task.id)?.likely ?? '9999';
  return [...instance.tasks].sort((a, b) => rank(a) - rank(b) || spotCount(a) - spotCount(b) || compare(due(a), due(b)) || compare(a.id, b.id));
}

/** Only what must be done is ranked by how little choice it has. */
function spotCount(task: PlanTask): number {
  return task.mustDo ? Object.values(task.costMinor).flat().filter((cost) => cost !== null).length : 0;
}

interface Spot {
  readonly day: LocalDate;
  readonly place: string;
}

/** Where a task would go, the first choice first: place by place, the cheaper first, each with its days in order. */
function spotsOf(problem: PlanProblem, task: PlanTask): readonly Spot[] {
  const known = problem.tasks.get(task.id);
  if (known === undefined) return [];
  const places = [...problem.instance.places].sort((a, b) => priceAt(known, a.id, task.minutes * a.minuteMinor) - priceAt(known, b.id, task.minutes * b.minuteMinor));
  const days = places.flatMap(({ id }) => daysAt(problem.instance, task, id).map((day) => ({ day, place: id })));
  if (task.mustDo && known.legal !== null && !known.late) return days.sort((a, b) => compare(b.day, a.day));
  if (task.mustDo) return days;
  const from = known.late ? problem.input.today : known.likely;
  return from === null || from > problem.lastDay ? [] : days.filter((one) => one.day >= later(from, problem.input.today));
}

function priceAt(task: HouseholdTask, place: string, minutesMinor: number): number {
  return (task.prices.get(place) ?? Infinity) + minutesMinor;
}

function daysAt(instance: PlanInstance, task: PlanTask, place: string): readonly LocalDate[] {
  return instance.days.filter((_day, at) => (task.costMinor[place]?.[at] ?? null) !== null);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

