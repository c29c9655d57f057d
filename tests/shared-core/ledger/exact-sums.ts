import { normalProbability } from '../../../shared-core/fleet/normal-probability.ts';

/** A sum's distribution in whole units: the probability of each, 0 the first. */
export type Distribution = Float64Array;

/** A log-normal amount about its median, rounded to whole units. */
export function lognormal(median: number, spread: number, length: number): Distribution {
  const upTo = (units: number) => (units <= 0 ? 0 : normalProbability(Math.log(units / median) / spread));
  return Float64Array.from({ length }, (_, at) => upTo(at + 0.5) - upTo(at - 0.5));
}

/** Something that comes with a probability, else costs nothing. */
export function maybe(chance: number, given: Distribution): Distribution {
  return given.map((share, at) => chance * share + (at === 0 ? 1 - chance : 0));
}

/** The distribution of the sum of two independent amounts. Source: convolution (textbook). */
export function convolved(a: Distribution, b: Distribution): Distribution {
  const sum = new Float64Array(a.length + b.length - 1);
  for (const [at, share] of a.entries()) if (share > 1e-15) for (let other = 0; other < b.length; other += 1) sum[at + other] = (sum[at + other] ?? 0) + share * (b[other] ?? 0);
  return sum;
}

/** The probability of a sum up to an amount of units, straight between whole ones. */
export function shareUpTo(sums: Distribution, units: number): number {
  const whole = Math.floor(units + 0.5);
  const before = sums.slice(0, whole).reduce((total, share) => total + share, 0);
  return before + (sums[whole] ?? 0) * (units + 0.5 - whole);
}
