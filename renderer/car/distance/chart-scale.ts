import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { OdometerCurve } from '../../../shared-core/views/odometer-curve.ts';

/** How much of the past is drawn, in months; null: all of it. */
export type Past = 24 | null;

/** Room around the drawing for its words, in pixels. */
export const MARGIN = { top: 10, right: 14, bottom: 24, left: 66 };
export const HEIGHT = 250;

/** Where dates and distances lie on a drawing. */
export interface ChartScale {
  readonly from: LocalDate;
  readonly to: LocalDate;
  readonly x: (date: LocalDate) => number;
  /** Within the drawing, whatever the value. */
  readonly y: (value: number) => number;
  /** Distances with a line and a number. */
  readonly values: readonly number[];
  /** Firsts of months with a line and a name. */
  readonly dates: readonly LocalDate[];
}

/** Lays a curve out over a width in pixels; null where there is nothing to draw. */
export function chartScale({ points, fan }: OdometerCurve, today: LocalDate, past: Past, width: number): ChartScale | null {
  const [first, end] = [points[0], fan.at(-1)];
  if (first === undefined || end === undefined || width <= MARGIN.left + MARGIN.right) return null;
  const earliest = past === null ? first.date : addMonths(today, -past);
  const from = earliest < first.date ? first.date : earliest;
  const firstShown = points.findLast(({ date }) => date <= from) ?? first;
  // A reading in doubt may lie anywhere: it does not squeeze the rest, and is drawn at the edge.
  const [lowest, highest] = [firstShown.value, Math.max(...fan.map(({ high: most }) => most))];
  const days = Math.max(1, daysBetween(from, end.date));
  const [wide, high] = [width - MARGIN.left - MARGIN.right, HEIGHT - MARGIN.top - MARGIN.bottom];
  const x = (date: LocalDate) => MARGIN.left + (daysBetween(from, date) / days) * wide;
  const y = (value: number) => MARGIN.top + high * (1 - Math.min(1, Math.max(0, (value - lowest) / Math.max(1, highest - lowest))));
  return { from, to: end.date, x, y, values: roundValues(lowest, highest), dates: firstsOfMonths(from, end.date, wide) };
}

const MOST_VALUES = 5;

/** At most five round numbers from one value to another. @example roundValues(120, 890) //=> [200, 400, 600, 800] */
export function roundValues(low: number, high: number): readonly number[] {
  const rough = Math.max(1, (high - low) / MOST_VALUES);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= rough) ?? 10 * power;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, at) => (first + at) * step);
}

/** A name of a month or year needs this much room, in pixels. */
const LEAST_APART = 46;

/** Firsts of months so far apart that their names do not touch; in whole parts of a year, or whole years. */
function firstsOfMonths(from: LocalDate, to: LocalDate, width: number): readonly LocalDate[] {
  const pixelsAMonth = width / Math.max(1, daysBetween(from, to) / 30.44);
  const every = [1, 3, 6, 12, 24, 60].find((step) => step * pixelsAMonth >= LEAST_APART) ?? 120;
  const firsts: LocalDate[] = [];
  for (let date = addMonths(addDays(from, 1 - Number(from.slice(8))), 1); date <= to; date = addMonths(date, 1)) {
    const months = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1;
    if (months % every === 0) firsts.push(date);
  }
  return firsts;
}
