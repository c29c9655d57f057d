import { normalProbability } from '../fleet/normal-probability.ts';

/** Numbers from 0 up to 1 that look like chance and are always the same for what they were begun with. */
export type Chance = () => number;

/**
 * A row of numbers for one thing by its name: each thing has its own, so that one more thing changes nothing about the others.
 *
 * Source: a Weyl sequence through a 32-bit mixer ("mulberry32", from memory); the name through FNV-1a (from memory). The test
 * holds evenness, mean and neighbours' correlation.
 * @example chanceOf('item/oil')() //=> always the same
 */
export function chanceOf(name: string): Chance {
  let state = hashOf(name);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function hashOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at += 1) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  return hash | 0;
}

/** A standard normal value. Source: Box and Muller, 1958 (textbook, from memory). */
export function normalDraw(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}

/**
 * A gamma value of mean `shape` and variance `shape`.
 *
 * Source: Marsaglia and Tsang, "A simple method for generating gamma variables", 2000 (from memory; the test holds mean and variance).
 */
export function gammaDraw(chance: Chance, shape: number): number {
  if (shape < 1) return gammaDraw(chance, shape + 1) * (1 - chance()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalDraw(chance);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - chance()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** How often something happens that is expected `mean` times. Source: counting products of chances, Knuth (textbook, from memory). */
export function poissonDraw(chance: Chance, mean: number): number {
  // In steps, so that the exponential never becomes nothing.
  let left = mean;
  let count = 0;
  while (left > 0) {
    const step = Math.min(left, MOST_AT_ONCE);
    const floor = Math.exp(-step);
    for (let product = 1 - chance(); product > floor; product *= 1 - chance()) count += 1;
    left -= step;
  }
  return count;
}

const MOST_AT_ONCE = 20;

/** The middles of so many equally likely slices of the standard normal distribution, lowest first. @example normalSlices(2) //=> [-0.674, 0.674] */
export function normalSlices(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, at) => normalAt((at + 0.5) / count));
}

/** Where the standard normal distribution reaches a probability, by halving. */
function normalAt(probability: number): number {
  let [low, high] = [-9, 9];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (normalProbability(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The whole numbers below `count` in an order of chance, into `order`. Source: Fisher and Yates (textbook). */
export function shuffle(chance: Chance, order: Uint16Array): void {
  for (let at = 0; at < order.length; at += 1) order[at] = at;
  for (let at = order.length - 1; at > 0; at -= 1) {
    const other = Math.floor(chance() * (at + 1));
    [order[at], order[other]] = [order[other] ?? 0, order[at] ?? 0];
  }
}
