/**
 * The probability of at most `most` successes in `n` independent tries of probability `p`, 0 < p < 1.
 *
 * Source: the binomial distribution's definition, summed term by term.
 * @example atMostOf(10, 0.8, 5) //=> 0.0328
 */
export function atMostOf(n: number, p: number, most: number): number {
  let term = (1 - p) ** n;
  let sum = most < 0 ? 0 : term;
  for (let successes = 1; successes <= Math.min(most, n); successes += 1) {
    term *= ((n - successes + 1) / successes) * (p / (1 - p));
    sum += term;
  }
  return Math.min(1, sum);
}
