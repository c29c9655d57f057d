import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';
import type { DueSpan } from '../fleet/odometer-forecast.ts';
import type { Metres } from '../units/distance.ts';
import { arrangeFrom } from './arrange-from.ts';
import { lateBy, type LateBy } from './late-by.ts';

/** What governs a due window. */
export type Limb = 'time' | 'distance' | 'wear' | 'printed-date';

/** Where an item stands; only `late` may be called late. */
export type DueState = 'late' | 'probably-due' | 'open' | 'ahead' | 'unknown';

/** When an item falls due. Dates are null where they lie beyond five years or are not to be foreseen. */
export interface DueWindow {
  readonly state: DueState;
  readonly earliest: LocalDate | null;
  readonly likely: LocalDate | null;
  readonly latest: LocalDate | null;
  readonly arrangeFrom: LocalDate | null;
  readonly limb: Limb | null;
  readonly lateBy: LateBy | null;
}

/** What a due window is made of: each limb that the item has, the rest null. */
export interface DueLimbs {
  readonly today: LocalDate;
  /** The exact time limit T. */
  readonly time: LocalDate | null;
  readonly printedDate: LocalDate | null;
  /** Dates at which the distance target is reached. */
  readonly distance: DueSpan<LocalDate> | null;
  readonly wear: DueSpan<LocalDate> | null;
  /** The distance target, and the highest accepted whole distance, in metres. */
  readonly target: Metres | null;
  readonly driven: Metres | null;
  /** A measurement is past its limit. */
  readonly wornOut: boolean;
  /** Days ahead at which one starts to arrange it. */
  readonly noticeDays: number;
}

/** Windows reach this far; what is later is not shown as a date. */
const FIVE_YEARS_OF_DAYS = 1826;

/** What an item of unknown history has. */
export const UNKNOWN_WINDOW: DueWindow = { state: 'unknown', earliest: null, likely: null, latest: null, arrangeFrom: null, limb: null, lateBy: null };

/** What an item that is done once has: it falls due at no time. */
export const ONCE_WINDOW: DueWindow = { ...UNKNOWN_WINDOW, state: 'ahead' };

/**
 * The due window: at each of early, likely and late the earliest of the limbs. Exact for one uncertain limb; for two it
 * assumes that they move together.
 *
 * @example dueWindow({ ...limbs, time: '2025-11-25', today: '2026-11-25' }).lateBy //=> { days: 365, months: 12, distance: null }
 */
export function dueWindow(limbs: DueLimbs): DueWindow {
  const span = spanOf(limbs);
  const late = lateBy(limbs);
  return {
    state: late !== null ? 'late' : stateOf(span, limbs.today),
    ...nothingTooFar(span, limbs.today),
    arrangeFrom: notTooFar(arrangeFrom(limbs.noticeDays, span.earliest, limbs.time, limbs.printedDate), limbs.today),
    limb: governingLimb(limbs, span.likely),
    lateBy: late,
  };
}

function spanOf(limbs: DueLimbs): DueSpan<LocalDate> {
  const at = (edge: keyof DueSpan<LocalDate>) => earliest(limbs.time, limbs.printedDate, limbs.distance?.[edge] ?? null, limbs.wear?.[edge] ?? null);
  return { earliest: at('earliest'), likely: at('likely'), latest: at('latest') };
}

function stateOf(span: DueSpan<LocalDate>, today: LocalDate): DueState {
  if (span.likely !== null && span.likely <= today) return 'probably-due';
  return span.earliest !== null && span.earliest <= today ? 'open' : 'ahead';
}

/** The limb that gives the likely date; on equality, time. Where no likely date is to be foreseen, the limb of the earliest. */
function governingLimb(limbs: DueLimbs, likely: LocalDate | null): Limb | null {
  if (likely === null) return unforeseenLimb(limbs);
  if (limbs.time === likely) return 'time';
  if (limbs.printedDate === likely) return 'printed-date';
  return limbs.distance?.likely === likely ? 'distance' : 'wear';
}

function unforeseenLimb({ distance, wear }: DueLimbs): Limb | null {
  if (distance === null) return wear === null ? null : 'wear';
  const early = earliest(distance.earliest, wear?.earliest ?? null);
  return early !== null && distance.earliest !== early ? 'wear' : 'distance';
}

function nothingTooFar(span: DueSpan<LocalDate>, today: LocalDate): DueSpan<LocalDate> {
  return { earliest: notTooFar(span.earliest, today), likely: notTooFar(span.likely, today), latest: notTooFar(span.latest, today) };
}

function notTooFar(date: LocalDate | null, today: LocalDate): LocalDate | null {
  return date === null || date > addDays(today, FIVE_YEARS_OF_DAYS) ? null : date;
}
