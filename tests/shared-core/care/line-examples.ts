import { must } from '../../../shared-core/result/assert.ts';
import type { LinePoint } from '../../../shared-core/care/robust-line.ts';
import published from '../../reference/lines.json' with { type: 'json' };

/** Points from two lists of one length. */
export function pointsOf({ x, y }: { readonly x: readonly number[]; readonly y: readonly number[] }): readonly LinePoint[] {
  return x.map((at, index) => ({ x: at, y: must(y[index], 'y') }));
}

export const sen = pointsOf(published.sen1968);
export const norris = pointsOf(published.norris);

/**
 * The slopes between which no more than half of the pairs are steeper and no more than half are flatter, found by halving: the
 * median is halfway. Sorts nothing and divides nothing: shares nothing with the code under test.
 */
export function balancedSlope(points: readonly LinePoint[]): { readonly least: number; readonly most: number } {
  const pairs = points.flatMap((one, at) => points.slice(at + 1).map((other) => [one, other] as const)).filter(([a, b]) => a.x !== b.x);
  // A pair is steeper than a slope where the line of that slope through its earlier point passes below the later one.
  const steeper = (slope: number) => pairs.filter(([a, b]) => Math.sign(b.x - a.x) * (b.y - a.y - slope * (b.x - a.x)) > 0).length;
  const flatter = (slope: number) => pairs.filter(([a, b]) => Math.sign(b.x - a.x) * (b.y - a.y - slope * (b.x - a.x)) < 0).length;
  const halve = (tooLow: (slope: number) => boolean) => {
    let [low, high] = [-1e6, 1e6];
    for (let step = 0; step < 200; step += 1) {
      const middle = (low + high) / 2;
      if (tooLow(middle)) low = middle;
      else high = middle;
    }
    return high;
  };
  return { least: halve((slope) => steeper(slope) > pairs.length / 2), most: halve((slope) => flatter(slope) <= pairs.length / 2) };
}

/** A generator of numbers from 0 to 1 that repeats for a seed: a counter, mixed well. */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b_79f5) >>> 0;
    const once = Math.imul(state ^ (state >>> 15), state | 1);
    const twice = once ^ (once + Math.imul(once ^ (once >>> 7), once | 61));
    return ((twice ^ (twice >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal values of mean 0 and deviation 1 from chance, by Box and Muller's transformation. */
export function normalFrom(chance: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}
