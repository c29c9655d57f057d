import { assert } from '../result/assert.ts';

/**
 * Shares a whole amount in proportion to weights, in whole units: each share is its exact quota rounded down, and the units then left go to
 * the largest remainders, on equality to the earliest. The shares sum to the amount exactly. Weights that are all 0 share equally; a
 * negative amount (a discount) is shared as its positive and turned round.
 *
 * Source: the largest remainder method (seen described in secondary pages); worked examples in tests/shared-core/parts/landed-cost.test.ts.
 * @param weights 0 or more each, at least one; whole numbers, any size as bigint
 * @example largestRemainder(995, [2999, 1250, 4500]) //=> [341, 142, 512]
 */
export function largestRemainder(amount: number, weights: readonly (number | bigint)[]): readonly number[] {
  assert(Number.isSafeInteger(amount) && weights.length > 0, 'a whole amount, shared among some');
  const exact = weights.map((weight) => BigInt(weight));
  assert(exact.every((weight) => weight >= 0n), 'no weight below 0');
  const total = exact.reduce((sum, weight) => sum + weight, 0n);
  if (total === 0n) return largestRemainder(amount, weights.map(() => 1));
  const whole = BigInt(Math.abs(amount));
  const shares = exact.map((weight) => (whole * weight) / total);
  const left = Number(whole - shares.reduce((sum, share) => sum + share, 0n));
  const order = exact.map((weight, at) => ({ at, remainder: (whole * weight) % total })).sort((a, b) => (a.remainder === b.remainder ? a.at - b.at : a.remainder > b.remainder ? -1 : 1));
  const luckier = new Set(order.slice(0, left).map(({ at }) => at));
  return shares.map((share, at) => Math.sign(amount) * (Number(share) + (luckier.has(at) ? 1 : 0)) + 0);
}
