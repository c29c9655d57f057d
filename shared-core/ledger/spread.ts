import { assert } from '../result/assert.ts';

/**
 * What goes of an amount with each step along a whole, so that steps up to the end take the whole amount exactly: the amount due by each
 * position, halves away from 0, less what was due before. A step may go back, and gives back what its stretch had taken.
 *
 * @param positions how much of the whole has gone after each step, whole numbers; beyond the whole nothing more goes
 * @example spread(100, 3, [1, 2, 3]) //=> [33, 34, 33]
 * @example spread(100, 4, [2, 1]) //=> [50, -25]
 */
export function spread(minor: number, whole: number, positions: readonly number[]): readonly number[] {
  assert(Number.isSafeInteger(minor) && Number.isSafeInteger(whole) && whole > 0, 'a whole amount over a whole above 0');
  const by = positions.map((at) => dueBy(minor, whole, Math.min(whole, Math.max(0, at))));
  return by.map((sum, at) => sum - (by[at - 1] ?? 0));
}

function dueBy(minor: number, whole: number, at: number): number {
  const [all, part] = [BigInt(Math.abs(minor)) * BigInt(at) * 2n + BigInt(whole), BigInt(whole) * 2n];
  return Math.sign(minor) * Number(all / part) + 0;
}
