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

/** The id of the instrument last read; null: the first one. */
export function presentInstrument(use: CarUse): string | null {
  return use.points.at(-1)?.reading.instrument ?? null;
}

/** The id of the instrument that was or will be in the car at a whole distance: of those it had reached, the last. */
export function instrumentAt(use: CarUse, wholeMetres: number): string | null {
  const reached = use.instruments.filter((one) => one.distance <= wholeMetres).sort((a, b) => (a.date < b.date ? -1 : 1));
  return reached.at(-1)?.id ?? null;
}

/** What the instrument shows, or showed, at a whole distance in metres, in whole units. */
export function shownWhenReached(use: CarUse, wholeMetres: number, unit: DistanceUnit): number {
  return shownOn(use, instrumentAt(use, wholeMetres), wholeMetres, unit);
}

function shownOn(use: CarUse, instrument: string | null, wholeMetres: number, unit: DistanceUnit): number {
  return Math.round((wholeMetres - offsetOf(use.instruments, instrument)) / METRES_IN[unit]);
}

/** The odometer on a date, or null while nothing was read. */
export function odometerShown(car: Car, use: CarUse, today: LocalDate): OdometerShown | null {
  if (use.usage === null) return null;
  const band = odometerOnDate(use.usage, today);
  const shown = (km: number) => shownOn(use, presentInstrument(use), km * 1000, car.unit);
  return { low: shown(band.low), likely: shown(band.likely), high: shown(band.high), unit: car.unit };
}
