import type { DayNumber } from '../calendar/local-date.ts';
import { assert, must } from '../result/assert.ts';

/** Which half of the world a car is driven in; `none` where months should not count (or where one is unsure). */
export type Hemisphere = 'north' | 'south' | 'none';

/** Days in which a car rests, as day numbers: from the first to the last, both included; `to` null: nobody knows until when. */
export interface LaidUpDays {
  readonly from: DayNumber;
  readonly to: DayNumber | null;
}

/** How the days of the year differ for one car. Made by `makeSeason`; plain data, safe to share and to clone. */
export interface Season {
  /** January to December, mean 1: how much more or less than usual is driven on a day of the month. */
  readonly multipliers: readonly number[];
  /** The same as whole hundredths before rescaling, so that sums over days carry no rounding. */
  readonly hundredths: readonly number[];
  /** Multiplier = hundredths * scale. */
  readonly scale: number;
  /** Dated lay-ups in order, none touching another. They do not change the scale: other days stay what they are. */
  readonly layUps: readonly LaidUpDays[];
}

/** Source: half-strength month effect pooled over 30 odometer logs (house measurement, not recomputed here). */
const NORTH = [92, 93, 99, 99, 104, 105, 106, 109, 101, 100, 97, 95] as const;
/** What a laid-up car still moves (house measurement's rule, no outside source). */
const LAID_UP = 5;

const MONTHS_IN_CYCLE = 4800;
/** Days in 400 Gregorian years, after which the calendar repeats. */
const DAYS_IN_CYCLE = 146_097;
const FIRST_DAY_OF_MONTH = firstDays();

/**
 * The season of one car: twelve multipliers with mean 1; marked months count 0.05 before they are rescaled to mean 1. A day
 * of a dated lay-up counts as one of a marked month; it happens once, so that nothing is rescaled for it.
 *
 * @example makeSeason('none').multipliers //=> [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]
 */
export function makeSeason(hemisphere: Hemisphere, laidUpMonths: readonly number[] = [], layUps: readonly LaidUpDays[] = []): Season {
  const laidUp = new Set(laidUpMonths);
  assert([...laidUp].every((month) => Number.isInteger(month) && month >= 1 && month <= 12), 'a laid-up month is 1 to 12');
  const hundredths = Array.from({ length: 12 }, (_, at) => (laidUp.has(at + 1) ? LAID_UP : usualHundredths(hemisphere, at)));
  const scale = 12 / hundredths.reduce((sum, weight) => sum + weight, 0);
  return { hundredths, scale, multipliers: hundredths.map((weight) => weight * scale), layUps: joined(layUps) };
}

/** In order, what overlaps or touches made one, so that no day is taken away twice. */
function joined(layUps: readonly LaidUpDays[]): readonly LaidUpDays[] {
  const apart: LaidUpDays[] = [];
  for (const one of [...layUps].sort((a, b) => a.from - b.from)) {
    assert(Number.isInteger(one.from) && (one.to === null || (Number.isInteger(one.to) && one.to >= one.from)), 'a lay-up ends no earlier than it begins');
    const last = apart.at(-1);
    if (last === undefined || (last.to !== null && last.to + 1 < one.from)) apart.push(one);
    else apart[apart.length - 1] = { from: last.from, to: last.to === null || one.to === null ? null : Math.max(last.to, one.to) };
  }
  return apart;
}

function usualHundredths(hemisphere: Hemisphere, month: number): number {
  if (hemisphere === 'none') return 100;
  return must(NORTH[hemisphere === 'north' ? month : (month + 6) % 12], 'month');
}

/**
 * Season-days in [from, to): the sum of the months' multipliers over the days (day numbers since 1970-01-01). It is a
 * difference of two whole numbers, rounded once, so ranges laid end to end add up.
 *
 * @example seasonDays(makeSeason('none'), 0, 365) //=> 365
 */
export function seasonDays(season: Season, from: number, to: number): number {
  return (hundredthsBefore(season, to) - hundredthsBefore(season, from)) * season.scale;
}

/** Whole hundredths before a day, counted from a fixed point, less what lay-ups before it take away: only differences mean anything. */
function hundredthsBefore(season: Season, day: number): number {
  assert(Number.isInteger(day), 'a day number is whole');
  return season.layUps.reduce((sum, layUp) => sum - takenAway(season, layUp, day), hundredthsByMonth(season, day));
}

/** What a lay-up takes from the days before `day`. */
function takenAway(season: Season, { from, to }: LaidUpDays, day: number): number {
  const end = to === null ? day : Math.min(day, to + 1);
  return end <= from ? 0 : hundredthsByMonth(season, end) - hundredthsByMonth(season, from) - LAID_UP * (end - from);
}

/** Whole hundredths of the months in [1970-01-01, day); negative before. */
function hundredthsByMonth(season: Season, day: number): number {
  const before = monthSums(season);
  const cycle = Math.floor(day / DAYS_IN_CYCLE);
  const inCycle = day - cycle * DAYS_IN_CYCLE;
  const month = monthOfDay(inCycle);
  const intoMonth = inCycle - (FIRST_DAY_OF_MONTH[month] ?? 0);
  return cycle * (before[MONTHS_IN_CYCLE] ?? 0) + (before[month] ?? 0) + intoMonth * (season.hundredths[month % 12] ?? 0);
}

/** Index of the month that holds a day of the cycle: a guess by the mean month, then a step or two. */
function monthOfDay(day: number): number {
  let month = Math.floor((day * MONTHS_IN_CYCLE) / DAYS_IN_CYCLE);
  while ((FIRST_DAY_OF_MONTH[month] ?? 0) > day) month -= 1;
  while ((FIRST_DAY_OF_MONTH[month + 1] ?? Infinity) <= day) month += 1;
  return month;
}

const sumsOfSeason = new WeakMap<Season, Float64Array>();

/** Hundredths before each month of the cycle, computed once for a season. */
function monthSums(season: Season): Float64Array {
  const known = sumsOfSeason.get(season);
  if (known !== undefined) return known;
  const sums = new Float64Array(MONTHS_IN_CYCLE + 1);
  for (let month = 0; month < MONTHS_IN_CYCLE; month += 1) {
    const days = (FIRST_DAY_OF_MONTH[month + 1] ?? 0) - (FIRST_DAY_OF_MONTH[month] ?? 0);
    sums[month + 1] = (sums[month] ?? 0) + days * (season.hundredths[month % 12] ?? 0);
  }
  sumsOfSeason.set(season, sums);
  return sums;
}

/** First day number of each month from January 1970, for 400 years and the month after. */
function firstDays(): Int32Array {
  return Int32Array.from({ length: MONTHS_IN_CYCLE + 1 }, (_, month) =>
    Math.round(Date.UTC(1970 + Math.floor(month / 12), month % 12, 1) / 86_400_000));
}
