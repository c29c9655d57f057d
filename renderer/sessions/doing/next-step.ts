import type { Doing, DoingStep } from '../../../shared-core/views/doing-schema.ts';

/** The step to go to after one: the next that is not ticked, else an earlier one, else none. `done` are those ticked just now, of which the host's answer may not tell yet. */
export function openStepAfter({ steps }: Doing, key: string | null, done: ReadonlySet<string> = new Set()): DoingStep | null {
  const at = steps.findIndex((step) => step.key === key);
  const inTurn = [...steps.slice(at + 1), ...steps.slice(0, at + 1)];
  return inTurn.find((step) => step.tick === null && step.key !== key && !done.has(step.key)) ?? null;
}

/** The step beside one in the order of work. */
export function stepBeside({ steps }: Doing, key: string, by: 1 | -1): DoingStep | null {
  const at = steps.findIndex((step) => step.key === key);
  return steps[at + by] ?? null;
}
