import type { z } from 'zod';
import type { Message } from '../result/result.ts';
import type { PlanAccount } from '../sessions/plan-account.ts';
import { planBaseline } from '../sessions/plan-baseline.ts';
import { planBasis } from '../sessions/plan-fingerprint.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { planAccount } from '../sessions/plan-account.ts';
import { money } from '../sessions/plan-why.ts';
import { savingOf } from './plan-saving.ts';
import type { lastPlanSchema } from './sessions-view-schema.ts';

interface Standing {
  readonly problem: PlanProblem;
  readonly account: PlanAccount;
  readonly proposed: z.output<typeof lastPlanSchema> | null;
  /** Every task stands where the plan that was last proposed has it. */
  readonly isThePlan: boolean;
  readonly currency: string;
}

/**
 * What the sessions that stand come to: their cost, what they save against each task by itself, and what is known of anything cheaper. Without a
 * plan that still holds the cost alone is known: held against each task by itself, a few kept sessions would look dear for all that nobody has planned.
 */
export function standingSummary(standing: Standing): readonly Message[] {
  const { problem, account, proposed, currency } = standing;
  if (proposed === null || proposed.basis !== planBasis(problem.input)) return [{ key: 'stand-unproven', values: { total: money(account.totalMinor, currency) } }];
  return [...standingSaving(standing), boundOf(standing, proposed)];
}

function standingSaving({ problem, account, currency }: Standing): readonly Message[] {
  const chosen = planBaseline(problem);
  const saving = savingOf(problem, account.totalMinor, chosen === null ? null : planAccount(problem, chosen).totalMinor, currency);
  return saving === null ? [] : [saving];
}

/** A bound holds for the days and costs it was found with; a kept session on a day off opens that day, so nothing is claimed beyond the plan itself. */
function boundOf({ account, isThePlan, currency }: Standing, proposed: NonNullable<Standing['proposed']>): Message {
  if (isThePlan) return proposed.status === 'optimal' ? { key: 'plan-proven', values: {} } : { key: 'plan-best-found', values: { bound: money(proposed.boundMinor, currency) } };
  const more = account.totalMinor - proposed.totalMinor;
  const key = more > 0 ? 'stand-above-plan' : more < 0 ? 'stand-below-plan' : 'stand-as-plan';
  return { key, values: { plan: money(proposed.totalMinor, currency), amount: money(Math.abs(more), currency) } };
}
