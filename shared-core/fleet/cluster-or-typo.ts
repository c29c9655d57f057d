import { assert } from '../result/assert.ts';
import { likelyKm } from './odometer-forecast.ts';
import { zOfDistance, zOfReading } from './reading-judgement.ts';
import type { DayKm, Usage } from './usage-rate.ts';

/** What the next reading says of a doubtful one: a slip of the hand, a replaced instrument, or nothing sure. */
export type ClusterVerdict =
  | { readonly verdict: 'typo' | 'ask'; readonly zOld: number; readonly zNew: number }
  | {
      readonly verdict: 'replaced';
      readonly zOld: number;
      readonly zNew: number;
      /** Continuous distance on the doubtful reading's day, km: an estimate, for the keeper to correct. */
      readonly distanceKm: number;
      /** What is to be added to readings from then on, km (beside what was added before); it may be negative. */
      readonly offsetKm: number;
    };

/** Source: house measurement with injected resets, donor instruments and typos (FORECAST section 6): 96-98 % right. */
const MOST_Z = 3.5;

/**
 * Decides at the next reading whether a doubtful one was a typo or came from a replaced instrument. `usage`: of the readings
 * before the doubtful one; both readings in km, with what was added before them. |z| is infinite where distance would go back.
 *
 * Source: house method, FORECAST section 6.
 */
export function clusterOrTypo(usage: Usage, doubtful: DayKm, next: DayKm): ClusterVerdict {
  assert(doubtful.day >= usage.lastDay && next.day >= doubtful.day, 'readings are in order of day');
  const zOld = Math.abs(zOfReading(usage, next));
  const zNew = zAfter(usage, doubtful, next);
  if (zOld <= MOST_Z && zOld <= zNew) return { verdict: 'typo', zOld, zNew };
  if (zOld <= MOST_Z || zNew > MOST_Z) return { verdict: 'ask', zOld, zNew };
  const distanceKm = usage.lastKm + likelyKm(usage, Math.max(1, doubtful.day - usage.lastDay));
  return { verdict: 'replaced', zOld, zNew, distanceKm, offsetKm: distanceKm - doubtful.km };
}

/** Whether the distance from one reading to the next is one that the car could have driven, by the same limit. */
export function fitsAfter(usage: Usage, from: DayKm, to: DayKm): boolean {
  return zAfter(usage, from, to) <= MOST_Z;
}

function zAfter(usage: Usage, from: DayKm, to: DayKm): number {
  return Math.abs(zOfDistance(usage, from.day, to.day, to.km - from.km));
}
