import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { distanceOn, reachedOn, type KnownDistance } from '../fleet/known-distance.ts';
import { dueDates, type DueSpan } from '../fleet/odometer-forecast.ts';
import { assert, must } from '../result/assert.ts';
import { addMetres, fromTyped, toKilometres, type Metres } from '../units/distance.ts';
import type { FollowUp } from '../work/follow-up.ts';

/** Where a follow-up by distance is reached, and when. */
export interface FollowUpTarget {
  /** The car's whole distance at which it is to be looked at. */
  readonly metres: Metres;
  /** Nobody read the odometer on the day from which it counts. */
  readonly estimated: boolean;
  readonly span: DueSpan<LocalDate>;
}

/**
 * The distance of a follow-up on the car's whole distance, and when that is reached; null where it has none, or where nothing
 * tells how far the car had gone on the day from which it counts.
 *
 * @example followUpTarget({ ...one, madeOn: '2026-11-20', after: { value: 50, unit: 'km' } }, use, known)?.metres //=> 53_050_000
 */
export function followUpTarget({ madeOn, countedFrom, after }: Pick<FollowUp, 'madeOn' | 'countedFrom' | 'after'>, use: CarUse, known: KnownDistance): FollowUpTarget | null {
  if (after === null) return null;
  const since = countedFrom ?? madeOn;
  const begun = distanceOn(known, since);
  if (begun === null) return null;
  const typed = fromTyped(after);
  assert(typed.ok, 'the distance of a follow-up was checked');
  const metres = addMetres(begun.metres, typed.value);
  return { metres, estimated: begun.estimated, span: spanOf(since, begun.metres, metres, use) };
}

/**
 * The day it was reached, where a reading has passed it; else as forecast. Where the odometer was last read before the day
 * from which it counts, what is forecast is the distance driven since that day, as if the odometer had been read then: how
 * far the car had gone by then is as uncertain as it is, and has no part in it.
 */
function spanOf(madeOn: LocalDate, begun: Metres, metres: Metres, use: CarUse): DueSpan<LocalDate> {
  const reached = reachedOn(use.points, metres);
  if (reached !== null) return { earliest: reached, likely: reached, latest: reached };
  const usage = must(use.usage, 'usage of a car whose distance is known');
  const since = dayNumber(madeOn);
  return dueDates(since > usage.lastDay ? { ...usage, lastDay: since, lastKm: toKilometres(begun) } : usage, toKilometres(metres));
}
