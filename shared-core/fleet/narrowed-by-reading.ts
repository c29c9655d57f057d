import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { dayKm, type CarUse } from './car-usage.ts';
import { odometerOnDate, type OdometerBand } from './odometer-forecast.ts';
import { fitUsage } from './usage-rate.ts';

/** What an odometer is foreseen to have gone by a day, in km of whole distance: as known now, and after one more reading. */
export interface NarrowedForecast {
  readonly now: OdometerBand;
  readonly afterReading: OdometerBand;
}

/**
 * How far a reading taken today would narrow what is foreseen for a later day, were it the likely one. Null with no
 * reading yet, and where the last one is of today.
 *
 * @example narrowedByReading(use, '2026-11-25', '2027-02-25')?.afterReading.high //=> 60_840
 */
export function narrowedByReading({ points, usageTold, usage }: CarUse, today: LocalDate, on: LocalDate): NarrowedForecast | null {
  if (usage === null || usage.lastDay >= dayNumber(today)) return null;
  const likely = { day: dayNumber(today), km: odometerOnDate(usage, today).likely };
  const read = fitUsage({ ...usageTold, readings: [...points.map(dayKm), likely] });
  return read === null ? null : { now: odometerOnDate(usage, on), afterReading: odometerOnDate(read, on) };
}
