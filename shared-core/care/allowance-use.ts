import { addMonths, monthsBetween } from '../calendar/add-months.ts';
import { addDays, earliest, type LocalDate } from '../calendar/local-date.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { instrumentOn, wholeDistance } from '../fleet/continuous-distance.ts';
import { distanceOn, reachedOn, type KnownDistance } from '../fleet/known-distance.ts';
import { dueDates, odometerOnDate, type DueSpan } from '../fleet/odometer-forecast.ts';
import { must } from '../result/assert.ts';
import { addMetres, fromTyped, toKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import type { DistanceAllowance } from './distance-allowance.ts';

/**
 * How an allowance stands: not begun; ended; passed by a reading; likely passed since the last reading; likely or perhaps to
 * be passed before its end; within it; not to be said.
 */
export type AllowanceState = 'not-begun' | 'ended' | 'passed' | 'probably-passed' | 'will-pass' | 'may-pass' | 'within' | 'unknown';

/** An allowance on a day. Distances in metres. */
export interface AllowanceUse {
  readonly state: AllowanceState;
  /** The year or term in which the day lies; `to` is null where it has no end. */
  readonly from: LocalDate;
  readonly to: LocalDate | null;
  /** The car's whole distance at its beginning and at which it is used up. */
  readonly start: Metres | null;
  readonly target: Metres | null;
  /** Nobody read the odometer on the first day. */
  readonly estimated: boolean;
  /** What is used of it today, as forecast. */
  readonly used: number | null;
  /** When it is passed; null where that is not before its last day, or not to be foreseen. */
  readonly passes: DueSpan<LocalDate>;
  /** By how much the likely distance on the last day passes it; negative where some is left. */
  readonly overAtEnd: number | null;
}

const NEVER: DueSpan<LocalDate> = { earliest: null, likely: null, latest: null };
const MONTHS_A_YEAR = 12;

/**
 * How an allowance stands on a day, and when it will be passed as the car is used now.
 *
 * @example allowanceUse({ ...insurance, distance: { value: 10_000, unit: 'km' } }, use, known, today).passes.likely //=> '2027-07-01'
 */
export function allowanceUse(allowance: DistanceAllowance, use: CarUse, known: KnownDistance, today: LocalDate): AllowanceUse {
  const period = periodOn(allowance, today);
  const begun = startOf(allowance, period.from, use, known);
  const target = begun === null ? null : addMetres(begun.metres, allowed(allowance.distance));
  const base = { ...period, start: begun?.metres ?? null, target, estimated: begun?.estimated ?? false };
  if (today < allowance.from) return { ...base, state: 'not-begun', used: null, passes: NEVER, overAtEnd: null };
  if (allowance.to !== null && today > allowance.to) return { ...base, state: 'ended', used: null, passes: NEVER, overAtEnd: null };
  if (begun === null || target === null || use.usage === null) return { ...base, state: 'unknown', used: null, passes: NEVER, overAtEnd: null };
  const passed = passedOn(use, target);
  const passes = passed === null ? until(period.to, dueDates(use.usage, toKilometres(target))) : { earliest: passed, likely: passed, latest: passed };
  const likelyAt = (date: LocalDate) => Math.round(odometerOnDate(must(use.usage, 'usage'), date).likely * 1000);
  return {
    ...base,
    state: passed === null ? stateOf(passes, today) : 'passed',
    used: Math.max(0, likelyAt(today) - begun.metres),
    passes,
    overAtEnd: period.to === null ? null : likelyAt(period.to) - target,
  };
}

/** When a warranty that ends by date or distance ends: whichever comes first. */
export function endsOn({ passes, to }: Pick<AllowanceUse, 'passes' | 'to'>): DueSpan<LocalDate> {
  return { earliest: earliest(passes.earliest, to), likely: earliest(passes.likely, to), latest: earliest(passes.latest, to) };
}

/** The year, counted from the first day, or the whole term; before the first day the first of them, after the last the last. */
function periodOn({ every, from, to }: DistanceAllowance, today: LocalDate): { readonly from: LocalDate; readonly to: LocalDate | null } {
  if (every === 'term') return { from, to };
  const day = earliest(today, to) ?? today;
  const years = Math.max(0, Math.floor(monthsBetween(from, day) / MONTHS_A_YEAR));
  const end = addDays(addMonths(from, (years + 1) * MONTHS_A_YEAR), -1);
  return { from: addMonths(from, years * MONTHS_A_YEAR), to: earliest(end, to) };
}

function startOf({ from, startReading }: DistanceAllowance, begins: LocalDate, use: CarUse, known: KnownDistance): { readonly metres: Metres; readonly estimated: boolean } | null {
  if (startReading === null || begins !== from) return distanceOn(known, begins);
  const instrument = instrumentOn(use.instruments, from)?.id ?? null;
  return { metres: wholeDistance({ shown: allowed(startReading), instrument }, use.instruments), estimated: false };
}

/** The day on which a reading shows it to have been passed; all of it used and no more passes nothing. */
function passedOn(use: CarUse, target: Metres): LocalDate | null {
  const last = use.points.at(-1);
  return last !== undefined && last.metres > target ? reachedOn(use.points, target) : null;
}

/** What is foreseen after the last day does not count: a year begins anew, and a term is over. */
function until(to: LocalDate | null, { earliest: early, likely, latest }: DueSpan<LocalDate>): DueSpan<LocalDate> {
  const inside = (date: LocalDate | null) => (date !== null && (to === null || date <= to) ? date : null);
  return { earliest: inside(early), likely: inside(likely), latest: inside(latest) };
}

function stateOf({ earliest: early, likely }: DueSpan<LocalDate>, today: LocalDate): AllowanceState {
  if (likely !== null) return likely <= today ? 'probably-passed' : 'will-pass';
  return early === null ? 'within' : 'may-pass';
}

function allowed(distance: DistanceAsTyped): Metres {
  const value = fromTyped(distance);
  if (!value.ok) throw new Error('Bug: an allowance whose distance was not checked');
  return value.value;
}
