import { useSyncExternalStore } from 'react';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';

/** What was proved of the plan proposed last, as the host wants to hear it again. Kept in the page alone. */
export type LastPlan = NonNullable<RequestOf<'sessions.show'>['proposed']>;

let current: LastPlan | null = null;
const listeners = new Set<() => void>();

/** Remembers a plan that was just proposed. */
export function rememberPlan({ status, totalMinor, boundMinor, basis, choices }: PlanView): void {
  current = { status, totalMinor, boundMinor, basis, choices };
  listeners.forEach((listener) => listener());
}

/** The plan proposed last, or null. */
export function useLastPlan(): LastPlan | null {
  return useSyncExternalStore(listen, () => current);
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
