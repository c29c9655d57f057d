import type { DayNumber } from '../calendar/local-date.ts';
import { dayNumber } from '../calendar/local-date.ts';
import type { HouseholdTask } from './household-task.ts';

/** The shortest interval that an early day is held against, in days. */
const SHORTEST_INTERVAL_DAYS = 30;
/** The interval taken where nobody knows since when it is counted (ours, no source). */
const UNKNOWN_INTERVAL_DAYS = 365;

/** What the day alone makes a task cost, in whole minor units; and the expected days early and late behind it. */
export interface WaitingCost {
  readonly earlyMinor: number;
  readonly lateMinor: number;
  readonly earlyDays: number;
  readonly lateDays: number;
}

/**
 * What doing a task on a day costs by the day: `V * mean max(0, X - t) / L + s * mean max(0, t - max(X, today))` over its nine equally
 * likely due days X; L is the mean interval, 30 days at least. Lateness before today is sunk. Within the window in which a certificate
 * keeps its date nothing is early. Each of the two terms is rounded to a whole minor unit by itself, halves up, so that they add up.
 *
 * Source: DESIGN section 4, "Cost of a task on day t".
 * @example waitingCost(task, day, today) //=> { earlyMinor: 120, lateMinor: 0, earlyDays: 14.2, lateDays: 0 }
 */
export function waitingCost(task: HouseholdTask, day: DayNumber, today: DayNumber): WaitingCost {
  const due = task.dueDays;
  if (due.length === 0) return { earlyMinor: 0, lateMinor: 0, earlyDays: 0, lateDays: 0 };
  const earlyDays = losesNothing(task, day) ? 0 : mean(due.map((x) => Math.max(0, x - day)));
  const lateDays = mean(due.map((x) => Math.max(0, day - Math.max(x, today))));
  return {
    earlyDays,
    lateDays,
    earlyMinor: rounded((task.valueMinor * earlyDays) / intervalDays(task)),
    lateMinor: rounded(task.lateMinorADay * lateDays),
  };
}

/** L: the mean length of the interval in days. */
export function intervalDays(task: HouseholdTask): number {
  if (task.countedFrom === null) return UNKNOWN_INTERVAL_DAYS;
  return Math.max(SHORTEST_INTERVAL_DAYS, mean(task.dueDays) - task.countedFrom);
}

function losesNothing({ legal }: HouseholdTask, day: DayNumber): boolean {
  return legal !== null && (legal.opens === null || day >= dayNumber(legal.opens));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Halves go up; what is below half of the smallest coin is nothing. */
function rounded(minor: number): number {
  return Math.floor(minor + 0.5);
}
