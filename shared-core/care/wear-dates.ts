import { dayNumber, fromDayNumber, LAST_DATE, type LocalDate } from '../calendar/local-date.ts';
import { FORESEEABLE_DAYS, likelyKm, spreadOfLog, Z_OF_EDGE, type DueSpan } from '../fleet/odometer-forecast.ts';
import type { Usage } from '../fleet/usage-rate.ts';

/** A distance (km, the car's whole one) that is itself uncertain: 1 in 10 lies before `earliest`, 1 in 10 after `latest`; null is never. */
export interface UncertainKm {
  readonly earliest: number | null;
  readonly likely: number | null;
  readonly latest: number | null;
}

/**
 * When an uncertain distance is reached by an uncertain use. How fast a thing wears and how far the car will be driven are
 * taken as independent, each with a spread of the logarithm of the distance still to go; independent spreads add by their
 * squares. The spread of the wear is taken from each edge by itself, so a band may be wider on one side. Without a spread of
 * the wear the dates are those of the distance alone. Null beyond five years after the last reading.
 *
 * Source: the sum of independent normal variables; that of the use by FORECAST section 5. A simulation is the test.
 * @example datesReached(usage, { earliest: 61_000, likely: 66_500, latest: 74_000 }).likely //=> '2024-06-20'
 */
export function datesReached(usage: Usage, km: UncertainKm): DueSpan<LocalDate> {
  const slack = 3 * usage.ratePerSeasonDay;
  const toGo = (target: number) => Math.log(Math.max(0, target - usage.lastKm) + slack);
  const likely = km.likely === null ? null : toGo(km.likely);
  const wear = (edge: number | null) => (edge === null || likely === null ? null : Math.abs(toGo(edge) - likely) / Z_OF_EDGE);
  const at = (target: number | null, z: number, wearSpread: number | null) => (target === null || wearSpread === null ? null : firstDay(usage, target, z, wearSpread));
  return {
    // With no likely date, what the steepest line says is all that is known: only the use then spreads it.
    earliest: likely === null && km.earliest !== null ? firstDay(usage, toGo(km.earliest), Z_OF_EDGE, 0) : at(likely, Z_OF_EDGE, wear(km.earliest)),
    likely: at(likely, 0, 0),
    latest: km.latest !== null && km.latest <= usage.lastKm ? dateOf(usage.lastDay) : at(likely, -Z_OF_EDGE, wear(km.latest)),
  };
}

/** The first day on which the distance driven, z standard deviations from the likely one, covers what is to go (its logarithm). */
function firstDay(usage: Usage, toGo: number, z: number, wearSpread: number): LocalDate | null {
  const slack = 3 * usage.ratePerSeasonDay;
  for (let days = 0; days <= FORESEEABLE_DAYS; days += 1) {
    const spread = Math.hypot(spreadOfLog(usage, days), wearSpread);
    if (Math.log(likelyKm(usage, days) + slack) + z * spread >= toGo - TINY) return dateOf(usage.lastDay + days);
  }
  return null;
}

/** Logarithms of one number taken by two ways differ in the last digits. */
const TINY = 1e-12;

function dateOf(day: number): LocalDate | null {
  return day > dayNumber(LAST_DATE) ? null : fromDayNumber(day);
}
