import type { ServiceItem } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { taskKey } from '../sessions/task-ref.ts';
import type { NewStep, SheetStep } from './sheet-step.ts';
import { stepsNamed } from './steps-named.ts';
import { taskSheets } from './task-sheet.ts';

const NUMBERED = /^step-(\d{1,9})$/;

/**
 * Steps with an id each: those that have one keep it, new ones take the next numbers that none of `taken` has, nor one of themselves.
 *
 * @example numberedSteps([{ text: 'Drain', ... }], []).map((step) => step.id) //=> ['step-1']
 */
export function numberedSteps(steps: readonly NewStep[], taken: readonly string[]): SheetStep[] {
  const numbers = [...steps.map((one) => one.id ?? ''), ...taken].map((id) => Number(NUMBERED.exec(id)?.[1] ?? 0));
  let last = Math.max(0, ...numbers);
  return steps.map((step) => ({ ...step, id: step.id ?? `step-${(last += 1)}` }));
}

/** Steps of an item's sheet with an id each: none that stands on it, and none that was ever ticked, so that a tick never lands on a step that was not done. */
export function numberedStepsOf(facts: Facts, { id }: Pick<ServiceItem, 'id'>, steps: readonly NewStep[]): SheetStep[] {
  const standing = facts.get(taskSheets, id)?.steps.map((step) => step.id) ?? [];
  return numberedSteps(steps, [...standing, ...stepsNamed(facts, taskKey({ kind: 'item', id }))]);
}
