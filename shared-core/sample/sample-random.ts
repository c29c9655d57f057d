import { assert } from '../result/assert.ts';

/**
 * A row of numbers from 0 up to 1 that looks like chance and is always the same for a seed: the sample's scatter.
 *
 * Source: Marsaglia's xorshift with shifts 13, 17, 5 (from memory; only repetition matters here, not its quality).
 * @example const next = sampleRandom(7); next(); //=> always the same
 */
export function sampleRandom(seed: number): () => number {
  assert(Number.isInteger(seed) && seed > 0 && seed < 2 ** 32, 'a seed is a whole number above 0');
  let state = seed | 0;
  const step = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  // The first numbers of small seeds are small.
  for (let skipped = 0; skipped < 8; skipped += 1) step();
  return step;
}
