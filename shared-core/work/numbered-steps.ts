import type { NewStep, SheetStep } from './sheet-step.ts';

const NUMBERED = /^step-(\d{1,9})$/;

/**
 * Steps with an id each: those that have one keep it, new ones take the next numbers that neither they nor the sheet before ever had
 * among them, so that a tick on a step that was taken out never lands on a new one.
 *
 * @example numberedSteps([{ text: 'Drain', ... }], []).map((step) => step.id) //=> ['step-1']
 */
export function numberedSteps(steps: readonly NewStep[], before: readonly SheetStep[]): SheetStep[] {
  const numbers = [...steps, ...before].map((one) => Number(NUMBERED.exec(one.id ?? '')?.[1] ?? 0));
  let last = Math.max(0, ...numbers);
  return steps.map((step) => ({ ...step, id: step.id ?? `step-${(last += 1)}` }));
}
