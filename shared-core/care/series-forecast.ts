import type { LocalDate } from '../calendar/local-date.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import type { MeasurementSeries } from './measurement-series.ts';
import type { SeriesLimit } from './series-limits.ts';
import { wearForecast, type WearForecast } from './wear-forecast.ts';

/** Of what nobody knows how exactly it can be measured: this part of the way from its first value to its limit (ours, no source). */
const PART_OF_THE_WAY = 0.05;

/** When a series reaches one of its limits, or why that cannot be said. */
export function forecastSeries(series: MeasurementSeries, limit: SeriesLimit, today: LocalDate, car: Pick<KnownDistance, 'points' | 'usage'>): WearForecast {
  return wearForecast({ points: series.points, limit: limit.value, way: limit.way, error: errorOf(series, limit), today, car, idleMetres: series.idleMetres });
}

/** How far ordinary gauges differ in a series, in its canonical unit; of something else without a limit, not at all. */
export function errorOf({ error, points }: MeasurementSeries, limit: SeriesLimit | null): number {
  if (error !== null) return error;
  const first = points[0]?.value;
  return limit === null || first === undefined ? 0 : PART_OF_THE_WAY * Math.abs(first - limit.value);
}
