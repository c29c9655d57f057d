import { monthsBetween } from '../calendar/add-months.ts';
import { daysBetween, earliest, type LocalDate } from '../calendar/local-date.ts';
import { metresFromKilometres, type Metres } from '../units/distance.ts';

/** By how much something is late: days and whole months since its date, metres past its target. */
export interface LateBy {
  readonly days: number | null;
  readonly months: number | null;
  readonly metres: Metres | null;
}

interface Lateness {
  readonly today: LocalDate;
  readonly time: LocalDate | null;
  readonly printedDate: LocalDate | null;
  readonly target: Metres | null;
  readonly driven: Metres | null;
  readonly wornOut: boolean;
}

/**
 * By how much an item is late, or null where it is not: today is after its date or its printed date, an accepted reading
 * is at or past its target, or a measurement is past its limit.
 *
 * @example lateBy({ today: '2026-11-25', time: '2025-11-25', ... }) //=> { days: 365, months: 12, metres: null }
 */
export function lateBy(one: Lateness): LateBy | null {
  const date = earliest(one.time, one.printedDate);
  const byDate = date !== null && one.today > date ? date : null;
  const past = one.target !== null && one.driven !== null && one.driven >= one.target ? metresFromKilometres((one.driven - one.target) / 1000) : null;
  if (byDate === null && past === null && !one.wornOut) return null;
  return {
    days: byDate === null ? null : daysBetween(byDate, one.today),
    months: byDate === null ? null : monthsBetween(byDate, one.today),
    metres: past,
  };
}
