import type { DayNumber } from '../calendar/local-date.ts';
import { assert } from '../result/assert.ts';
import type { Kilometres } from '../units/distance.ts';
import { seasonDays, type Season } from './usage-season.ts';

/** An odometer value on a day: day number since 1970-01-01, kilometres of the car's continuous distance. */
export interface DayKm {
  readonly day: DayNumber;
  readonly km: Kilometres;
}

/** What accepted readings say of a car's use up to the last of them, older intervals counting less. Plain data. */
export interface UsageEvidence {
  readonly firstDay: number;
  readonly lastDay: number;
  readonly lastKm: number;
  /** Days between the last two days with a reading; 0 with one. */
  readonly gapDays: number;
  /** Days with a reading. */
  readonly readingDays: number;
  /** Weighed distance of all intervals, km. */
  readonly km: number;
  /** B: weighed season-days of all intervals. */
  readonly exposure: number;
}

/** Source: house measurement on 30 odometer logs; half-lives of 90 to 365 days did about as well. */
const HALF_LIFE_DAYS = 180;

/**
 * The evidence with one more reading. What was known decays by 2^(-days / 180); the new interval counts by the mean decay
 * over its days. Of several readings on a day the highest counts. Throws where days or distance go back.
 *
 * Source: house method, FORECAST section 5, written as a running sum (the plain sum is in its test).
 * @example withReading(null, { day: 0, km: 500 }, season).exposure //=> 0
 */
export function withReading(known: UsageEvidence | null, reading: DayKm, season: Season): UsageEvidence {
  if (known === null) {
    return { firstDay: reading.day, lastDay: reading.day, lastKm: reading.km, gapDays: 0, readingDays: 1, km: 0, exposure: 0 };
  }
  assert(reading.day >= known.lastDay, 'readings are sorted by day');
  if (reading.day === known.lastDay) return onTheSameDay(known, reading.km);
  assert(reading.km >= known.lastKm, 'accepted readings never fall');
  const days = reading.day - known.lastDay;
  const decay = 2 ** (-days / HALF_LIFE_DAYS);
  const weight = meanDecay(days);
  return {
    firstDay: known.firstDay,
    lastDay: reading.day,
    lastKm: reading.km,
    gapDays: days,
    readingDays: known.readingDays + 1,
    km: known.km * decay + weight * (reading.km - known.lastKm),
    exposure: known.exposure * decay + weight * seasonDays(season, known.lastDay, reading.day),
  };
}

/** All readings together; null with none. */
export function evidenceOf(readings: readonly DayKm[], season: Season): UsageEvidence | null {
  return readings.reduce<UsageEvidence | null>((known, reading) => withReading(known, reading, season), null);
}

/** A higher reading of the day lengthens the last interval; a lower one changes nothing. */
function onTheSameDay(known: UsageEvidence, km: number): UsageEvidence {
  if (km <= known.lastKm) return known;
  const weight = known.gapDays === 0 ? 0 : meanDecay(known.gapDays);
  return { ...known, lastKm: km, km: known.km + weight * (km - known.lastKm) };
}

/** The mean of 2^(-age / half-life) over ages 0 to `days`. */
function meanDecay(days: number): number {
  return (HALF_LIFE_DAYS / Math.LN2) * (1 - 2 ** (-days / HALF_LIFE_DAYS)) / days;
}
