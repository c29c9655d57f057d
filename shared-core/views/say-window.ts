import { addMonths } from '../calendar/add-months.ts';
import { addDays, asDate, daysBetween, fromDayNumber, monthOf, yearOf, type LocalDate } from '../calendar/local-date.ts';
import type { DueWindow } from '../care/due-window.ts';
import { sayDate, sayMonth, sayOf } from '../result/words/say.ts';

const KNOWN_MONDAY = fromDayNumber(4);
const WEEK_WIDTH_DAYS = 60;

/**
 * When an item falls due, no finer than the forecast allows: an exact date as it is, a narrow window by its week, a wide
 * one by its month. A forecast is never a bare day, however narrow.
 *
 * @example sayWindow({ earliest: '2026-12-01', likely: '2026-12-20', latest: '2027-01-10', limb: 'distance' }) //=> 'week of 14 Dec 2026'
 */
export function sayWindow(window: Pick<DueWindow, 'earliest' | 'likely' | 'latest' | 'limb'>): string {
  const { earliest, likely, latest, limb } = window;
  if (likely === null) return earliest === null ? '' : sayOf('window-not-before', { month: sayMonth(earliest) });
  if (earliest === null || latest === null) return sayOf('window-about', { month: sayMonth(likely) });
  const width = daysBetween(earliest, latest);
  if (width === 0 && (limb === 'time' || limb === 'printed-date')) return sayDate(likely);
  return width < WEEK_WIDTH_DAYS ? sayOf('window-week', { date: mondayOf(likely) }) : sayOf('window-about', { month: sayMonth(likely) });
}

/**
 * The days that `sayWindow` speaks of, the last one included: one day, a week from Monday, a month; null where it names none.
 *
 * @example shownSpan({ earliest: '2026-12-01', likely: '2026-12-20', latest: '2027-01-10', limb: 'distance' }) //=> { from: '2026-12-14', to: '2026-12-20' }
 */
export function shownSpan(window: Pick<DueWindow, 'earliest' | 'likely' | 'latest' | 'limb'>): { readonly from: LocalDate; readonly to: LocalDate } | null {
  const { earliest, likely, latest, limb } = window;
  if (likely === null) return null;
  const width = earliest === null || latest === null ? Infinity : daysBetween(earliest, latest);
  if (width === 0 && (limb === 'time' || limb === 'printed-date')) return { from: likely, to: likely };
  if (width < WEEK_WIDTH_DAYS) return { from: mondayOf(likely), to: addDays(mondayOf(likely), 6) };
  const first = asDate(yearOf(likely), monthOf(likely), 1);
  return { from: first, to: addDays(addMonths(first, 1), -1) };
}

/** By how much something is late, its distance in a unit to be shown. */
interface LateByShown {
  readonly days: number;
  readonly months: number;
  readonly distance: { readonly value: number; readonly unit: string } | null;
}

/** By how much something is late, in words. @example sayLateBy({ days: 365, months: 12, distance: null }) //=> '12 months late' */
export function sayLateBy(lateBy: LateByShown): string {
  const { days, months, distance } = lateBy;
  const time = months > 0 ? sayOf('span-months', { n: months }) : days > 0 ? sayOf('span-days', { n: days }) : null;
  const past = distance === null ? null : sayOf('late-distance', { distance: distance.value, unit: distance.unit });
  if (days > 0 && time !== null) return past === null ? sayOf('late-time', { time }) : sayOf('late-time-distance', { time, distance: past });
  return [time, past].filter((part) => part !== null).join(', ') || sayOf('late-limit');
}

/** The Monday of the week that holds a date; 1970-01-05 was one. */
function mondayOf(date: LocalDate): LocalDate {
  const sinceMonday = (((daysBetween(KNOWN_MONDAY, date) % 7) + 7) % 7);
  return addDays(date, -sinceMonday);
}
