import { budgetAhead } from '../../../shared-core/ledger/budget.ts';
import { composeBudget } from '../../../shared-core/views/budget-input.ts';
import { factsOf } from './simulated-facts.ts';
import { ASKED_ON, reallyPaid, simulatedLife, TRUE_UNTIL, twoYearsBefore } from './simulated-life.ts';

/** What a budget said of a household (or of one of its cars), and what it then really paid. */
export interface Outcome {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly paid: number;
  /** What was paid in the two years before. */
  readonly before: number;
}

export interface HouseholdOutcome {
  readonly seed: number;
  readonly whole: Outcome;
  readonly cars: readonly Outcome[];
  readonly missing: number;
}

/** Asks a simulated household's budget by what it has written down, and looks at what it really paid in the 24 months. */
export function outcomeOf(seed: number): HouseholdOutcome {
  const life = simulatedLife(seed);
  const budget = budgetAhead(composeBudget(factsOf(life), ASKED_ON, 24, null).input);
  const outcome = (band: { readonly lowMinor: number; readonly likelyMinor: number; readonly highMinor: number }, car: string | null): Outcome => ({
    low: band.lowMinor, likely: band.likelyMinor, high: band.highMinor, paid: reallyPaid(life, ASKED_ON, TRUE_UNTIL, car), before: reallyPaid(life, twoYearsBefore(ASKED_ON), ASKED_ON, car),
  });
  return { seed, whole: outcome(budget.total, null), cars: budget.cars.map((band) => outcome(band, band.car)), missing: budget.missing.length };
}

/** How outcomes lie about their bands, in shares; `width` is the mean of the band's width over what is likely. */
export function coverageOf(all: readonly Outcome[]): { readonly within: number; readonly below: number; readonly above: number; readonly width: number; readonly offBy: number; readonly bias: number } {
  const share = (keep: (one: Outcome) => boolean) => all.filter(keep).length / all.length;
  const mean = (of: (one: Outcome) => number) => all.reduce((sum, one) => sum + of(one), 0) / all.length;
  return {
    within: share((one) => one.paid >= one.low && one.paid <= one.high), below: share((one) => one.paid < one.low), above: share((one) => one.paid > one.high),
    width: mean((one) => (one.high - one.low) / one.likely), offBy: mean((one) => Math.abs(one.paid - one.likely) / one.likely), bias: mean((one) => one.paid / one.likely - 1),
  };
}

/** The plain way: as the two years before, less and more by a share of it. */
export function asBefore(all: readonly Outcome[], share: number): readonly Outcome[] {
  return all.map((one) => ({ ...one, low: one.before * (1 - share), likely: one.before, high: one.before * (1 + share) }));
}
