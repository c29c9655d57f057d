import { dayNumber, type DayNumber, type LocalDate } from '../calendar/local-date.ts';
import { wearDay } from '../care/nine-due-days.ts';
import type { BudgetTask, NextDue } from './budget-input.ts';
import type { DistancePath, MonthsAfter } from './budget-path.ts';

/** One case of what is to come, for one car. */
export interface DueCase {
  readonly today: DayNumber;
  /** The first day after the months looked at. */
  readonly end: DayNumber;
  /** Standard deviations of the car's use from the likely one, and what it is driven then; null without a reading. */
  readonly z: number;
  readonly path: DistancePath | null;
  readonly monthsAfter: MonthsAfter;
  /** Days from due to done. */
  readonly lag: () => number;
}

/** One time of a task: when it falls due, and when it is done and paid. */
export interface DueTime {
  readonly due: DayNumber;
  readonly day: DayNumber;
}

/** More times than this of one thing are a slip of its interval. */
const MOST_TIMES = 400;

/**
 * The times of a task from today up to the end: what is late is done today; after each, the next follows by the repeat interval
 * from the day on which it was done. A kept session's day comes before what is due.
 *
 * @example timesOf(oilEvery12Months, oneCase) //=> [{ due: 20786, day: 20786 }, { due: 21151, day: 21151 }]
 */
export function timesOf(task: BudgetTask, one: DueCase): readonly DueTime[] {
  const times: DueTime[] = [];
  const first = firstDue(task, one);
  const session = task.sessionOn === null ? null : Math.max(one.today, dayNumber(task.sessionOn));
  let due = first ?? session;
  let day = session ?? (due === null ? null : doneOn(task, due, one, one.today));
  const wearLife = lifeOf(task, one);
  while (due !== null && day !== null && day < one.end && times.length < MOST_TIMES) {
    times.push({ due, day });
    due = earliestOf(nextDue(task.next, day, due, one), wearLife === null ? null : day + wearLife);
    day = due === null ? null : doneOn(task, due, one, day + 1);
  }
  return times;
}

/** What is late is not made later by habit: it is next. */
function doneOn(task: BudgetTask, due: DayNumber, one: DueCase, soonest: DayNumber): DayNumber {
  if (task.punctual || due < one.today) return Math.max(soonest, due);
  return Math.max(soonest, due + one.lag());
}

function firstDue({ first }: BudgetTask, { z, path, end }: DueCase): DayNumber | null {
  const unforeseen = end + 1;
  const byDistance = first.reachedOn !== null ? dayNumber(first.reachedOn) : first.km === null ? null : (path?.reaches(first.km) ?? null);
  const byWear = first.wear === null ? null : wearDay(first.wear, z, unforeseen);
  return earliestOf(numberOf(first.date), numberOf(first.printedDate), byDistance, byWear);
}

function numberOf(date: LocalDate | null): DayNumber | null {
  return date === null ? null : dayNumber(date);
}

/** How long a thing that wears lasts, by the one in use: from when it was new to its limit. Null where it has no wear or no known beginning. */
function lifeOf({ first, lastDone }: BudgetTask, { z, end }: DueCase): number | null {
  if (first.wear === null || lastDone === null) return null;
  const life = wearDay(first.wear, z, end + 1) - dayNumber(lastDone);
  return life > 0 ? life : null;
}

function nextDue(next: NextDue, done: DayNumber, due: DayNumber, { path, monthsAfter }: DueCase): DayNumber | null {
  switch (next.kind) {
    case 'completion': {
      const byTime = next.months === null ? null : monthsAfter(done, next.months);
      return earliestOf(byTime, next.km === null || path === null ? null : path.reaches(path.kmOn(done) + next.km));
    }
    case 'calendar': {
      const from = dayNumber(next.firstDate);
      for (let step = Math.max(0, Math.floor((Math.max(done, due) - from) / (31 * next.months))); ; step += 1) {
        const day = monthsAfter(from, step * next.months);
        if (day > done && day > due) return day;
      }
    }
    case 'certificate': {
      const kept = next.keepsDate && done <= due && done > monthsAfter(due, -1);
      return kept || done === due ? monthsAfter(due, next.months) : monthsAfter(done, next.months) - 1;
    }
    case 'never':
      return null;
  }
}

function earliestOf(...days: readonly (DayNumber | null)[]): DayNumber | null {
  let first: DayNumber | null = null;
  for (const day of days) if (day !== null && (first === null || day < first)) first = day;
  return first;
}
