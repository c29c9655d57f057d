import { assert } from '../result/assert.ts';
import { evidenceOf, type DayKm, type UsageEvidence } from './usage-evidence.ts';
import type { Season } from './usage-season.ts';

export type { DayKm } from './usage-evidence.ts';

/** What the usage of a car is learned from. Readings: accepted, sorted by day, never falling. */
export interface UsageInput {
  readonly readings: readonly DayKm[];
  readonly declaredKmAYear: number | null;
  readonly season: Season;
}

/** Where the starting guess came from: no figure given, the figure given, or the figure set aside as the readings contradict it. */
export type UsagePrior = 'generic' | 'declared' | 'declared-set-aside';

/** How a car is used and how well that is known; all that a forecast needs. Plain data. */
export interface Usage {
  /** r: kilometres a season-day (a day of an average month). */
  readonly ratePerSeasonDay: number;
  /** B: season-days of evidence, older ones counting less. */
  readonly exposure: number;
  /** kappa: season-days the starting guess weighs. */
  readonly priorDays: number;
  readonly prior: UsagePrior;
  /** The rate by the readings alone, km a season-day; null with one reading. */
  readonly measuredRate: number | null;
  readonly lastDay: number;
  readonly lastKm: number;
  /** Days between the last two days with a reading; 0 with one. */
  readonly gapDays: number;
  /** Days with a reading. */
  readonly readingDays: number;
  readonly season: Season;
}

/** Source of these constants: house measurement on 30 odometer logs, rounded there (FORECAST sections 3 and 5). */
const DAYS_A_YEAR = 365.25;
const GENERIC = { rate: 13_000 / DAYS_A_YEAR, days: 30, prior: 'generic' } as const;
const DECLARED_DAYS = 60;
const GUARD = { readingDays: 3, spanDays: 180, factor: 1.8 } as const;

/**
 * Learns how a car is used: the mean of a gamma-Poisson posterior in km a season-day, recent intervals counting more.
 * Null with no reading. Throws where readings are unsorted or fall: judge and sort them first.
 *
 * Source: house method, FORECAST section 5; its vectors A to E are tests.
 * @example fitUsage({ readings: [{ day: 0, km: 500 }], declaredKmAYear: null, season })?.ratePerSeasonDay //=> 35.592...
 */
export function fitUsage(input: UsageInput): Usage | null {
  const evidence = evidenceOf(input.readings, input.season);
  return evidence === null ? null : usageOf(evidence, input.declaredKmAYear, input.season);
}

/** The usage that evidence and a starting guess give. `declaredKmAYear`: km a year by the keeper's word, above 0, or null. */
export function usageOf(evidence: UsageEvidence, declaredKmAYear: number | null, season: Season): Usage {
  const { km, exposure, lastDay, lastKm, gapDays, readingDays } = evidence;
  const start = startingGuess(declaredKmAYear, evidence);
  return {
    ratePerSeasonDay: (start.days * start.rate + km) / (start.days + exposure),
    exposure,
    priorDays: start.days,
    prior: start.prior,
    measuredRate: measuredRate(evidence),
    lastDay,
    lastKm,
    gapDays,
    readingDays,
    season,
  };
}

function measuredRate({ km, exposure }: UsageEvidence): number | null {
  return exposure > 0 ? km / exposure : null;
}

interface StartingGuess {
  readonly rate: number;
  readonly days: number;
  readonly prior: UsagePrior;
}

function startingGuess(declaredKmAYear: number | null, evidence: UsageEvidence): StartingGuess {
  if (declaredKmAYear === null) return GENERIC;
  assert(Number.isFinite(declaredKmAYear) && declaredKmAYear > 0, 'a declared distance is above 0');
  const rate = declaredKmAYear / DAYS_A_YEAR;
  if (contradicts(rate, evidence)) return { ...GENERIC, prior: 'declared-set-aside' };
  return { rate, days: DECLARED_DAYS, prior: 'declared' };
}

/** An insurance against a slip (a month's figure, another unit): enough readings say something quite different. */
function contradicts(declared: number, evidence: UsageEvidence): boolean {
  const measured = measuredRate(evidence);
  if (measured === null || evidence.readingDays < GUARD.readingDays) return false;
  if (evidence.lastDay - evidence.firstDay < GUARD.spanDays) return false;
  return Math.max(declared, measured) > GUARD.factor * Math.min(declared, measured);
}
