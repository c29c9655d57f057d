/** Beyond this many standard deviations the series needs too many terms; the tail is below 1e-22. */
const SERIES_LIMIT = 10;
const ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI);

/**
 * Phi(x): the probability that a standard normal value is at most x.
 *
 * Source: Phi(x) = 1/2 + phi(x) (x + x^3/3 + x^5/(3*5) + ...), G. Marsaglia, "Evaluating the Normal Distribution",
 * J. Stat. Software 11(4), 2004 (from memory; checked against tabulated values in the test).
 * @example normalProbability(1.2816) //=> 0.9000...
 */
export function normalProbability(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  if (Math.abs(x) > SERIES_LIMIT) return x > 0 ? 1 : 0;
  let term = x;
  let sum = x;
  for (let odd = 3; sum !== sum + term * (x * x) / odd; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return Math.min(1, Math.max(0, 0.5 + (sum * Math.exp((-x * x) / 2)) / ROOT_OF_TWO_PI));
}
