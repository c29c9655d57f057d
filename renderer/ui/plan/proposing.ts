import { useSyncExternalStore } from 'react';
import type { Refusal } from '../../../shared-core/result/result.ts';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { call } from '../../bridge/call.ts';
import { onPush } from '../../bridge/pushes.ts';
import { change } from '../change.ts';
import { note } from '../notices/notice-store.ts';
import { runLong } from '../run-long.ts';
import { tell } from '../words/tell.ts';
import { rememberPlan } from './last-plan.ts';

/** Whether a plan is being looked for. It goes on while one looks at another screen. */
export interface Proposing {
  readonly running: boolean;
  readonly stopping: boolean;
  /** Choices looked at so far, as the host tells. */
  readonly steps: number;
  readonly refusal: Refusal | null;
}

const IDLE: Proposing = { running: false, stopping: false, steps: 0, refusal: null };
let current = IDLE;
let runs = 0;
let job = '';
const listeners = new Set<() => void>();

/** How it stands now. */
export function useProposing(): Proposing {
  return useSyncExternalStore(listen, () => current);
}

/** Looks for a plan and lays it on the yard in place of what was proposed before. Answers the plan, or null where it was refused. */
export async function proposeSessions(): Promise<PlanView | null> {
  if (current.running) return null;
  runs += 1;
  job = `plan ${Date.now()} ${runs}`;
  show({ ...IDLE, running: true });
  const mine = job;
  const stopHearing = onPush((push) => push.kind === 'job-progress' && push.job === mine && show({ ...current, steps: push.done }));
  const plan = await runLong('plan.propose', { job: mine });
  stopHearing();
  if (!plan.ok) {
    show({ ...IDLE, refusal: plan.refusal });
    return null;
  }
  rememberPlan(plan.value);
  return lay(plan.value);
}

async function lay(plan: PlanView): Promise<PlanView | null> {
  const laid = await change('session.propose', { sessions: plan.sessions.map(({ day, place, tasks }) => ({ day, place, tasks: tasks.map((one) => one.task) })) });
  show(laid.ok ? IDLE : { ...IDLE, refusal: laid.refusal });
  if (!laid.ok) return null;
  note(laid.value.sessions.length === 0 ? tell('plan.nothing-new') : tell('plan.proposed', { n: laid.value.sessions.length }), laid.value.undo);
  return plan;
}

/** Stops looking: the best found so far is laid on the yard. */
export function stopProposing(): void {
  if (!current.running || current.stopping) return;
  show({ ...current, stopping: true });
  void call('job.stop', { job });
}

function show(next: Proposing): void {
  current = next;
  listeners.forEach((listener) => listener());
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
