import { addMonths } from '../calendar/add-months.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';

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
