import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import type { BudgetHabits } from './budget-input.ts';

const DAYS_A_YEAR = 365.25;

/** How far a price may lie from the one before, as the spread of its logarithm, where nothing is known (ours, no source), and as how many pairs of prices that counts. */
export const USUAL_SPREAD = 0.15;
const USUAL_COUNTS = 6;
/** The same for a sum that a garage named for a visit (ours, no source). */
export const QUOTE_SPREAD = 0.05;
/** Growth of prices in a year, as a logarithm: none is assumed; it may be so far off either way (ours, no source). */
const GROWTH_SPREAD = 0.04;
/** With fewer pairs of prices of its own past no growth is reckoned. */
export const LEAST_PAIRS = 8;
/** Prices closer together than this say nothing of growth. */
const LEAST_DAYS = 60;
const MOST_PAST = 5;

/** How prices go on: their growth in a year as a logarithm with its own spread, and how far one price lies from another. */
export interface PriceHabits {
  readonly growth: number;
  readonly growthSpread: number;
  readonly spread: number;
  /** Pairs of prices of the household's own past that this was learned from; growth only from LEAST_PAIRS on. */
  readonly pairs: number;
}

/**
 * Learns from a household's own past prices of like things: growth by the least squares of the logarithms of neighbouring prices over
 * the years between them, drawn to none by what is usual; the spread of what is left, two prices sharing it.
 *
 * Source: the normal linear model with a normal prior (textbook); the prior spreads are ours, no source.
 */
export function priceHabits({ pastPrices }: Pick<BudgetHabits, 'pastPrices'>): PriceHabits {
  const pairs = pastPrices.flatMap(pairsOf);
  const squares = pairs.reduce((sum, { years }) => sum + years ** 2, 0);
  const fitted = pairs.length < LEAST_PAIRS ? 0 : pairs.reduce((sum, { log, years }) => sum + log * years, 0) / squares;
  const left = pairs.reduce((sum, { log, years }) => sum + (log - fitted * years) ** 2, 0) / 2;
  const spread = Math.sqrt((USUAL_COUNTS * USUAL_SPREAD ** 2 + left) / (USUAL_COUNTS + pairs.length));
  if (pairs.length < LEAST_PAIRS) return { growth: 0, growthSpread: GROWTH_SPREAD, spread, pairs: pairs.length };
  const trust = GROWTH_SPREAD ** 2 / (GROWTH_SPREAD ** 2 + (2 * spread ** 2) / squares);
  return { growth: fitted * trust, growthSpread: GROWTH_SPREAD * Math.sqrt(1 - trust), spread, pairs: pairs.length };
}

interface PricePair {
  readonly log: number;
  readonly years: number;
}

function pairsOf(list: BudgetHabits['pastPrices'][number]): readonly PricePair[] {
  const dear = list.filter(({ minor }) => minor > 0);
  return dear.slice(1).flatMap((price, at) => {
    const before = dear[at];
    const days = before === undefined ? 0 : daysBetween(before.on, price.on);
    return before === undefined || days < LEAST_DAYS ? [] : [{ log: Math.log(price.minor / before.minor), years: days / DAYS_A_YEAR }];
  });
}

/** Years from one day to another. */
export function yearsBetween(from: LocalDate, to: LocalDate): number {
  return daysBetween(from, to) / DAYS_A_YEAR;
}

/** What something costs now by what it cost before: the middle one of its latest prices, each brought to today by the growth reckoned. Null where there is none. */
export function asLastTimes(past: BudgetHabits['pastPrices'][number], growth: number, today: LocalDate): { readonly minor: number; readonly known: number } | null {
  const latest = [...past].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.minor - b.minor)).slice(0, MOST_PAST);
  if (latest.length === 0) return null;
  return { minor: Math.round(middleOf(latest.map(({ on, minor }) => minor * Math.exp(growth * yearsBetween(on, today))))), known: latest.length };
}

/** The middle of values; of an even number the mean of the two in the middle. At least one. @example middleOf([3, 1, 2]) //=> 2 */
export function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}
