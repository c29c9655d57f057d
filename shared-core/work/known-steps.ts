import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { stepKey, type StepRef } from './doing.ts';
import { accessKey } from './job-graph.ts';
import { taskSheets } from './task-sheet.ts';

/** What a task without written steps is ticked as, and what is opened or closed for it without a word on how. */
export const WHOLE = 'whole';

/** The name under which an access of which nobody has written how is opened or closed, however a task spells it. @example accessStep('open', 'Undertray') //=> 'open: undertray' */
export function accessStep(way: 'open' | 'close', access: string): string {
  return `${way}: ${accessKey(access)}`.slice(0, 80).trim();
}

/** Whether a step is one that its task has: of its sheet, the whole of it, an access, a check, or what is set back. */
export function isKnownStep(facts: Facts, session: Session, { task, step }: StepRef): boolean {
  const ref = session.tasks.find((one) => taskKey(one) === task);
  if (ref === undefined) return false;
  const sheet = ref.kind === 'item' ? facts.get(taskSheets, ref.id) : null;
  if (step === WHOLE) return sheet === null;
  if (sheet?.steps.some((one) => one.id === step) === true) return true;
  if (sheet?.reset != null && step === `reset: ${sheet.reset}`) return true;
  if (sheet?.checks.some((text) => step === `check: ${text}`) === true) return true;
  return accessOf(facts, ref.id).some((name) => (['open', 'close'] as const).some((way) => stepKey({ task, step }) === stepKey({ task, step: accessStep(way, name) })));
}

function accessOf(facts: Facts, item: string): readonly string[] {
  return [...(facts.get(serviceItems, item)?.access ?? []), ...(facts.get(taskSheets, item)?.steps ?? []).flatMap((step) => step.access?.name ?? [])];
}
