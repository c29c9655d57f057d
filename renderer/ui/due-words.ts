import { addDays, dayNumber, daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { WindowView } from '../../shared-core/views/due-view.ts';
import type { HouseholdWords } from './household-words.ts';
import { tell } from './words/tell.ts';

type Dates = Pick<WindowView, 'earliest' | 'likely' | 'latest' | 'limb'>;
type Late = NonNullable<WindowView['lateBy']>;

/** Below this width in days a forecast is said in weeks, else in months. Source: house method, FORECAST section 5. */
const WEEKS_BELOW_DAYS = 60;
const MONTHS_A_YEAR = 12;
/** From here on late is said in years. */
const YEARS_FROM_MONTHS = 24;

/** Whether a window is one exact date rather than a forecast. */
export function isExact({ earliest, likely, latest, limb }: Dates): boolean {
  return earliest !== null && earliest === likely && likely === latest && (limb === 'time' || limb === 'printed-date');
}

/** Whether an exact date is today's: no reading makes that surer. */
export function dueToday(window: Dates & Pick<WindowView, 'state'>): boolean {
  return window.state === 'probably-due' && isExact(window);
}

/** How a due window stands: by how much it is late, or its state in a word. */
export function stateWords(window: Dates & Pick<WindowView, 'state' | 'lateBy'>, words: HouseholdWords): string {
  if (window.lateBy !== null) return lateWords(window.lateBy, words);
  return tell(dueToday(window) ? 'state.due-today' : `state.${window.state}`);
}

/** Whether the likely date is an exact limit that a forecast may come before. */
function endsExactly({ likely, latest, limb }: Dates): boolean {
  return likely !== null && likely === latest && (limb === 'time' || limb === 'printed-date');
}

/**
 * When an item falls due, in words: an exact date as it is, a forecast rounded to weeks or months and never to a bare day.
 *
 * @example dueWords({ state: 'ahead', earliest: '2026-12-30', likely: '2027-02-04', latest: '2027-03-20', limb: 'distance' }, words) //=> 'Dec 2026 to Mar 2027, likely Feb 2027'
 */
export function dueWords(window: Dates & Pick<WindowView, 'state'>, words: HouseholdWords): string {
  const { state, earliest, likely } = window;
  if (state === 'unknown') return tell('due.unknown');
  if (isExact(window) && likely !== null) return tell(state === 'late' ? 'due.was-by' : 'due.by', { date: words.date(likely) });
  if (state === 'late') return window.limb === 'wear' && likely !== null ? tell('due.worn', { date: words.month(likely) }) : tell('due.passed');
  if (earliest === null) return tell('due.not-foreseeable');
  if (likely === null) return tell('due.not-before', { from: words.month(earliest) });
  return forecastWords({ ...window, earliest, likely }, words);
}

function forecastWords(window: Dates & { readonly earliest: LocalDate; readonly likely: LocalDate }, words: HouseholdWords): string {
  const { earliest, likely, latest } = window;
  const inWeeks = latest !== null && daysBetween(earliest, latest) < WEEKS_BELOW_DAYS;
  const round = (date: LocalDate) => (inWeeks ? words.date(mondayOf(date)) : words.month(date));
  const [from, by] = [round(earliest), round(likely)];
  if (endsExactly(window)) return tell(inWeeks ? 'due.from-by-week' : 'due.from-by-month', { from, date: words.date(likely) });
  if (latest === null) return tell('due.open-end', { from, likely: by });
  const to = round(latest);
  const said = { from, to, likely: by };
  if (from === to) return tell(inWeeks ? 'due.week' : 'due.month', said);
  if (by === from || by === to) return tell(inWeeks ? 'due.weeks' : 'due.months', said);
  return tell(inWeeks ? 'due.weeks-likely' : 'due.months-likely', said);
}

/** The Monday of a date's week; day 0, 1970-01-01, was a Thursday. */
function mondayOf(date: LocalDate): LocalDate {
  return addDays(date, -((((dayNumber(date) + 3) % 7) + 7) % 7));
}

/** By how much something is late, in words. @example lateWords({ days: 365, months: 12, distance: null }, words) //=> '12 months late' */
export function lateWords({ days, months, distance }: Late, words: HouseholdWords): string {
  const time = lateTime(days, months);
  const past = distance === null ? null : words.distance(distance.value, distance.unit);
  if (time === null) return past === null ? tell('late.worn') : tell('late.past', { distance: past });
  return past === null ? time : tell('late.both', { time, distance: past });
}

function lateTime(days: number, months: number): string | null {
  const [years, rest] = [Math.floor(months / MONTHS_A_YEAR), months % MONTHS_A_YEAR];
  if (months >= YEARS_FROM_MONTHS) return rest === 0 ? tell('late.years', { n: years }) : tell('late.years-months', { y: years, n: rest });
  if (months > 0) return tell('late.months', { n: months });
  return days > 0 ? tell('late.days', { n: days }) : null;
}

/** By when to look again at what was seen; a day that has passed is said so. */
export function recheckWords(on: LocalDate | null, today: LocalDate, words: HouseholdWords): readonly string[] {
  return on === null ? [] : [tell(on < today ? 'recheck.past' : 'recheck.by', { date: words.date(on) })];
}

/** From when to arrange something dated; what is to be arranged by now says no day of the past. */
export function arrangeFromWords(from: LocalDate, today: LocalDate, words: HouseholdWords): string {
  return from <= today ? tell('arrange.now') : tell('arrange.from', { date: words.date(from) });
}

/** Minutes as people say them. @example minutesWords(320) //=> '5 h 20 min' */
export function minutesWords(minutes: number): string {
  const [h, m] = [Math.floor(minutes / 60), minutes % 60];
  if (h === 0) return tell('minutes', { n: m });
  return m === 0 ? tell('hours', { h }) : tell('hours-minutes', { h, m });
}
