import { must } from '../result/assert.ts';
import type { PlanFacts } from './plan-facts.ts';

/** A session as it could be held: its slot, its tasks in order, and what it costs with its opening and access. */
export interface PlanPattern {
  readonly slot: number;
  readonly tasks: readonly number[];
  readonly costMinor: number;
}

/** The session of a slot with these tasks; null where they take more minutes than there are. */
export function patternOf(facts: PlanFacts, slot: number, tasks: readonly number[]): PlanPattern | null {
  const { openingMinor, minutes, minuteMinor } = must(facts.slots[slot], 'slot');
  const chosen = tasks.map((task) => must(facts.tasks[task], 'task'));
  const groups = [...new Set(chosen.flatMap((task) => task.groups))];
  const access = groups.reduce((sum, group) => sum + (facts.groups[group]?.minutes ?? 0), 0);
  if (chosen.reduce((sum, task) => sum + task.minutes, access) > minutes) return null;
  const prices = chosen.map(({ options }) => must(options.find((option) => option.slot === slot), 'option').costMinor);
  return { slot, tasks: [...tasks].sort((a, b) => a - b), costMinor: prices.reduce((sum, price) => sum + price, openingMinor + access * minuteMinor) };
}

/** Tells patterns apart. @example patternKey(pattern) //=> '3:0,4,7' */
export function patternKey({ slot, tasks }: PlanPattern): string {
  return `${slot}:${tasks.join()}`;
}
