import { yearOf } from '../calendar/local-date.ts';
import type { WorkRecord } from '../records/work-record.ts';

/** One's own time of a year: what was written down of it, in minutes, and what it counts at a rate of one's own, in minor units. */
export interface YearOfTime {
  readonly year: number;
  readonly minutes: number;
  readonly minor: number;
}

/** One's own minutes by year, of work at home; the value is of the year's sum, halves to even. Nothing of it is paid, and it is in no cost. */
export function ownTimeByYear(records: readonly WorkRecord[], hourMinor: number): readonly YearOfTime[] {
  const minutes = new Map<number, number>();
  for (const { date, lines } of records.filter((record) => record.place === 'home')) {
    for (const line of lines) if (line.minutes !== null) minutes.set(yearOf(date), (minutes.get(yearOf(date)) ?? 0) + line.minutes);
  }
  return [...minutes].sort(([a], [b]) => b - a).map(([year, sum]) => ({ year, minutes: sum, minor: timeValue(sum, hourMinor) }));
}

/**
 * What minutes count at a rate for an hour, in whole minor units, halves to even.
 *
 * @example timeValue(90, 1501) //=> 2252
 */
export function timeValue(minutes: number, hourMinor: number): number {
  return halfEven(minutes * hourMinor, 60);
}

/**
 * A whole number divided by another above 0, rounded to a whole one, halves to even.
 *
 * Source: IEEE 754 roundTiesToEven (from memory); vectors in tests/shared-core/ledger/half-even.test.ts.
 * @example halfEven(5, 2) //=> 2
 */
export function halfEven(numerator: number, denominator: number): number {
  const [n, d] = [BigInt(numerator), BigInt(denominator)];
  const whole = n / d - (n % d < 0n ? 1n : 0n);
  const twice = (n - whole * d) * 2n;
  const up = twice > d || (twice === d && whole % 2n !== 0n);
  return Number(whole + (up ? 1n : 0n));
}
