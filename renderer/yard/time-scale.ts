import { addMonths } from '../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { weekdayOf } from '../../shared-core/calendar/weekday.ts';

/** What of the calendar one looks at: so many months, from so many days after today. */
export interface Sight {
  readonly span: number;
  readonly shift: number;
}

/** The calendar of the yard as pixels: one line from left to right, the past being the strip left of today. */
export interface TimeScale {
  readonly today: LocalDate;
  /** The first and the last day on the paper. */
  readonly start: LocalDate;
  readonly end: LocalDate;
  readonly width: number;
  /** Where today is; left of the paper where one looks further ahead. */
  readonly todayX: number;
  readonly pixelsADay: number;
  /** Pixels from the left edge; may lie outside the paper. */
  readonly x: (date: LocalDate) => number;
}

/** The past holds the flags and, on a wide paper, their words. */
const PAST_SHARE = 0.18;
const LEAST_PAST = 60;
const MOST_PAST = 240;

/** Where the sight begins on a paper of a width: today, while one has not moved ahead. */
export function anchorX(width: number): number {
  return Math.round(Math.min(MOST_PAST, Math.max(LEAST_PAST, width * PAST_SHARE)));
}

/**
 * Lays the calendar over a width in pixels: the sight to the right of its first day, as much before it as the words of late marks need.
 *
 * @example timeScale('2026-11-25', { span: 12, shift: 0 }, 900).x('2026-11-25') //=> 162
 */
export function timeScale(today: LocalDate, { span, shift }: Sight, width: number): TimeScale {
  const [anchor, first] = [anchorX(width), addDays(today, shift)];
  const end = addMonths(first, span);
  const pixelsADay = Math.max(Number.EPSILON, (width - anchor) / daysBetween(first, end));
  const pastDays = width > anchor ? Math.floor(anchor / pixelsADay) : 0;
  return { today, start: addDays(first, -pastDays), end, width, todayX: anchor - shift * pixelsADay, pixelsADay, x: (date) => anchor + daysBetween(first, date) * pixelsADay };
}

/** A line of the calendar: the first of a month, or a Monday where there is room for weeks. */
export interface Tick {
  readonly date: LocalDate;
  readonly x: number;
  /** `year` begins a year, `month` carries a name, `week` the day of its Monday, `minor` is a line alone. */
  readonly kind: 'year' | 'month' | 'week' | 'minor';
}

/** A name of a month needs this much room. */
const LEAST_MONTH_WIDTH = 29;
/** A week is marked where it is so wide, and its Monday named so far from the name of a month. */
const LEAST_WEEK_WIDTH = 40;
const CLEAR_OF_MONTH = 34;

/**
 * The firsts of the months on the paper, thinned out so that their names do not touch, and the Mondays where there is room; January always
 * carries its year.
 *
 * @example monthTicks(timeScale('2026-11-25', { span: 12, shift: 0 }, 900)).filter((tick) => tick.kind === 'year').length //=> 1
 */
export function monthTicks(scale: TimeScale): readonly Tick[] {
  const monthWidth = scale.pixelsADay * 30.44;
  const every = [1, 2, 3, 6].find((step) => step * monthWidth >= LEAST_MONTH_WIDTH) ?? 12;
  const ticks: Tick[] = [];
  for (let date = firstOfNextMonth(scale.start); date <= scale.end; date = addMonths(date, 1)) {
    const month = Number(date.slice(5, 7));
    ticks.push({ date, x: scale.x(date), kind: month === 1 ? 'year' : (month - 1) % every === 0 ? 'month' : 'minor' });
  }
  return [...ticks, ...weekTicks(scale, ticks)].sort((a, b) => a.x - b.x);
}

/** Mondays (ISO 8601 begins the week with them), where a week is wide enough to be seen. */
function weekTicks(scale: TimeScale, months: readonly Tick[]): readonly Tick[] {
  if (scale.pixelsADay * 7 < LEAST_WEEK_WIDTH) return [];
  const ticks: Tick[] = [];
  for (let date = addDays(scale.start, (8 - weekdayOf(scale.start)) % 7); date <= scale.end; date = addDays(date, 7)) {
    const x = scale.x(date);
    if (months.every((one) => Math.abs(one.x - x) >= 1)) ticks.push({ date, x, kind: months.some((one) => Math.abs(one.x - x) < CLEAR_OF_MONTH) ? 'minor' : 'week' });
  }
  return ticks;
}

function firstOfNextMonth(date: LocalDate): LocalDate {
  return addMonths(addDays(date, 1 - Number(date.slice(8, 10))), 1);
}

/** A stretch of the paper, in pixels. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The laid-up months and dated lay-ups on the paper, neighbours joined; a lay-up without a last day goes on to the edge.
 *
 * @example laidUpStretches(timeScale('2026-11-25', { span: 12, shift: 0 }, 900), [11, 12, 1, 2, 3]).length //=> 2
 */
export function laidUpStretches(scale: TimeScale, months: readonly number[], layUps: readonly LayUpDays[] = []): readonly Stretch[] {
  const dated = layUps.map(({ from, to }) => ({ from: scale.x(from), to: to === null ? scale.width : scale.x(addDays(to, 1)) }));
  const all = [...monthStretches(scale, months), ...dated]
    .map(({ from, to }) => ({ from: Math.max(0, from), to: Math.min(scale.width, to) }))
    .filter((one) => one.to > one.from)
    .sort((a, b) => a.from - b.from);
  const apart: { from: number; to: number }[] = [];
  for (const { from, to } of all) {
    const last = apart.at(-1);
    if (last !== undefined && from - last.to < 1) last.to = Math.max(last.to, to);
    else apart.push({ from, to });
  }
  return apart;
}

/** Days of a lay-up, both included; `to` null: nobody knows until when. */
interface LayUpDays {
  readonly from: LocalDate;
  readonly to: LocalDate | null;
}

function monthStretches(scale: TimeScale, months: readonly number[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let date = addMonths(firstOfNextMonth(scale.start), -1);
  for (; months.length > 0 && date <= scale.end; date = addMonths(date, 1)) {
    if (months.includes(Number(date.slice(5, 7)))) stretches.push({ from: scale.x(date), to: scale.x(addMonths(date, 1)) });
  }
  return stretches;
}

/** A year is named over the first of its months whose name leaves room for the word "today" and for the year before. */
const YEAR_WIDTH = 44;

/** Where the years are named: the first one at the edge of the paper. */
export function yearNames(scale: TimeScale, ticks: readonly Tick[]): readonly { readonly year: string; readonly x: number }[] {
  const names: { year: string; x: number }[] = [];
  for (const { date, x } of [{ date: scale.start, x: 0 }, ...ticks.filter((tick) => tick.kind !== 'week')]) {
    const year = date.slice(0, 4);
    const last = names.at(-1);
    const roomAtToday = x > scale.todayX ? x - scale.todayX > YEAR_WIDTH - 10 : scale.todayX - x > YEAR_WIDTH + 24;
    if (year !== last?.year && roomAtToday && (last === undefined || x - last.x > YEAR_WIDTH)) names.push({ year, x });
  }
  return names;
}
