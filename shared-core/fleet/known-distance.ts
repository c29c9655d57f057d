import { addDays, dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { metresFromKilometres, type Metres } from '../units/distance.ts';
import type { DistancePoint } from './continuous-distance.ts';
import { kmAtZ } from './odometer-forecast.ts';
import type { Usage } from './usage-rate.ts';

/** What is known of a car's distance, to place a day on which nobody read the odometer. */
export interface KnownDistance {
  readonly points: readonly DistancePoint[];
  readonly usage: Usage | null;
  readonly firstRegistered: LocalDate | null;
}

/**
 * The car's whole distance on a date, on the straight line between the readings around it; before the first reading from
 * 0 at first registration; after the last one as forecast. Null where there is nothing to draw a line from.
 *
 * @example distanceOn(known, date) //=> { metres: 53_000_000, estimated: true }
 */
export function distanceOn(known: KnownDistance, date: LocalDate): { readonly metres: Metres; readonly estimated: boolean } | null {
  const exact = known.points.find((point) => point.date === date);
  if (exact !== undefined) return { metres: exact.metres, estimated: false };
  const before = known.points.findLast((point) => point.date < date) ?? startOf(known, date);
  const after = known.points.find((point) => point.date > date);
  if (before !== null && after !== undefined) return { metres: between(before, after, date), estimated: true };
  if (before === null || known.usage === null) return null;
  return { metres: metresFromKilometres(known.usage.lastKm + kmAtZ(known.usage, dayNumber(date) - known.usage.lastDay, 0)), estimated: true };
}

interface DatedMetres {
  readonly date: LocalDate;
  readonly metres: Metres;
}

/** A new car starts at 0 on the day it is registered. */
function startOf(known: KnownDistance, date: LocalDate): DatedMetres | null {
  const start = known.firstRegistered;
  return start === null || start > date || known.points.length === 0 ? null : { date: start, metres: metresFromKilometres(0) };
}

function between(before: DatedMetres, after: DatedMetres, date: LocalDate): Metres {
  const share = (dayNumber(date) - dayNumber(before.date)) / (dayNumber(after.date) - dayNumber(before.date));
  return metresFromKilometres((before.metres + share * (after.metres - before.metres)) / 1000);
}

/**
 * The day on which a whole distance was reached, on the straight line between the readings around it; null where no reading
 * has reached it yet. Before the first reading nobody knows, and it is the first reading's day.
 *
 * @example reachedOn(points, 24_000_000) //=> '2025-08-01'
 */
export function reachedOn(points: readonly DistancePoint[], metres: Metres): LocalDate | null {
  const at = points.findIndex((point) => point.metres >= metres);
  const [before, after] = [points[at - 1], points[at]];
  if (after === undefined || before === undefined) return after?.date ?? null;
  const share = (metres - before.metres) / (after.metres - before.metres);
  return addDays(before.date, Math.ceil(share * (dayNumber(after.date) - dayNumber(before.date))));
}
