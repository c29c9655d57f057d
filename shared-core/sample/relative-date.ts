import { addMonths } from '../calendar/add-months.ts';
import { addDays, localDate, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { assert } from '../result/assert.ts';

const SHAPE = /^(?:(?:today|last (\d\d-\d\d))(?: (?=.))?)?(?:([+-]\d+)m)?(?:([+-]\d+)d)?$/;

/**
 * A date of the sample, counted from today; null where the text is not one. A base, then months (clipped to the month's
 * end), then days, each with its sign: `today` (which may be left out) or `last MM-DD`, the latest such day before today.
 *
 * @example relativeDate('-12m+3d', '2026-11-25') //=> '2025-11-28'
 * @example relativeDate('last 04-09 -24m', '2026-11-25') //=> '2024-04-09'
 */
export function relativeDate(text: string, today: LocalDate): LocalDate | null {
  const parts = text === '' ? null : SHAPE.exec(text);
  if (parts === null) return null;
  const [, monthDay, months, days] = parts;
  const base = monthDay === undefined ? today : lastBefore(monthDay, today);
  return addDays(addMonths(base, Number(months ?? 0)), Number(days ?? 0));
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
