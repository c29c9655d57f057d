import { rowsBy } from './rows-by.ts';

/** A row that has its turn: the car, the day, and its distance where it has one. */
export interface Turn {
  readonly car: string;
  readonly date: string;
  readonly metres: number | null;
}

/**
 * The order in which rows are decided on: those of a car that rise with the days first, in order of date, then the ones that do
 * not fit between them. So one slip in the first row is judged by the hundred after it, and not they by it.
 *
 * Source: longest non-decreasing subsequence by patience sorting (from memory; the tests try every subsequence).
 * @example inTurn([{ car: 'a', date: '2026-01-01', metres: 9 }, ...twoRowsRisingFrom(1)]) //=> the slip comes last
 */
export function inTurn<Row extends Turn>(rows: readonly Row[]): readonly Row[] {
  return [...rowsBy(rows, ({ car }) => car).values()].flatMap((ofCar) => {
    const sorted = [...ofCar].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : (a.metres ?? 0) - (b.metres ?? 0)));
    const rising = longestRise(sorted.map(({ metres }) => metres));
    return [...sorted.filter((_, at) => rising.has(at)), ...sorted.filter((_, at) => !rising.has(at))];
  });
}

/** The places of the longest run of values that never falls, left to right; places without a value are in it. */
export function longestRise(values: readonly (number | null)[]): ReadonlySet<number> {
  const ends: number[] = [];
  const before: number[] = [];
  values.forEach((value, at) => {
    if (value === null) return;
    const length = firstAbove(ends, values, value);
    before[at] = length === 0 ? -1 : (ends[length - 1] ?? -1);
    ends[length] = at;
  });
  const rising = new Set(values.flatMap((value, at) => (value === null ? [at] : [])));
  for (let at = ends.at(-1) ?? -1; at >= 0; at = before[at] ?? -1) rising.add(at);
  return rising;
}

/** The first length whose run ends above a value. */
function firstAbove(ends: readonly number[], values: readonly (number | null)[], value: number): number {
  let [low, high] = [0, ends.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((values[ends[middle] ?? -1] ?? 0) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
