import { dayNumber, fromDayNumber, LAST_DATE, type DayNumber, type LocalDate } from '../calendar/local-date.ts';
import { assert } from '../result/assert.ts';
import type { Kilometres } from '../units/distance.ts';
import { normalProbability } from './normal-probability.ts';
import type { LaterUse, Usage } from './usage-rate.ts';
import { seasonDays, type Season } from './usage-season.ts';

/** Four fifths of cases lie between -Z and +Z. */
export const Z_OF_EDGE = 1.2816;
/** Five years: what falls later is not foreseeable. */
export const FORESEEABLE_DAYS = 1826;

/** An odometer in km: 1 in 10 lies below `low`, even odds at `likely`, 1 in 10 above `high`. */
export interface OdometerBand {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** When a target is reached: 1 in 10 before `earliest`, even odds, 1 in 10 after `latest`; null = not foreseeable within five years. */
export interface DueSpan<Day> {
  readonly earliest: Day | null;
  readonly likely: Day | null;
  readonly latest: Day | null;
}

/** F(h): median km driven from the last reading to `days` after it. */
export function likelyKm(usage: Usage, days: number): number {
  return likelyBetween(usage, usage.lastDay, usage.lastDay + days);
}

/** Median km driven from one day to another, neither before the last reading; each day at the rate of the use then in force. */
export function likelyBetween(usage: Usage, from: DayNumber, to: DayNumber): number {
  if (usage.later.length === 0) return usage.ratePerSeasonDay * seasonDays(usage.season, from, to);
  return usesOf(usage).reduce((km, use) => km + kmOfUse(usage.season, use, from, to), 0);
}

interface DatedUse extends LaterUse {
  /** The day on which the next use begins. */
  readonly to: DayNumber;
}

function usesOf(usage: Usage): readonly DatedUse[] {
  const starts = [{ from: -Infinity, ratePerSeasonDay: usage.ratePerSeasonDay }, ...usage.later];
  return starts.map((use, at) => ({ ...use, to: starts[at + 1]?.from ?? Infinity }));
}

function kmOfUse(season: Season, use: DatedUse, from: DayNumber, to: DayNumber): number {
  const [start, end] = [Math.max(from, use.from), Math.min(to, use.to)];
  return end <= start ? 0 : use.ratePerSeasonDay * seasonDays(season, start, end);
}

/**
 * sigma(h): spread of the logarithm of the distance driven by `days` after the last reading.
 *
 * Source: house measurement (FORECAST section 5), calibrated on 30 logs.
 */
export function spreadOfLog(usage: Usage, days: number): number {
  const unlearned = unlearnedPart(usage, days);
  const variance = 0.05 + (0.14 * 60) / (60 + days) + 0.15 * unlearned ** 2
    + (0.035 * Math.min(usage.gapDays, 365)) / 365 + (0.02 * Math.max(0, days - 365)) / 365;
  return Math.sqrt(variance);
}

/** How much of the use is guessed, 0 to 1: that of each use, by its share of the distance; of a use to come nothing is learned. */
function unlearnedPart(usage: Usage, days: number): number {
  const now = usage.priorDays / (usage.exposure + usage.priorDays);
  const [change] = usage.later;
  const whole = change === undefined ? 0 : likelyKm(usage, days);
  if (change === undefined || whole <= 0) return now;
  const asNow = likelyBetween(usage, usage.lastDay, Math.min(change.from, usage.lastDay + days)) / whole;
  return now * asNow + (1 - asNow);
}

/** Q_z(h): km driven by `days` after the last reading at z standard deviations (0 = median, +-1.2816 = 1 in 10). */
export function kmAtZ(usage: Usage, days: number, z: number): number {
  const slack = 3 * usage.ratePerSeasonDay;
  return Math.max(0, (likelyKm(usage, days) + slack) * Math.exp(z * spreadOfLog(usage, days)) - slack);
}

/**
 * The odometer on a day, in km of continuous distance. A day before the last reading answers as that reading's day: the
 * past is interpolated, not forecast.
 */
export function odometerOn(usage: Usage, day: DayNumber): OdometerBand {
  const days = Math.max(0, day - usage.lastDay);
  const at = (z: number) => usage.lastKm + kmAtZ(usage, days, z);
  return { low: at(-Z_OF_EDGE), likely: at(0), high: at(Z_OF_EDGE) };
}

/**
 * The day on which an odometer target (km, continuous) is reached at z: the first day whose running maximum of Q_z covers
 * it; null beyond five years after the last reading. z is the sign of the odometer's side: +1.2816 gives the EARLY edge.
 * A target at or below the last reading is reached on that reading's day, the first on which it is known.
 */
export function dueDayAt(usage: Usage, targetKm: Kilometres, z: number): number | null {
  const distance = targetKm - usage.lastKm;
  const highest = highestSoFar(usage, z);
  if ((highest[FORESEEABLE_DAYS] ?? 0) < distance) return null;
  let low = 0;
  let high = FORESEEABLE_DAYS;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((highest[middle] ?? 0) >= distance) high = middle;
    else low = middle + 1;
  }
  return usage.lastDay + low;
}

/** The three due days of a target (km, continuous), as day numbers. @example dueDays(usage, 66_500).likely //=> 19894 */
export function dueDays(usage: Usage, targetKm: Kilometres): DueSpan<number> {
  return {
    earliest: dueDayAt(usage, targetKm, Z_OF_EDGE),
    likely: dueDayAt(usage, targetKm, 0),
    latest: dueDayAt(usage, targetKm, -Z_OF_EDGE),
  };
}

/** The three due dates of a target (km, continuous). @example dueDates(usage, 66_500).likely //=> '2024-06-20' */
export function dueDates(usage: Usage, targetKm: Kilometres): DueSpan<LocalDate> {
  const { earliest, likely, latest } = dueDays(usage, targetKm);
  return { earliest: dateOf(earliest), likely: dateOf(likely), latest: dateOf(latest) };
}

/** The odometer on a date, in km of continuous distance. */
export function odometerOnDate(usage: Usage, date: LocalDate): OdometerBand {
  return odometerOn(usage, dayNumber(date));
}

/**
 * The probability, 0 to 1, that a target (km, continuous) is reached by a day; 1 where the last reading has passed it.
 *
 * Source: house method, FORECAST section 5.
 */
export function probabilityDueBy(usage: Usage, targetKm: Kilometres, day: DayNumber): number {
  const distance = targetKm - usage.lastKm;
  if (distance <= 0) return 1;
  const days = Math.max(0, day - usage.lastDay);
  const slack = 3 * usage.ratePerSeasonDay;
  return normalProbability(Math.log((likelyKm(usage, days) + slack) / (distance + slack)) / spreadOfLog(usage, days));
}

const curvesOfUsage = new WeakMap<Usage, Map<number, Float64Array>>();

/** The running maximum of Q_z over the foreseeable days, computed once for a usage and z: many targets share it. */
function highestSoFar(usage: Usage, z: number): Float64Array {
  assert(Number.isFinite(z), 'z is finite');
  const curves = curvesOfUsage.get(usage) ?? new Map<number, Float64Array>();
  curvesOfUsage.set(usage, curves);
  const known = curves.get(z);
  if (known !== undefined) return known;
  const highest = new Float64Array(FORESEEABLE_DAYS + 1);
  let most = 0;
  for (let days = 0; days <= FORESEEABLE_DAYS; days += 1) {
    most = Math.max(most, kmAtZ(usage, days, z));
    highest[days] = most;
  }
  curves.set(z, highest);
  return highest;
}

function dateOf(day: DayNumber | null): LocalDate | null {
  if (day === null || day > dayNumber(LAST_DATE)) return null;
  return fromDayNumber(day);
}
