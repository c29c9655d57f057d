import { addMonths } from '../calendar/add-months.ts';
import { daysBetween, dayNumber, fromDayNumber, type LocalDate } from '../calendar/local-date.ts';
import { metresFromKilometres, toKilometres, type Metres } from '../units/distance.ts';
import { dayKm } from './car-usage.ts';
import type { DistancePoint } from './continuous-distance.ts';
import { dueDates, odometerOnDate, type DueSpan, type OdometerBand } from './odometer-forecast.ts';
import { usageTold, type ToldUse, type UsageTold } from './told-use.ts';
import { fitUsage, type Usage } from './usage-rate.ts';

/** A reading, and the range that was foreseen for its day some months before. Whole distance, in km. */
export interface ForeseenReading {
  readonly point: DistancePoint;
  readonly foreseenOn: LocalDate;
  readonly range: OdometerBand;
  readonly inside: boolean;
}

/** A further distance, and the dates on which it was foreseen to be reached, from the reading then last. */
export interface ForeseenDate {
  readonly from: DistancePoint;
  readonly dates: DueSpan<LocalDate>;
  /** By the straight line between the readings around it; null: not reached, though its latest date has passed. */
  readonly reachedOn: LocalDate | null;
  readonly inside: boolean;
}

/** How well a car was foreseen so far. */
export interface TrackRecord {
  readonly readings: readonly ForeseenReading[];
  readonly dates: readonly ForeseenDate[];
}

/** What is known of a car; points in order of date. */
export interface TrackOf {
  readonly points: readonly DistancePoint[];
  readonly told: ToldUse;
}

/** So many months before a reading its range is taken. */
export const FORESEEN_MONTHS = 3;
/** Readings closer than this would count one stretch of driving again and again. */
const LEAST_DAYS_APART = 30;
/** A car that is foreseen to go no further than on so many ordinary days, in three months, is at rest. Ours, no source. */
const REST_DAYS = 10;
/** In a longer hole between readings nobody knows when a distance was reached. */
const LONGEST_HOLE_DAYS = 120;

/**
 * Replays the forecasts: each is made again from the readings of days up to its own, from what the keeper has told of
 * lay-ups and changes of use that had begun by then, and from the car's figures as they stand now; then compared with what
 * was read. Nothing is stored. Readings settled since count as they were settled.
 *
 * @example trackRecord(use, metres).readings.filter(({ inside }) => inside).length //=> 7
 */
export function trackRecord(use: TrackOf, step: Metres): TrackRecord {
  const replay: Replay = { points: use.points, usageOn: usageKnownOn(use) };
  return { readings: foreseenReadings(replay), dates: foreseenDates(replay, step) };
}

interface Replay {
  readonly points: readonly DistancePoint[];
  /** The use as it was known on a day; null with no reading by then. */
  readonly usageOn: (day: LocalDate) => Usage | null;
}

function foreseenReadings({ points, usageOn }: Replay): readonly ForeseenReading[] {
  const foreseen: ForeseenReading[] = [];
  for (const point of points) {
    const last = foreseen.at(-1)?.point.date;
    if (last !== undefined && daysBetween(last, point.date) < LEAST_DAYS_APART) continue;
    const foreseenOn = addMonths(point.date, -FORESEEN_MONTHS);
    const usage = usageOn(foreseenOn);
    if (usage === null) continue;
    const range = odometerOnDate(usage, point.date);
    const km = toKilometres(point.metres);
    foreseen.push({ point, foreseenOn, range, inside: km <= range.high && (range.low <= km || wasToRest(usage, range)) });
  }
  return foreseen;
}

/** Where next to nothing was foreseen, standing still is as foreseen, though the range begins a few km higher. */
function wasToRest(usage: Usage, range: OdometerBand): boolean {
  return range.likely - usage.lastKm < REST_DAYS * usage.ratePerSeasonDay;
}

/** Each begins at the first reading after the one before was reached, so that none overlaps another. */
function foreseenDates(use: Replay, step: Metres): readonly ForeseenDate[] {
  const foreseen: ForeseenDate[] = [];
  let from = use.points[0];
  while (from !== undefined) {
    const start: DistancePoint = from;
    const reached = reachedOn(use.points, start.metres + step);
    const one = foreseenDate(use, start, step, reached);
    if (one !== null) foreseen.push(one);
    from = reached === 'not-yet' ? undefined : use.points.find(({ date }) => date > start.date && (reached === 'unknown' || date >= reached));
  }
  return foreseen;
}

function foreseenDate(use: Replay, from: DistancePoint, step: Metres, reached: LocalDate | 'unknown' | 'not-yet'): ForeseenDate | null {
  const usage = use.usageOn(from.date);
  const last = use.points.at(-1);
  if (usage === null || last === undefined || reached === 'unknown') return null;
  const dates = dueDates(usage, toKilometres(from.metres) + toKilometres(step));
  if (reached !== 'not-yet') return { from, dates, reachedOn: reached, inside: isWithin(reached, dates) };
  return dates.latest !== null && dates.latest < last.date ? { from, dates, reachedOn: null, inside: false } : null;
}

/** A date that was not foreseeable lies beyond five years. */
function isWithin(date: LocalDate, { earliest, latest }: DueSpan<LocalDate>): boolean {
  return earliest !== null && earliest <= date && (latest === null || date <= latest);
}

function reachedOn(points: readonly DistancePoint[], metres: number): LocalDate | 'unknown' | 'not-yet' {
  const at = points.findIndex((point) => point.metres >= metres);
  const [before, after] = [points[at - 1], points[at]];
  if (after === undefined || before === undefined) return 'not-yet';
  const days = daysBetween(before.date, after.date);
  if (days > LONGEST_HOLE_DAYS) return 'unknown';
  return fromDayNumber(dayNumber(before.date) + Math.round((days * (metres - before.metres)) / (after.metres - before.metres)));
}

/** What had begun by a day grows with the days, so that the number of things begun names it: each is prepared once. */
function usageKnownOn({ points, told }: TrackOf): Replay['usageOn'] {
  const prepared = new Map<string, UsageTold>();
  const all = points.map(dayKm);
  return (day) => {
    const readings = all.slice(0, points.filter(({ date }) => date <= day).length);
    if (readings.length === 0) return null;
    const begun: ToldUse = { ...told, layUps: told.layUps.filter(({ from }) => from <= day), changes: told.changes.filter(({ date }) => date <= day) };
    const key = `${begun.layUps.length} ${begun.changes.length}`;
    const known = prepared.get(key) ?? usageTold(begun);
    prepared.set(key, known);
    return fitUsage({ ...known, readings });
  };
}

/** A step of distance by which a keeper thinks: 5000 km, or 3000 mi. */
export const TRACK_STEP = { km: metresFromKilometres(5000), mi: metresFromKilometres(4828.032) } as const;
