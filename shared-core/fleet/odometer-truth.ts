import type { DayKm } from './usage-evidence.ts';

/** Inside a longer hole between readings the straight line is not taken for the truth. */
const LONGEST_HOLE_DAYS = 75;

/**
 * What the odometer showed on a day, by the straight line between the readings around it; null past the ends and inside
 * a hole of more than 75 days. Readings: one a day, sorted, never falling.
 *
 * @example kmOnDay([{ day: 0, km: 0 }, { day: 10, km: 500 }], 5) //=> 250
 */
export function kmOnDay(readings: readonly DayKm[], day: number): number | null {
  const at = firstAt(readings, (reading) => reading.day >= day);
  const [before, after] = [readings[at - 1], readings[at]];
  if (after?.day === day) return after.km;
  if (before === undefined || after === undefined || isHole(before, after)) return null;
  return before.km + ((day - before.day) / (after.day - before.day)) * (after.km - before.km);
}

/** The moment (a day number with its fraction) at which the line first reaches a distance; null as for `kmOnDay`. */
export function momentOfKm(readings: readonly DayKm[], km: number): number | null {
  const at = firstAt(readings, (reading) => reading.km >= km);
  const [before, after] = [readings[at - 1], readings[at]];
  if (after?.km === km) return after.day;
  if (before === undefined || after === undefined || isHole(before, after)) return null;
  return before.day + ((km - before.km) / (after.km - before.km)) * (after.day - before.day);
}

function isHole(before: DayKm, after: DayKm): boolean {
  return after.day - before.day > LONGEST_HOLE_DAYS;
}

/** Index of the first reading that answers yes, where all later ones do too; the length where none does. */
function firstAt(readings: readonly DayKm[], reached: (reading: DayKm) => boolean): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const reading = readings[middle];
    if (reading !== undefined && reached(reading)) high = middle;
    else low = middle + 1;
  }
  return low;
}
