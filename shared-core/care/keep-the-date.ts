import { addMonths } from '../calendar/add-months.ts';
import { addDays, daysBetween, type LocalDate } from '../calendar/local-date.ts';

/** The first day on which a renewal keeps the day: one month minus a day before the last valid day. */
export function renewalOpens(lastValidDay: LocalDate): LocalDate {
  return addDays(addMonths(lastValidDay, -1), 1);
}

/** Whether a renewal on a day keeps the day of the certificate in force: in its last month, its last valid day included. */
export function keepsTheDate(lastValidDay: LocalDate, passed: LocalDate): boolean {
  return passed >= renewalOpens(lastValidDay) && passed <= lastValidDay;
}

/**
 * The new last valid day of a certificate renewed on `passed`: inside the window it keeps the old day, else it is the
 * interval less a day from the day passed. Late renewals count from the day passed.
 *
 * Source: the published rule and its two examples for 15 May (seen, reference section 1c); month-ends are our own reading.
 * @example lastValidAfter('2026-05-15', '2026-04-16', 12) //=> '2027-05-15'
 * @example lastValidAfter('2026-05-15', '2026-04-14', 12) //=> '2027-04-13'
 */
export function lastValidAfter(lastValidDay: LocalDate, passed: LocalDate, months: number): LocalDate {
  return keepsTheDate(lastValidDay, passed) ? addMonths(lastValidDay, months) : addDays(addMonths(passed, months), -1);
}

/**
 * The days that a certificate in force gives away when it is renewed before its day is kept, against the day that it would
 * have kept; 0 where it is kept, or had run out.
 *
 * @example daysLost('2026-05-15', '2026-04-14', '2027-04-13', 12) //=> 32
 */
export function daysLost(lastValidDay: LocalDate, passed: LocalDate, valid: LocalDate, months: number): number {
  if (passed > lastValidDay || keepsTheDate(lastValidDay, passed)) return 0;
  return Math.max(0, daysBetween(valid, addMonths(lastValidDay, months)));
}
