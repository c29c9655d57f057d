import { assert } from '../result/assert.ts';
import type { UsageEvidence } from './usage-evidence.ts';

/**
 * Where the starting guess came from: no figure given, the figure given, the figure set aside as the readings contradict it,
 * or, after a change of use without a figure, the use before it.
 */
export type UsagePrior = 'generic' | 'declared' | 'declared-set-aside' | 'as-before';

/** What is guessed of a car's use before its readings speak: km a season-day, and how many season-days of evidence that weighs. */
export interface StartingGuess {
  readonly rate: number;
  readonly days: number;
  readonly prior: UsagePrior;
}

/** Source of these constants: house measurement on 30 odometer logs, rounded there (FORECAST sections 3 and 5). */
const DAYS_A_YEAR = 365.25;
const DECLARED_DAYS = 60;
const GUARD = { readingDays: 3, spanDays: 180, factor: 1.8 } as const;

/** The guess for a car of which nothing is known. */
export const GENERIC_GUESS: StartingGuess = { rate: 13_000 / DAYS_A_YEAR, days: 30, prior: 'generic' };

/**
 * The guess to start from: the figure declared (km a year, above 0), unless there is none or the readings contradict it; then
 * `otherwise`. `evidence`: of the readings that the guess is for; null with none.
 *
 * @example startingGuess(12_000, null, GENERIC_GUESS) //=> { rate: 32.85..., days: 60, prior: 'declared' }
 */
export function startingGuess(declaredKmAYear: number | null, evidence: UsageEvidence | null, otherwise: StartingGuess): StartingGuess {
  if (declaredKmAYear === null) return otherwise;
  assert(Number.isFinite(declaredKmAYear) && declaredKmAYear > 0, 'a declared distance is above 0');
  const rate = declaredKmAYear / DAYS_A_YEAR;
  if (evidence !== null && contradicts(rate, evidence)) return { ...otherwise, prior: 'declared-set-aside' };
  return { rate, days: DECLARED_DAYS, prior: 'declared' };
}

/** An insurance against a slip (a month's figure, another unit): enough readings say something quite different. */
function contradicts(declared: number, evidence: UsageEvidence): boolean {
  const measured = measuredRate(evidence);
  if (measured === null || evidence.readingDays < GUARD.readingDays) return false;
  if (evidence.lastDay - evidence.firstDay < GUARD.spanDays) return false;
  return Math.max(declared, measured) > GUARD.factor * Math.min(declared, measured);
}

/** The rate by the readings alone, km a season-day; null where they span no time. */
export function measuredRate({ km, exposure }: Pick<UsageEvidence, 'km' | 'exposure'>): number | null {
  return exposure > 0 ? km / exposure : null;
}
