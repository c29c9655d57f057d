import { addMonths } from '../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';

/** How far one looks ahead, in months. */
export type Span = 3 | 6 | 12 | 36;
export const SPANS: readonly Span[] = [3, 6, 12, 36];

/** The calendar of the yard as pixels: one line from left to right, the past being the strip left of today. */
export interface TimeScale {
  readonly today: LocalDate;
  /** The first and the last day on the paper. */
  readonly start: LocalDate;
  readonly end: LocalDate;
  readonly width: number;
  readonly todayX: number;
  /** Pixels from the left edge; may lie outside the paper. */
  readonly x: (date: LocalDate) => number;
}

/** The past holds the flags and, on a wide paper, their words. */
const PAST_SHARE = 0.18;
const LEAST_PAST = 60;
const MOST_PAST = 240;

/**
 * Lays the calendar over a width in pixels: the span to the right of today, as much past to its left as its words need.
 *
 * @example timeScale('2026-11-25', 12, 900).x('2026-11-25') //=> 162
 */
export function timeScale(today: LocalDate, span: Span, width: number): TimeScale {
  const todayX = Math.round(Math.min(MOST_PAST, Math.max(LEAST_PAST, width * PAST_SHARE)));
  const end = addMonths(today, span);
  const pixelsADay = (width - todayX) / daysBetween(today, end);
  const pastDays = pixelsADay > 0 ? Math.floor(todayX / pixelsADay) : 0;
  return { today, start: addDays(today, -pastDays), end, width, todayX, x: (date) => todayX + daysBetween(today, date) * pixelsADay };
}

/** How many pixels a day is wide. */
export function pixelsADay({ today, end, width, todayX }: Pick<TimeScale, 'today' | 'end' | 'width' | 'todayX'>): number {
  return Math.max(Number.EPSILON, (width - todayX) / daysBetween(today, end));
}

/** The shortest span that shows a day, or the longest. @example spanHolding('2026-11-25', '2027-02-23') //=> 3 */
export function spanHolding(today: LocalDate, day: LocalDate): Span {
  return SPANS.find((span) => addMonths(today, span) >= day) ?? 36;
}

/** A line of the calendar: the first of a month, or a Monday where there is room for weeks. */
export interface Tick {
  readonly date: LocalDate;
  readonly x: number;
  /** `year` begins a year, `month` carries a name, `minor` is a line alone. */
  readonly kind: 'year' | 'month' | 'minor';
}

/** A name of a month needs this much room. */
const LEAST_MONTH_WIDTH = 29;

/**
 * The firsts of the months on the paper, thinned out so that their names do not touch; January always carries its year.
 *
 * @example monthTicks(timeScale('2026-11-25', 12, 900)).filter((tick) => tick.kind === 'year').length //=> 1
 */
export function monthTicks(scale: TimeScale): readonly Tick[] {
  const monthWidth = (scale.width - scale.todayX) / Math.max(1, daysBetween(scale.today, scale.end) / 30.44);
  const every = [1, 2, 3, 6].find((step) => step * monthWidth >= LEAST_MONTH_WIDTH) ?? 12;
  const ticks: Tick[] = [];
  for (let date = firstOfNextMonth(scale.start); date <= scale.end; date = addMonths(date, 1)) {
    const month = Number(date.slice(5, 7));
    ticks.push({ date, x: scale.x(date), kind: month === 1 ? 'year' : (month - 1) % every === 0 ? 'month' : 'minor' });
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
 * @example laidUpStretches(timeScale('2026-11-25', 12, 900), [11, 12, 1, 2, 3]).length //=> 2
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
  for (const { date, x } of [{ date: scale.start, x: 0 }, ...ticks]) {
    const year = date.slice(0, 4);
    const last = names.at(-1);
    const roomAtToday = x > scale.todayX ? x - scale.todayX > YEAR_WIDTH - 10 : scale.todayX - x > YEAR_WIDTH + 24;
    if (year !== last?.year && roomAtToday && (last === undefined || x - last.x > YEAR_WIDTH)) names.push({ year, x });
  }
  return names;
}
