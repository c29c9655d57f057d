import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { offsetOf } from '../fleet/continuous-distance.ts';
import { odometerOnDate } from '../fleet/odometer-forecast.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';

/** An odometer as the car's present instrument shows it, in whole units: 1 in 10 below `low`, 1 in 10 above `high`. */
export interface OdometerShown {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly unit: DistanceUnit;
}

/** What the present instrument shows at a whole distance in metres. */
export function shownOnInstrument(use: CarUse, wholeMetres: number, unit: DistanceUnit): number {
  const last = use.points.at(-1)?.reading.instrument ?? null;
  return Math.round((wholeMetres - offsetOf(use.instruments, last)) / METRES_IN[unit]);
}

/** The odometer on a date, or null while nothing was read. */
export function odometerShown(car: Car, use: CarUse, today: LocalDate): OdometerShown | null {
  if (use.usage === null) return null;
  const band = odometerOnDate(use.usage, today);
  const shown = (km: number) => shownOnInstrument(use, km * 1000, car.unit);
  return { low: shown(band.low), likely: shown(band.likely), high: shown(band.high), unit: car.unit };
}
