import type { DayNumber } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { GENERIC_GUESS, measuredRate, startingGuess, type StartingGuess, type UsagePrior } from './starting-guess.ts';
import { evidenceOf, type DayKm, type UsageEvidence } from './usage-evidence.ts';
import type { Season } from './usage-season.ts';

export type { UsagePrior } from './starting-guess.ts';
export type { DayKm } from './usage-evidence.ts';

/** A day from which a car is used otherwise; the km a year then expected, above 0, or null where no figure is given. */
export interface UseChangeDay {
  readonly day: DayNumber;
  readonly declaredKmAYear: number | null;
}

/** What the usage of a car is learned from. Readings: accepted, sorted by day, never falling. */
export interface UsageInput {
  readonly readings: readonly DayKm[];
  /** Km a year by the keeper's word, up to the first change of use. */
  readonly declaredKmAYear: number | null;
  readonly season: Season;
  /** Changes of use, past or to come; none where left out. */
  readonly changes?: readonly UseChangeDay[];
}

/** The use from a day after the last reading on: as declared for it, or as before. Nothing is learned of it yet. */
export interface LaterUse {
  readonly from: DayNumber;
  readonly ratePerSeasonDay: number;
}

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
  /** Days with a reading, since the last change of use. */
  readonly readingDays: number;
  readonly season: Season;
  /** Changes of use after the last reading, in order. */
  readonly later: readonly LaterUse[];
}

/**
 * Learns how a car is used: the mean of a gamma-Poisson posterior in km a season-day, recent intervals counting more.
 * A change of use breaks the evidence: only intervals wholly after it count, and the starting guess is the figure declared
 * for it or, without one, the rate before. Null with no reading. Throws where readings are unsorted or fall: judge and sort
 * them first.
 *
 * Source: house method, FORECAST section 5; its vectors A to E are tests. The break is ours, no source.
 * @example fitUsage({ readings: [{ day: 0, km: 500 }], declaredKmAYear: null, season })?.ratePerSeasonDay //=> 35.592...
 */
export function fitUsage(input: UsageInput): Usage | null {
  const last = input.readings.at(-1);
  if (last === undefined) return null;
  const phases = phasesOf(input);
  const now = must(phases.findLast((phase) => phase.from <= last.day), 'use on the day of the last reading');
  return {
    ...usageFrom(must(now.evidence, 'evidence of the last reading'), now.guess, input.season),
    gapDays: gapBefore(input.readings, last),
    later: phases.flatMap(({ from, rate }) => (from > last.day ? [{ from, ratePerSeasonDay: rate }] : [])),
  };
}

/** The usage that evidence and a starting guess give. `declaredKmAYear`: km a year by the keeper's word, above 0, or null. */
export function usageOf(evidence: UsageEvidence, declaredKmAYear: number | null, season: Season): Usage {
  return usageFrom(evidence, startingGuess(declaredKmAYear, evidence, GENERIC_GUESS), season);
}

function usageFrom(evidence: UsageEvidence, guess: StartingGuess, season: Season): Usage {
  const { exposure, lastDay, lastKm, gapDays, readingDays } = evidence;
  return {
    ratePerSeasonDay: rateFrom(guess, evidence),
    exposure,
    priorDays: guess.days,
    prior: guess.prior,
    measuredRate: measuredRate(evidence),
    lastDay,
    lastKm,
    gapDays,
    readingDays,
    season,
    later: [],
  };
}

function rateFrom(guess: StartingGuess, evidence: UsageEvidence | null): number {
  return evidence === null ? guess.rate : (guess.days * guess.rate + evidence.km) / (guess.days + evidence.exposure);
}

/** A stretch of time in which a car is used in one way. */
interface Phase {
  readonly from: DayNumber;
  /** Of the readings in it, both its ends included; null with none. */
  readonly evidence: UsageEvidence | null;
  readonly guess: StartingGuess;
  readonly rate: number;
}

function phasesOf({ readings, declaredKmAYear, season, changes = [] }: UsageInput): readonly Phase[] {
  const starts: readonly UseChangeDay[] = [{ day: -Infinity, declaredKmAYear }, ...[...changes].sort((a, b) => a.day - b.day)];
  const phases: Phase[] = [];
  for (const [at, start] of starts.entries()) {
    const end = starts[at + 1]?.day ?? Infinity;
    const evidence = evidenceOf(readings.filter(({ day }) => day >= start.day && day <= end), season);
    const before = phases.at(-1);
    const otherwise = before === undefined ? GENERIC_GUESS : { rate: before.rate, days: GENERIC_GUESS.days, prior: 'as-before' as const };
    const guess = startingGuess(start.declaredKmAYear, evidence, otherwise);
    phases.push({ from: start.day, evidence, guess, rate: rateFrom(guess, evidence) });
  }
  return phases;
}

/** Days since the reading day before the last one, of whatever use: 0 with none. */
function gapBefore(readings: readonly DayKm[], last: DayKm): number {
  const before = readings.findLast(({ day }) => day < last.day);
  return before === undefined ? 0 : last.day - before.day;
}
