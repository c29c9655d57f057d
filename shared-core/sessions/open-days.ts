import { addDays, daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { weekdayOf } from '../calendar/weekday.ts';
import type { Message } from '../result/result.ts';
import type { Place } from './place.ts';
import { holdsDay, type PlaceDays } from './place-days.ts';

/** When a place can be worked at, and from which day on. */
export interface PlaceCalendar {
  readonly place: Place;
  /** Stretches of this place only. */
  readonly stretches: readonly PlaceDays[];
  /** Days of the week on which one works at home; they bind the home alone. */
  readonly workWeekdays: readonly number[];
  readonly today: LocalDate;
}

/**
 * Why a place is not open on a day, or null where it is. A stretch that closes counts more than one that opens, and both more than the
 * days of the week; a garage's notice is counted from today.
 *
 * @example whyClosed(calendar, '2026-12-25') //=> { key: 'closed-stretch', values: { place: 'Home', reason: 'holiday', ... } }
 */
export function whyClosed({ place, stretches, workWeekdays, today }: PlaceCalendar, day: LocalDate): Message | null {
  const values = { place: place.name, day };
  if (day < today) return { key: 'day-has-passed', values };
  const closed = stretches.find((one) => !one.open && holdsDay(one, day));
  if (closed !== undefined) return { key: 'place-closed-then', values: { ...values, reason: closed.reason } };
  if (day < addDays(today, place.noticeDays)) return { key: 'place-needs-notice', values: { ...values, notice: place.noticeDays, first: addDays(today, place.noticeDays) } };
  if (stretches.some((one) => one.open && holdsDay(one, day))) return null;
  if (place.closedWeekdays.includes(weekdayOf(day))) return { key: 'place-closed-weekday', values };
  if (place.kind === 'home' && !workWeekdays.includes(weekdayOf(day))) return { key: 'not-a-work-day', values };
  return null;
}

/** The days of a stretch on which a place is open. */
export function openDays(calendar: PlaceCalendar, from: LocalDate, to: LocalDate): readonly LocalDate[] {
  const count = Math.max(0, daysBetween(from, to) + 1);
  return Array.from({ length: count }, (_, at) => addDays(from, at)).filter((day) => whyClosed(calendar, day) === null);
}
