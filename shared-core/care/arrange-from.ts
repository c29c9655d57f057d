import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';

/**
 * The day from which to arrange what falls due: the early edge of a forecast as it is, exact dates less the notice in days;
 * whichever comes first, and null where there is neither.
 *
 * Source: house rule (DESIGN section 4).
 * @example arrangeFrom(14, '2027-03-01', '2027-03-10') //=> '2027-02-24'
 */
export function arrangeFrom(noticeDays: number, early: LocalDate | null, ...exact: readonly (LocalDate | null)[]): LocalDate | null {
  return earliest(early, ...exact.map((date) => (date === null ? null : addDays(date, -noticeDays))));
}
