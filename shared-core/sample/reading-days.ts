import { addDays, daysBetween, monthOf, type LocalDate } from '../calendar/local-date.ts';
import { sampleRandom } from './sample-random.ts';

/** When a keeper of the sample reads an odometer. */
export interface ReadingHabit {
  readonly from: LocalDate;
  readonly last: LocalDate;
  /** Fewest and most days from one reading to the next. */
  readonly gapDays: readonly [number, number];
  readonly seed: number;
  /** While a car sleeps nobody reads it. */
  readonly laidUpMonths: readonly number[];
}

/**
 * The days of the readings: uneven gaps, none in a laid-up month, the last one on the day given or, where the car slept
 * then, on the last day before it slept.
 *
 * @example readingDays({ from: '2026-01-01', last: '2026-11-12', gapDays: [60, 120], seed: 5, laidUpMonths: [] }).at(-1) //=> '2026-11-12'
 */
export function readingDays(habit: ReadingHabit): readonly LocalDate[] {
  const last = awake(habit.last, habit.laidUpMonths, -1);
  const chance = sampleRandom(habit.seed);
  const [fewest, most] = habit.gapDays;
  const days: LocalDate[] = [];
  for (let day = awake(habit.from, habit.laidUpMonths, 1); daysBetween(day, last) >= fewest / 2; ) {
    days.push(day);
    day = awake(addDays(day, fewest + Math.floor(chance() * (most - fewest + 1))), habit.laidUpMonths, 1);
  }
  return [...days, last];
}

/** The nearest day, onwards or back, on which the car is not laid up. */
function awake(date: LocalDate, laidUpMonths: readonly number[], step: 1 | -1): LocalDate {
  let day = date;
  while (laidUpMonths.includes(monthOf(day))) day = addDays(day, step);
  return day;
}
