import { asDate, dayOf, FIRST_DATE, LAST_DATE, monthOf, yearOf, type LocalDate } from './local-date.ts';

const MONTHS_A_YEAR = 12;

/**
 * The same day some months later or earlier, clipped to the last day of a shorter month, always counted from the date given.
 * A date past the ends of the calendar (1900 to 2199) is its first or last one.
 *
 * Whole-number arithmetic, on purpose: a library that works in the machine's own zone loses a day where the zone once
 * skipped one (30 December 2011 in Apia).
 *
 * Source: the rule of java.time's plusMonths (seen); vectors in tests/shared-core/calendar.
 * @example addMonths('2024-02-29' as LocalDate, 12) //=> '2025-02-28'
 */
export function addMonths(date: LocalDate, months: number): LocalDate {
  const index = monthIndex(date) + months;
  const [year, month] = [Math.floor(index / MONTHS_A_YEAR), (((index % MONTHS_A_YEAR) + MONTHS_A_YEAR) % MONTHS_A_YEAR) + 1];
  if (year < yearOf(FIRST_DATE)) return FIRST_DATE;
  if (year > yearOf(LAST_DATE)) return LAST_DATE;
  return asDate(year, month, Math.min(dayOf(date), daysInMonth(year, month)));
}

/**
 * Whole months from one date to another, negative where `to` is earlier: a month is whole once its day of the month is
 * reached, so that 31 January to 29 February is none.
 *
 * Source: java.time's and Temporal's rule; every pair is compared with Temporal in tests/shared-core/calendar.
 * @example monthsBetween('2025-11-25', '2026-11-25') //=> 12
 */
export function monthsBetween(from: LocalDate, to: LocalDate): number {
  if (to < from) return 0 - monthsBetween(to, from);
  return monthIndex(to) - monthIndex(from) - (dayOf(to) < dayOf(from) ? 1 : 0);
}

function monthIndex(date: LocalDate): number {
  return yearOf(date) * MONTHS_A_YEAR + monthOf(date) - 1;
}

function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
