import { gammaDraw, normalDraw, poissonDraw, type Chance } from './budget-chance.ts';
import type { BudgetInput } from './budget-input.ts';

/** With less than this to look back on, all cars together, nothing is said of repairs nobody planned. */
export const LEAST_YEARS = 1;
/** As so many repairs counts, for each car, that cars of a household are alike (ours, no source). */
const ALIKE = 2;
/** The spread of the logarithm of a repair's cost where there are too few to tell (ours, no source), and as how many that counts. */
const USUAL_SPREAD = 0.8;
const USUAL_COUNTS = 3;
const MOST_AMOUNTS = 60;

/** Repairs nobody planned, by the household's own past; null where there is too little of it. */
export interface UnplannedModel {
  readonly years: number;
  readonly count: number;
  /** What they cost, lowest first. */
  readonly amounts: readonly number[];
  /** The spread given to each past cost, so that the next need not be one of them. */
  readonly blur: number;
  readonly cars: ReadonlyMap<string, { readonly count: number; readonly years: number }>;
}

/** What a household's past says of repairs nobody planned: how many, in how many years of all its cars, and what they cost. */
export function unplannedModel({ unplanned, watched }: Pick<BudgetInput, 'unplanned' | 'watched'>): UnplannedModel | null {
  const years = watched.reduce((sum, one) => sum + one.years, 0);
  const paid = unplanned.filter(({ minor }) => minor > 0);
  if (years < LEAST_YEARS) return null;
  const latest = [...paid].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : b.minor - a.minor)).slice(0, MOST_AMOUNTS);
  const amounts = latest.map(({ minor }) => minor).sort((a, b) => a - b);
  const counts = (car: string) => paid.filter((one) => one.car === car).length;
  return { years, count: paid.length, amounts, blur: blurOf(amounts), cars: new Map(watched.map((one) => [one.car, { count: counts(one.car), years: one.years }])) };
}

/** Half the usual width of a kernel (ours: the whole makes costs wider than they were), which falls with the fifth root of the count (Silverman, textbook, from memory). */
function blurOf(amounts: readonly number[]): number {
  const logs = amounts.map((amount) => Math.log(amount));
  const mean = logs.reduce((sum, log) => sum + log, 0) / Math.max(1, logs.length);
  const squares = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0);
  const spread = Math.sqrt((USUAL_COUNTS * USUAL_SPREAD ** 2 + squares) / (USUAL_COUNTS + Math.max(0, logs.length - 1)));
  return (spread / 2) * Math.max(1, logs.length) ** -0.2;
}

/** How often a year it may happen to each car in one case: what happened to it, drawn to what happens to the household's cars. */
export function ratesDrawn(model: UnplannedModel, cars: readonly string[], chance: Chance): readonly number[] {
  const all = gammaDraw(chance, model.count + 0.5) / model.years;
  return cars.map((car) => {
    const { count, years } = model.cars.get(car) ?? { count: 0, years: 0 };
    return gammaDraw(chance, ALIKE + count) / (ALIKE / all + years);
  });
}

/** How much each past cost weighs in one case, as chance up to it. Source: the Bayesian bootstrap, Rubin 1981 (from memory). */
export function weightsDrawn(count: number, chance: Chance): Float64Array {
  const upTo = new Float64Array(count);
  let sum = 0;
  for (let at = 0; at < count; at += 1) upTo[at] = sum -= Math.log(1 - chance());
  for (let at = 0; at < count; at += 1) upTo[at] = (upTo[at] ?? 0) / sum;
  return upTo;
}

/** A past cost by the chance up to each, and blurred without moving its mean. */
export function amountDrawn({ amounts, blur }: Pick<UnplannedModel, 'amounts' | 'blur'>, upTo: Float64Array, chance: Chance): number {
  const at = chance();
  let found = 0;
  while (found < upTo.length - 1 && (upTo[found] ?? 1) <= at) found += 1;
  return (amounts[found] ?? 0) * (blur === 0 ? 1 : Math.exp(blur * normalDraw(chance) - blur ** 2 / 2));
}

/**
 * So many costs as come, each with the share of the time at which it comes.
 *
 * Source: the compound Poisson process, E = rate x mean, Var = rate x mean of squares (textbook, from memory); the test holds both.
 */
export function compoundDrawn(expected: number, amount: () => number, chance: Chance): readonly { readonly at: number; readonly minor: number }[] {
  return Array.from({ length: poissonDraw(chance, expected) }, () => ({ at: chance(), minor: amount() }));
}
