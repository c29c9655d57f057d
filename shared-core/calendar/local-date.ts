import { ok, refuse, type Result } from '../result/result.ts';
import type { Of } from '../units/distance.ts';

declare const dateName: unique symbol;

/** A calendar date without time or zone, `YYYY-MM-DD`, 1900-01-01 to 2199-12-31. */
export type LocalDate = string & { readonly [dateName]: 'LocalDate' };

/** Whole days since 1970-01-01. */
export type DayNumber = Of<'Days'>;

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MILLISECONDS_A_DAY = 86_400_000;

/** The first date taken: no car on the road today is older. */
export const FIRST_DATE = '1900-01-01' as LocalDate;
/** The last date taken. */
export const LAST_DATE = '2199-12-31' as LocalDate;

/**
 * A date from its text; impossible dates are refused, never rolled over.
 *
 * @example localDate('2026-02-29') //=> refused 'not-a-date'
 */
export function localDate(text: string): Result<LocalDate> {
  const parts = SHAPE.exec(text);
  if (parts === null) return refuse('not-a-date', { value: text.slice(0, 40) });
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const at = new Date(Date.UTC(year, month - 1, day));
  const exists = at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === day;
  if (!exists || text < FIRST_DATE || text > LAST_DATE) return refuse('not-a-date', { value: text });
  return ok(text as LocalDate);
}

/** Days since 1970-01-01, for arithmetic. @example dayNumber('1970-01-02' as LocalDate) //=> 1 */
export function dayNumber(date: LocalDate): DayNumber {
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / MILLISECONDS_A_DAY;
}

/** The date of a day number; past the ends of the calendar it is the first or last date. @example fromDayNumber(1) //=> '1970-01-02' */
export function fromDayNumber(day: DayNumber): LocalDate {
  const inside = Math.min(Math.max(day, dayNumber(FIRST_DATE)), dayNumber(LAST_DATE));
  return new Date(inside * MILLISECONDS_A_DAY).toISOString().slice(0, 10) as LocalDate;
}

/** The date of a year, month and day that are known to make one. @example asDate(2026, 2, 28) //=> '2026-02-28' */
export function asDate(year: number, month: number, day: number): LocalDate {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${year}-${two(month)}-${two(day)}` as LocalDate;
}

/** Whole days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: LocalDate, to: LocalDate): Of<'Days'> {
  return dayNumber(to) - dayNumber(from);
}

/** A date moved by whole days, no further than the calendar reaches. @example addDays('2026-12-31' as LocalDate, 1) //=> '2027-01-01' */
export function addDays(date: LocalDate, days: Of<'Days'>): LocalDate {
  return fromDayNumber(dayNumber(date) + days);
}

/** Month of the year, 1 to 12. */
export function monthOf(date: LocalDate): number {
  return Number(date.slice(5, 7));
}

/** Year of the date. */
export function yearOf(date: LocalDate): number {
  return Number(date.slice(0, 4));
}

/** Day of the month, 1 to 31. */
export function dayOf(date: LocalDate): number {
  return Number(date.slice(8, 10));
}

/** The earlier of the dates that are there; null where none is. */
export function earliest(...dates: readonly (LocalDate | null)[]): LocalDate | null {
  return dates.reduce<LocalDate | null>((best, date) => (date !== null && (best === null || date < best) ? date : best), null);
}

/** The later of two dates. */
export function later(a: LocalDate, b: LocalDate): LocalDate {
  return a > b ? a : b;
}

/** The UTC date of an instant written as text. @example dateOfInstant('2026-11-25T08:00:00.000Z') //=> '2026-11-25' */
export function dateOfInstant(instant: string): LocalDate {
  return instant.slice(0, 10) as LocalDate;
}
