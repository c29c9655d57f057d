import { addDays, dayNumber, fromDayNumber, later, type LocalDate } from '../calendar/local-date.ts';
import { reachedOn, type KnownDistance } from '../fleet/known-distance.ts';
import { FORESEEABLE_DAYS, type DueSpan } from '../fleet/odometer-forecast.ts';
import { metresFromKilometres } from '../units/distance.ts';
import { assertNever, must } from '../result/assert.ts';
import type { WearWay } from './measure-kind.ts';
import { datesReached } from './wear-dates.ts';
import { passes } from './wear-limit.ts';
import { limitReached, wearTrend, type LimitReached, type SeenWear, type WearPoint } from './wear-trend.ts';

/** What a forecast of wear is made of. */
export interface WearQuestion {
  /** In order of date, one a day. */
  readonly points: readonly WearPoint[];
  /** The last value that still passes, in the canonical unit. */
  readonly limit: number;
  readonly way: WearWay;
  /** How far ordinary gauges differ, in the canonical unit. */
  readonly error: number;
  readonly today: LocalDate;
  /** The car's readings, and how it is used; with none, what wears by distance has no dates. */
  readonly car: Pick<KnownDistance, 'points' | 'usage'>;
  /** Metres that the car has gone and this thing has not; null where it is not on the road now. */
  readonly idleMetres: number | null;
}

/**
 * When a limit is reached, or why that cannot be said. `too-few`: measured on fewer than two days with wear between them.
 * `contradictory`: it got better. `flat`: no wear yet beyond what gauges differ, so a date would be made of their errors.
 * `past-limit`: the newest measurement no longer passes. `off-the-road`: it rests, so nobody can say. `no-reading`: it wears
 * by distance, and no odometer was read. Dates are null beyond five years.
 */
export type WearForecast =
  | { readonly verdict: 'too-few'; readonly have: number }
  | { readonly verdict: 'contradictory'; readonly from: WearPoint; readonly to: WearPoint }
  | { readonly verdict: 'past-limit'; readonly newest: WearPoint; readonly span: DueSpan<LocalDate> }
  | { readonly verdict: 'off-the-road' | 'no-reading' }
  | { readonly verdict: 'flat' }
  | { readonly verdict: 'wears'; readonly trend: SeenWear; readonly span: DueSpan<LocalDate> };

/** When a thing reaches its limit, by its measurements. @example wearForecast(question).verdict //=> 'wears' */
export function wearForecast(question: WearQuestion): WearForecast {
  const { points, limit, way, today } = question;
  const scale = { rises: way.rises, error: question.error };
  const newest = points.at(-1);
  if (newest !== undefined && !passes(newest.value, limit, way.rises)) return { verdict: 'past-limit', newest, span: { earliest: newest.date, likely: newest.date, latest: newest.date } };
  const trend = wearTrend(points, scale);
  switch (trend.state) {
    case 'too-few':
      return { verdict: 'too-few', have: trend.have };
    case 'contradictory':
      return { verdict: 'contradictory', from: trend.from, to: trend.to };
    case 'flat':
      return { verdict: 'flat' };
    case 'wears': {
      const dates = datesOf(question, must(limitReached(points, limit, scale), 'crossing of a line that falls'));
      if (typeof dates === 'string') return { verdict: dates };
      return { verdict: 'wears', trend, span: inReach(dates, must(newest, 'newest measurement').date, today) };
    }
    default:
      return assertNever(trend);
  }
}

function datesOf({ way, car, idleMetres }: WearQuestion, reached: LimitReached): DueSpan<LocalDate> | 'off-the-road' | 'no-reading' {
  if (way.by === 'time') return eachEdge(reached, dayReached);
  if (car.usage === null) return 'no-reading';
  if (idleMetres === null) return 'off-the-road';
  const km = eachEdge(reached, (metres) => (metres + idleMetres) / 1000);
  const passed = eachEdge(km, (edge) => reachedOn(car.points, metresFromKilometres(edge)));
  const ahead = datesReached(car.usage, km);
  // What a reading has passed is no forecast: it was reached on a day between two readings.
  return { earliest: passed.earliest ?? ahead.earliest, likely: passed.likely ?? ahead.likely, latest: passed.latest ?? ahead.latest };
}

/** A sum of days in the last digit more than a whole one is that whole one: a millionth of a day is a tenth of a second. */
const TINY = 1e-6;

/** The first whole day on which it is reached; far beyond the calendar is never. */
function dayReached(day: number): LocalDate | null {
  const whole = Math.ceil(day - TINY);
  const date = fromDayNumber(whole);
  return dayNumber(date) < whole ? null : date;
}

/** When it was last measured it still passed, so no edge lies before that; nothing beyond five years is foreseen. */
function inReach(span: DueSpan<LocalDate>, measuredOn: LocalDate, today: LocalDate): DueSpan<LocalDate> {
  const last = addDays(today, FORESEEABLE_DAYS);
  return eachEdge(span, (date) => (date > last ? null : later(date, measuredOn)));
}

function eachEdge<From, To>(span: DueSpan<From>, change: (edge: From) => To | null): DueSpan<To> {
  const at = (edge: From | null) => (edge === null ? null : change(edge));
  return { earliest: at(span.earliest), likely: at(span.likely), latest: at(span.latest) };
}
