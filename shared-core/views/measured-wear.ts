import { earliest, type LocalDate } from '../calendar/local-date.ts';
import { measurements } from '../care/measurement.ts';
import { measurementSeries, type MeasurementSeries } from '../care/measurement-series.ts';
import { forecastSeries } from '../care/series-forecast.ts';
import type { SeriesLimit } from '../care/series-limits.ts';
import type { ServiceItem } from '../care/service-item.ts';
import type { WearForecast } from '../care/wear-forecast.ts';
import { wearLimits } from '../care/wear-limit.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import type { DueSpan } from '../fleet/odometer-forecast.ts';
import { wheelMoves } from '../fleet/wheel.ts';
import type { Facts } from '../journal/facts.ts';
import { replacedOn } from '../records/replaced-on.ts';
import type { WorkRecord } from '../records/work-record.ts';

/** A series held against one of its limits. */
export interface SeriesVerdict {
  readonly series: MeasurementSeries;
  readonly limit: SeriesLimit;
  readonly forecast: WearForecast;
}

/** A series with what is said of it by each of its limits. */
export interface SeriesWear {
  readonly series: MeasurementSeries;
  readonly verdicts: readonly SeriesVerdict[];
}

/** What measured wear says of a service item. */
export interface ItemWear {
  readonly span: DueSpan<LocalDate>;
  /** A measurement is past its limit. */
  readonly wornOut: boolean;
  /** The series that gives the likely date or, with none, the earliest. */
  readonly governing: SeriesVerdict;
}

/** What a car's measured wear is worked out from. */
export interface WearInput {
  readonly facts: Facts;
  readonly car: string;
  readonly today: LocalDate;
  readonly known: KnownDistance;
  readonly items: readonly ServiceItem[];
  readonly records: readonly WorkRecord[];
}

/** All that was measured on a car, each series held against its limits. */
export function measuredWear({ facts, car, today, known, items, records }: WearInput): readonly SeriesWear[] {
  const list = facts.ofCar(measurements, car);
  if (list.length === 0) return [];
  const series = measurementSeries({
    today, known, items, measurements: list, moves: facts.ofCar(wheelMoves, car), limits: facts.ofCar(wearLimits, car), replacedOn: replacedOn(records),
  });
  return series.map((one) => ({
    series: one,
    verdicts: one.limits.map((limit) => ({ series: one, limit, forecast: forecastSeries(one, limit, today, known) })),
  }));
}

/**
 * What the series that an item is measured by come to: at each edge the earliest of them, as if they moved together; null
 * where none gives a date.
 */
export function wearOfItem(item: ServiceItem, all: readonly SeriesWear[]): ItemWear | null {
  const dated = all.flatMap((one) => one.verdicts).filter((one) => one.limit.items.includes(item.id)).flatMap((verdict) => {
    const span = spanOf(verdict.forecast);
    return span === null ? [] : [{ verdict, span }];
  });
  if (dated.length === 0) return null;
  const edge = (which: keyof DueSpan<LocalDate>) => earliest(...dated.map(({ span }) => span[which]));
  const span = { earliest: edge('earliest'), likely: edge('likely'), latest: edge('latest') };
  const worn = dated.filter(({ verdict }) => verdict.forecast.verdict === 'past-limit');
  const leading = span.likely === null ? 'earliest' : 'likely';
  const governing = worn[0] ?? dated.find((one) => one.span[leading] === span[leading]);
  return governing === undefined ? null : { span, wornOut: worn.length > 0, governing: governing.verdict };
}

/** The dates of a verdict; null where it gives none. */
export function spanOf(forecast: WearForecast): DueSpan<LocalDate> | null {
  return 'span' in forecast ? forecast.span : null;
}
