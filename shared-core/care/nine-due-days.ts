import { dayNumber, type DayNumber, type LocalDate } from '../calendar/local-date.ts';
import { Z_OF_EDGE, type DueSpan } from '../fleet/odometer-forecast.ts';

/**
 * Standard deviations at which a limb's date is read for nine equally likely cases: the quantiles (k - 1/2)/9 for k = 1 to 9, the
 * earliest first. A high odometer is an early date, so the earliest has the highest z.
 *
 * Source: the inverse of the normal distribution, recomputed; the test holds each against normalProbability.
 */
export const NINE_Z: readonly number[] = [1.593219, 0.967422, 0.589456, 0.282216, 0, -0.282216, -0.589456, -0.967422, -1.593219];

/** What gives an item its due date; the rest null. */
export interface DueLimbDays {
  /** The exact time limit and the printed date. */
  readonly time: LocalDate | null;
  readonly printedDate: LocalDate | null;
  /** The day on which the distance target is reached at z standard deviations; null beyond what is foreseen. Null: no distance limb. */
  readonly distanceAt: ((z: number) => DayNumber | null) | null;
  readonly wear: DueSpan<LocalDate> | null;
  /** The day that stands for what is not foreseen. */
  readonly unforeseen: DayNumber;
}

/**
 * Nine equally likely due days of an item, earliest first: in each case the first of its limbs, all uncertain ones read at the same z,
 * as if they moved together (as the due window has it). Wear is known by three dates only: between and beyond them its date goes
 * along straight lines over z. Null where it has no limb at all.
 *
 * @example nineDueDays({ time: '2026-12-01', printedDate: null, distanceAt: null, wear: null, unforeseen }) //=> nine times that day
 */
export function nineDueDays(limbs: DueLimbDays): readonly DayNumber[] | null {
  const exact = [limbs.time, limbs.printedDate].flatMap((date) => (date === null ? [] : [dayNumber(date)]));
  if (exact.length === 0 && limbs.distanceAt === null && limbs.wear === null) return null;
  return NINE_Z.map((z) => Math.min(...exact, limbs.distanceAt?.(z) ?? limbs.unforeseen, limbs.wear === null ? limbs.unforeseen : wearDay(limbs.wear, z, limbs.unforeseen)));
}

/** The wear day at z: straight from likely to the edge on its side and on beyond it; with no likely date only the early edge is known. */
export function wearDay(wear: DueSpan<LocalDate>, z: number, unforeseen: DayNumber): DayNumber {
  const [early, likely, late] = [wear.earliest, wear.likely, wear.latest].map((date) => (date === null ? null : dayNumber(date)));
  if (likely == null) return early != null && z >= Z_OF_EDGE ? early : unforeseen;
  const edge = z >= 0 ? (early ?? likely) : late;
  if (edge == null) return z < 0 ? unforeseen : likely;
  return Math.min(unforeseen, Math.round(likely + ((edge - likely) * Math.abs(z)) / Z_OF_EDGE));
}
