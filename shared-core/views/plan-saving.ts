import type { Message } from '../result/result.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { money } from '../sessions/plan-why.ts';

/**
 * What a choice costs and saves against each task by itself on its first open day, which keeps the kept sessions where they are; null
 * where there is nothing to be done, so that nothing is said of it.
 */
export function savingOf({ input, instance }: PlanProblem, totalMinor: number, baselineMinor: number | null, currency: string): Message | null {
  if (instance.tasks.length === 0) return null;
  const total = money(totalMinor, currency);
  if (baselineMinor === null) return { key: 'plan-saving-unknown', values: { total } };
  const saving = baselineMinor - totalMinor;
  const key = saving > 0 ? 'plan-saves' : saving === 0 ? 'plan-saves-nothing' : 'stand-dearer';
  const values = { total, baseline: money(baselineMinor, currency), saving: money(Math.abs(saving), currency) };
  return { key: key === 'plan-saves-nothing' && input.pinned.length > 0 ? 'plan-saves-nothing-kept' : key, values };
}
