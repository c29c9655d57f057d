import { addMonths } from '../calendar/add-months.ts';
import { addDays, localDate, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { weekdayOf } from '../calendar/weekday.ts';
import { assert } from '../result/assert.ts';

const SHAPE = /^(?:(?:today|last (\d\d-\d\d))(?: (?=.))?)?(?:([+-]\d+)m)?(?:([+-]\d+)d)?(?:(?<=.) (mon|tue|wed|thu|fri|sat|sun))?$/;
const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/**
 * A date of the sample, counted from today; null where the text is not one. A base, then months (clipped to the month's
 * end), then days, each with its sign: `today` (which may be left out) or `last MM-DD`, the latest such day before today.
 * A weekday behind it moves on to the next such day, that day itself included.
 *
 * @example relativeDate('-12m+3d', '2026-11-25') //=> '2025-11-28'
 * @example relativeDate('last 04-09 -24m', '2026-11-25') //=> '2024-04-09'
 * @example relativeDate('+10d sat', '2026-11-25') //=> '2026-12-05'
 */
export function relativeDate(text: string, today: LocalDate): LocalDate | null {
  const parts = text === '' ? null : SHAPE.exec(text);
  if (parts === null) return null;
  const [, monthDay, months, days, weekday] = parts;
  const base = monthDay === undefined ? today : lastBefore(monthDay, today);
  const date = addDays(addMonths(base, Number(months ?? 0)), Number(days ?? 0));
  return weekday === undefined ? date : addDays(date, (WEEKDAYS.indexOf(weekday) + 8 - weekdayOf(date)) % 7);
}

function lastBefore(monthDay: string, today: LocalDate): LocalDate {
  const year = yearOf(today);
  const inYear = (wanted: number) => {
    const date = localDate(`${String(wanted)}-${monthDay}`);
    assert(date.ok, `${monthDay} is not a day of every year`);
    return date.value;
  };
  const thisYear = inYear(year);
  return thisYear < today ? thisYear : inYear(year - 1);
}
