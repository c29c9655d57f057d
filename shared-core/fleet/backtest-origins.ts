import { dueDays, FORESEEABLE_DAYS, odometerOn } from './odometer-forecast.ts';
import { evidenceOf, withReading, type DayKm, type UsageEvidence } from './usage-evidence.ts';
import { usageOf } from './usage-rate.ts';
import type { Season } from './usage-season.ts';

/** A forecast made on the day of a reading by one method: distances from that reading in km, times from it in days. */
export interface OriginForecast {
  readonly kmAfter: (days: number) => Spread;
  readonly daysUntil: (km: number) => Spread;
}

/** A likely value and, for methods that tell one, the four fifths around it. */
export interface Spread {
  readonly likely: number;
  readonly range: { readonly low: number; readonly high: number } | null;
}

/** The methods set side by side: our own, the last two readings, the whole history. */
export type BacktestMethod = 'own' | 'lastTwo' | 'allHistory';

/** A kept reading from which the future is forecast, knowing only kept readings up to it. */
export interface Origin {
  readonly reading: DayKm;
  readonly forecasts: Readonly<Record<BacktestMethod, OriginForecast>>;
}

/** The first reading, then each next one at least so many days after the last kept. */
export function thinOut(readings: readonly DayKm[], spacingDays: number): readonly DayKm[] {
  const kept: DayKm[] = [];
  for (const reading of readings) {
    const last = kept.at(-1);
    if (last === undefined || reading.day - last.day >= spacingDays) kept.push(reading);
  }
  return kept;
}

/** An origin at every kept reading from the second on. */
export function originsOf(kept: readonly DayKm[], season: Season): readonly Origin[] {
  const [first, ...rest] = kept;
  if (first === undefined) return [];
  let before = first;
  let evidence = evidenceOf([first], season);
  return rest.map((reading) => {
    evidence = withReading(evidence, reading, season);
    const forecasts = { own: ownForecast(evidence, season), lastTwo: straightLine(before, reading), allHistory: straightLine(first, reading) };
    before = reading;
    return { reading, forecasts };
  });
}

function ownForecast(evidence: UsageEvidence, season: Season): OriginForecast {
  const usage = usageOf(evidence, null, season);
  return {
    kmAfter: (days) => {
      const band = odometerOn(usage, usage.lastDay + days);
      return { likely: band.likely - usage.lastKm, range: { low: band.low - usage.lastKm, high: band.high - usage.lastKm } };
    },
    daysUntil: (km) => {
      const due = dueDays(usage, usage.lastKm + km);
      const after = (day: number | null) => (day === null ? null : day - usage.lastDay);
      // What is not foreseeable counts as five years where an error is to be taken, and has no end where a range is.
      return {
        likely: after(due.likely) ?? FORESEEABLE_DAYS,
        range: { low: after(due.earliest) ?? FORESEEABLE_DAYS, high: after(due.latest) ?? Infinity },
      };
    },
  };
}

/** The rate between two readings carried on, with the same limit of five years; it tells no range. */
function straightLine(from: DayKm, to: DayKm): OriginForecast {
  const rate = (to.km - from.km) / (to.day - from.day);
  return {
    kmAfter: (days) => ({ likely: rate * days, range: null }),
    daysUntil: (km) => ({ likely: Math.min(km / rate, FORESEEABLE_DAYS), range: null }),
  };
}
