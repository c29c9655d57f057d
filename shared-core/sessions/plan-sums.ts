import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { refuse, type Refusal } from '../result/result.ts';
import { money } from './plan-why.ts';

/**
 * The largest sums that a plan is given to weigh, in minor units (ours): far above any household's, and so small that a hundred tasks over a year
 * still add up exactly.
 */
export const LARGEST_PLAN_SUMS = { lateADay: 1_000_000, opening: 10_000_000, minute: 100_000, saving: 100_000_000 } as const;

interface PlanSum {
  readonly kind: keyof typeof LARGEST_PLAN_SUMS;
  readonly minor: number;
  readonly path: readonly string[];
}

/** Refuses the first sum that is larger than a plan can weigh, with the most that it can; null where all are sound. */
export function sumTooLarge(facts: Facts, sums: readonly PlanSum[]): { readonly ok: false; readonly refusal: Refusal } | null {
  const found = sums.find(({ kind, minor }) => minor > LARGEST_PLAN_SUMS[kind]);
  if (found === undefined) return null;
  const household = findHousehold(facts);
  const said = (minor: number) => (household.ok ? money(minor, household.value.currency) : String(minor));
  return refuse('plan-sum-too-large', { amount: said(found.minor), most: said(LARGEST_PLAN_SUMS[found.kind]) }, found.path);
}
