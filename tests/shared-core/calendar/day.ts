import fc from 'fast-check';
import { addDays, daysBetween, FIRST_DATE, LAST_DATE, localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';

/** A date written in a test; an impossible one fails the test. */
export function day(text: string): LocalDate {
  const date = localDate(text);
  if (!date.ok) throw new Error(`not a date: ${text}`);
  return date.value;
}

/** Any date from one to another, the calendar's ends unless given. */
export function anyDate(from: LocalDate = FIRST_DATE, to: LocalDate = LAST_DATE): fc.Arbitrary<LocalDate> {
  return fc.integer({ min: 0, max: daysBetween(from, to) }).map((days) => addDays(from, days));
}
