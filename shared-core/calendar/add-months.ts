import { addMonths as addMonthsToDate, differenceInMonths } from 'date-fns';
import type { LocalDate } from './local-date.ts';

/**
 * The same day some months later or earlier, clipped to the last day of a shorter month, always counted from the date given.
 *
 * Source: the rule of java.time's plusMonths (seen); vectors in tests/shared-core/calendar.
 * @example addMonths('2024-02-29' as LocalDate, 12) //=> '2025-02-28'
 */
export function addMonths(date: LocalDate, months: number): LocalDate {
  return toText(addMonthsToDate(atNoon(date), months));
}

/** Whole months from one date to another, as date-fns counts them. @example monthsBetween('2025-11-25', '2026-11-25') //=> 12 */
export function monthsBetween(from: LocalDate, to: LocalDate): number {
  return differenceInMonths(atNoon(to), atNoon(from));
}

/** Local noon, so that no change of daylight time can move the date; date-fns works in local time. */
function atNoon(date: LocalDate): Date {
  return new Date(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10)), 12);
}

function toText(at: Date): LocalDate {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}` as LocalDate;
}
