import { dayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';

/** A place on the chart, in pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** `read`: its odometer was read. `worked-out`: its odometer is an estimate. `left-out`: it does not count. */
export type DotKind = 'read' | 'worked-out' | 'left-out';

/** What a chart of a series draws. */
export interface ChartShape {
  readonly dots: readonly (Spot & { readonly id: string; readonly kind: DotKind })[];
  /** The line through the measurements that count; empty where there is none. */
  readonly line: readonly Spot[];
  /** Where the line goes on to the limit, and the ground between its earliest and its latest way there; null where none is foreseen. */
  readonly ahead: { readonly likely: readonly [Spot, Spot]; readonly ground: readonly Spot[] } | null;
  /** The limits, from top to bottom. */
  readonly limits: readonly { readonly y: number; readonly value: number }[];
  readonly todayX: number;
  /** Days at the left and the right edge. */
  readonly from: number;
  readonly to: number;
}

type Point = WearSeriesView['points'][number];

/** Part of the time shown that is left free beyond the last thing drawn, and of the values above and below. */
const BEYOND = 0.06;
const ABOVE = 0.12;
const LEAST_DAYS = 60;
/** So much of its largest value a chart spans at least, so that a hair's breadth does not look like a chasm. */
const LEAST_SPAN = 0.25;

/** The places of a series' points, line and limits on a chart so wide and high; null where no measurement counts. */
export function chartShape(series: WearSeriesView, today: LocalDate, width: number, height: number): ChartShape | null {
  const counting = series.points.filter((point) => point.part === 'counts');
  const [first, last] = [counting[0], counting.at(-1)];
  if (first === undefined || last === undefined) return null;
  const shown = series.points.filter((point) => point.measurement.date >= first.measurement.date);
  const limit = series.limits[0];
  const scale = scaleOf(shown, series, today, width, height);
  const line = lineOf(counting, series).map(({ day, value }) => scale.spot(day, value));
  const [end, likely] = [line.at(-1), limit?.verdict === 'wears' ? limit.likely : null];
  return {
    dots: shown.map((point) => ({ ...scale.spot(dayNumber(point.measurement.date), point.measurement.value), id: point.measurement.id, kind: dotKind(point, series.way?.by === 'distance') })),
    line,
    ahead: limit === undefined || end === undefined || likely === null ? null : { likely: [end, scale.spot(dayNumber(likely), limit.value)], ground: groundOf(end, limit, scale, width) },
    limits: [...new Set(series.limits.map((one) => one.value))].map((value) => ({ y: scale.spot(0, value).y, value })).sort((a, b) => a.y - b.y),
    todayX: scale.spot(dayNumber(today), 0).x,
    from: scale.from,
    to: scale.to,
  };
}

interface Scale {
  readonly from: number;
  readonly to: number;
  readonly spot: (day: number, value: number) => Spot;
}

function scaleOf(shown: readonly Point[], { limits }: WearSeriesView, today: LocalDate, width: number, height: number): Scale {
  const days = shown.map((point) => dayNumber(point.measurement.date));
  const foreseen = limits[0]?.likely;
  const ends = [...days, dayNumber(today), ...(foreseen == null ? [] : [dayNumber(foreseen)])];
  const [from, end] = [Math.min(...days), Math.max(...ends, Math.min(...days) + LEAST_DAYS)];
  const to = end + (end - from) * BEYOND;
  const values = [...shown.map((point) => point.measurement.value), ...limits.map((limit) => limit.value)];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const least = Math.max(Math.abs(low), Math.abs(high)) * LEAST_SPAN || 1;
  const room = Math.max((high - low) * ABOVE, (least - (high - low)) / 2);
  const spot = (day: number, value: number) => ({
    x: tenths(((day - from + (to - from) * (BEYOND / 2)) / ((to - from) * (1 + BEYOND / 2))) * width),
    y: tenths(((high + room - value) / (high - low + 2 * room)) * height),
  });
  return { from, to, spot };
}

/** The straight line by distance, laid over the days: each measurement at the value that the line has there. */
function lineOf(counting: readonly Point[], { line }: WearSeriesView): readonly { readonly day: number; readonly value: number }[] {
  const [first, last] = [counting[0], counting.at(-1)];
  if (line === null || first === undefined || last === undefined) return [];
  const along = (point: Point) => point.along ?? dayNumber(point.measurement.date);
  const whole = along(last) - along(first);
  return counting.map((point) => ({
    day: dayNumber(point.measurement.date),
    value: line.from.value + (whole === 0 ? 0 : (along(point) - along(first)) / whole) * (line.to.value - line.from.value),
  }));
}

function groundOf(end: Spot, limit: WearSeriesView['limits'][number], scale: Scale, width: number): readonly Spot[] {
  const at = (date: LocalDate | null) => (date === null ? null : scale.spot(dayNumber(date), limit.value));
  const [earliest, latest] = [at(limit.earliest), at(limit.latest)];
  if (earliest === null) return [];
  // Without a latest day it may stay as it is: the ground reaches the edge of the chart.
  return [end, earliest, ...(latest === null ? [{ x: width, y: earliest.y }, { x: width, y: end.y }] : [latest])];
}

function dotKind({ part, estimated }: Point, byDistance: boolean): DotKind {
  if (part !== 'counts') return 'left-out';
  return byDistance && estimated ? 'worked-out' : 'read';
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
