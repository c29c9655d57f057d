import type { LocalDate } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { taskTerms } from './compose-plan-problem.ts';
import type { ChosenPlace } from './plan-baseline.ts';
import type { LeftTerms, PlanProblem, TaskTerms } from './plan-problem.ts';

/** A session of a plan with what it costs to hold. */
export interface AccountedSession {
  readonly day: LocalDate;
  readonly place: string;
  readonly tasks: readonly string[];
  readonly minutes: number;
  readonly openingMinor: number;
  readonly minutesMinor: number;
}

/** What a plan costs, every minor unit of it under its heading; the headings sum to the total. */
export interface PlanAccount {
  readonly totalMinor: number;
  readonly openingMinor: number;
  readonly minutesMinor: number;
  readonly priceMinor: number;
  readonly earlyMinor: number;
  readonly lateMinor: number;
  readonly leftMinor: number;
  /** Expected days late, over all tasks. */
  readonly lateDays: number;
  readonly sessions: readonly AccountedSession[];
  readonly left: readonly string[];
  readonly terms: ReadonlyMap<string, TaskTerms>;
  readonly leftTerms: ReadonlyMap<string, LeftTerms>;
}

/**
 * What any choice of days and places costs, allowed or not, added up from the terms of each task without a solver: sessions by day and
 * then by the order of places, tasks in the order of the instance. What is not chosen is left out.
 */
export function planAccount(problem: PlanProblem, chosen: readonly ChosenPlace[]): PlanAccount {
  const at = new Map(chosen.map((one) => [one.task, one]));
  const sessions = sessionsOf(problem, at);
  const placed = problem.instance.tasks.filter((task) => at.has(task.id));
  const terms = new Map(placed.map((task) => {
    const { day, place } = must(at.get(task.id), 'day of a task');
    return [task.id, taskTerms(problem.input, must(problem.tasks.get(task.id), 'task'), day, place)] as const;
  }));
  const left = problem.instance.tasks.filter((task) => !at.has(task.id)).map((task) => task.id);
  const leftTerms = new Map(left.map((key) => [key, must(problem.left.get(key), 'cost of leaving')] as const));
  const sumOf = (pick: (one: TaskTerms) => number) => sum([...terms.values()].map(pick));
  const heads = {
    openingMinor: sum(sessions.map((one) => one.openingMinor)),
    minutesMinor: sum(sessions.map((one) => one.minutesMinor)),
    priceMinor: sumOf((one) => one.priceMinor),
    earlyMinor: sumOf((one) => one.earlyMinor),
    lateMinor: sumOf((one) => one.lateMinor),
    leftMinor: sum([...leftTerms.values()].map((one) => one.totalMinor)),
  };
  const lateDays = sumOf((one) => one.lateDays) + sum([...leftTerms.values()].map((one) => one.lateDays));
  return { totalMinor: sum(Object.values(heads)), ...heads, lateDays, sessions, left, terms, leftTerms };
}

function sessionsOf({ instance }: PlanProblem, at: ReadonlyMap<string, ChosenPlace>): readonly AccountedSession[] {
  const days = [...new Set([...at.values()].map((one) => one.day))].sort();
  return days.flatMap((day) => instance.places.flatMap((place) => {
    const held = instance.tasks.filter((task) => at.get(task.id)?.day === day && at.get(task.id)?.place === place.id);
    if (held.length === 0) return [];
    const opened = instance.access.filter((group) => held.some((task) => task.car === group.car && task.access.includes(group.id)));
    const minutes = sum(held.map((task) => task.minutes)) + sum(opened.map((group) => group.minutes));
    return [{ day, place: place.id, tasks: held.map((task) => task.id), minutes, openingMinor: place.openingMinor, minutesMinor: minutes * place.minuteMinor }];
  }));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
