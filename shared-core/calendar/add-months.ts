import { UTCDate } from '@date-fns/utc';
// By file: the package as a whole is three hundred, and reading them is the better part of a second at every start.
import { addMonths as addMonthsToDate } from 'date-fns/addMonths';
import { differenceInCalendarMonths } from 'date-fns/differenceInCalendarMonths';
import { asDate, dayOf, FIRST_DATE, LAST_DATE, monthOf, yearOf, type LocalDate } from './local-date.ts';

/**
 * The same day some months later or earlier, clipped to the last day of a shorter month, always counted from the date given.
 * A date past the ends of the calendar (1900 to 2199) is its first or last one.
 *
 * In UTC, on purpose: in the machine's own zone a day is lost where the zone once skipped one (30 December 2011 in Apia).
 *
 * Source: the rule of java.time's plusMonths (seen); vectors in tests/shared-core/calendar.
 * @example addMonths('2024-02-29' as LocalDate, 12) //=> '2025-02-28'
 */
export function addMonths(date: LocalDate, months: number): LocalDate {
  const moved = addMonthsToDate(utc(date), months);
  if (moved.getUTCFullYear() < yearOf(FIRST_DATE)) return FIRST_DATE;
  if (moved.getUTCFullYear() > yearOf(LAST_DATE)) return LAST_DATE;
  return asDate(moved.getUTCFullYear(), moved.getUTCMonth() + 1, moved.getUTCDate());
}

/**
 * Whole months from one date to another, negative where `to` is earlier: a month is whole once its day of the month is
 * reached, so that 31 January to 29 February is none (the library's own count of whole months would say one).
 *
 * Source: java.time's and Temporal's rule; every pair is compared with Temporal in tests/shared-core/calendar.
 * @example monthsBetween('2025-11-25', '2026-11-25') //=> 12
 */
export function monthsBetween(from: LocalDate, to: LocalDate): number {
  if (to < from) return 0 - monthsBetween(to, from);
  return differenceInCalendarMonths(utc(to), utc(from)) - (dayOf(to) < dayOf(from) ? 1 : 0);
}

function utc(date: LocalDate): UTCDate {
  return new UTCDate(yearOf(date), monthOf(date) - 1, dayOf(date));
}
