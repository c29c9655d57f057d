import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { dayNumber, type LocalDate } from './local-date.ts';

/** A day of the week by its number: 1 is Monday, 7 is Sunday (as ISO 8601 counts them). */
export const weekdaySchema = z.int(refusedBy('not-a-weekday')).min(1, refusedBy('not-a-weekday')).max(7, refusedBy('not-a-weekday'));

/** Days of the week, each once. */
export const weekdaysSchema = z.array(weekdaySchema).max(7).refine((days) => new Set(days).size === days.length, refusedBy('weekday-twice'));

/** The day of the week of a date, 1 (Monday) to 7 (Sunday). @example weekdayOf('2026-11-25') //=> 3 */
export function weekdayOf(date: LocalDate): number {
  // 1970-01-01, day 0, was a Thursday.
  return ((((dayNumber(date) + 3) % 7) + 7) % 7) + 1;
}
