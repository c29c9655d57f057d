import { addMonths } from '../calendar/add-months.ts';
import { dayNumber, fromDayNumber, type DayNumber } from '../calendar/local-date.ts';
import { likelyKm, spreadOfLog } from '../fleet/odometer-forecast.ts';
import type { Usage } from '../fleet/usage-rate.ts';

/** How a car is driven in one case: its whole distance on each day, never falling. */
export interface DistancePath {
  /** The whole distance on a day, in km; before the last reading, that of the last reading. */
  readonly kmOn: (day: DayNumber) => number;
  /** The first day on which a whole distance is reached; null where that is after the last day looked at. */
  readonly reaches: (km: number) => DayNumber | null;
}

/**
 * A car's distance ahead, z standard deviations from the likely one on every day, up to a last day: who drives more than is
 * likely does so all along, as due windows have it.
 */
export function distancePath(usage: Usage, z: number, lastDay: DayNumber): DistancePath {
  const { likely, spread } = curvesOf(usage, lastDay);
  const slack = 3 * usage.ratePerSeasonDay;
  const km = new Float64Array(likely.length);
  let most = 0;
  for (let days = 0; days < km.length; days += 1) {
    most = Math.max(most, ((likely[days] ?? 0) + slack) * Math.exp(z * (spread[days] ?? 0)) - slack);
    km[days] = most;
  }
  return {
    kmOn: (day) => usage.lastKm + (km[Math.max(0, Math.min(km.length - 1, day - usage.lastDay))] ?? 0),
    reaches: (target) => {
      const days = firstAtLeast(km, target - usage.lastKm);
      return days === null ? null : usage.lastDay + days;
    },
  };
}

interface Curves {
  readonly likely: Float64Array;
  readonly spread: Float64Array;
}

const curvesOfUsage = new WeakMap<Usage, Curves>();

/** What all cases of a car share. */
function curvesOf(usage: Usage, lastDay: DayNumber): Curves {
  const length = Math.max(1, lastDay - usage.lastDay + 1);
  const known = curvesOfUsage.get(usage);
  if (known?.likely.length === length) return known;
  const curves = {
    likely: Float64Array.from({ length }, (_, days) => likelyKm(usage, days)),
    spread: Float64Array.from({ length }, (_, days) => spreadOfLog(usage, days)),
  };
  curvesOfUsage.set(usage, curves);
  return curves;
}

function firstAtLeast(rising: Float64Array, wanted: number): number | null {
  if ((rising.at(-1) ?? 0) < wanted) return null;
  let [low, high] = [0, rising.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The day some months after another, as `addMonths` has it; asked often of few days. */
export type MonthsAfter = (day: DayNumber, months: number) => DayNumber;

/** Makes a `MonthsAfter` that remembers. */
export function monthsAfter(): MonthsAfter {
  const known = new Map<number, DayNumber>();
  return (day, months) => {
    const key = day * MOST_MONTHS + months;
    const found = known.get(key) ?? dayNumber(addMonths(fromDayNumber(day), months));
    known.set(key, found);
    return found;
  };
}

/** More than any interval or step of one has. */
const MOST_MONTHS = 8192;
