import { useSyncExternalStore } from 'react';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal } from '../../../shared-core/result/result.ts';
import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { call } from '../../bridge/call.ts';
import { onPush } from '../../bridge/pushes.ts';
import { runLong } from '../../ui/run-long.ts';

/** What the order is to keep to, as it stands in the fields. */
export interface OrderTerms {
  readonly horizonDays: number;
  readonly onlySupplier: string;
  readonly arriveBy: string;
  readonly noLeftovers: boolean;
  readonly wishes: boolean;
}

/** Whether an order is being worked out, and the last one that was. It goes on, and stays, while one looks at another screen. */
export interface Ordering {
  readonly terms: OrderTerms;
  readonly running: boolean;
  readonly stopping: boolean;
  /** The last run was stopped: its order may not be held against anything, or there may be none. */
  readonly stopped: boolean;
  /** Choices looked at so far, as the host tells. */
  readonly steps: number;
  readonly refusal: Refusal | null;
  readonly view: OrderView | null;
  /** Something was entered since, so it may no longer hold. */
  readonly outdated: boolean;
  /** Suppliers whose part of it was placed. */
  readonly placed: readonly string[];
}

let current: Ordering = { terms: { horizonDays: 90, onlySupplier: '', arriveBy: '', noLeftovers: false, wishes: true }, running: false, stopping: false, stopped: false, steps: 0, refusal: null, view: null, outdated: false, placed: [] };
let runs = 0;
let job = '';
/** Changes that are ours, and leave the rest of the order as it is. */
let ours = 0;
const listeners = new Set<() => void>();

/** How it stands now. */
export function useOrdering(): Ordering {
  return useSyncExternalStore(listen, () => current);
}

/** Changes what the order is to keep to; what was worked out before stands until it is worked out anew. */
export function setTerms(change: Partial<OrderTerms>): void {
  show({ terms: { ...current.terms, ...change } });
}

/** Works out an order by the terms that stand. Answers whether there is one. */
export async function workOutOrder(terms: Omit<RequestOf<'order.propose'>, 'job'>): Promise<boolean> {
  if (current.running) return false;
  runs += 1;
  job = `order ${Date.now()} ${runs}`;
  const mine = job;
  let changed = false;
  show({ running: true, stopping: false, stopped: false, steps: 0, refusal: null });
  const stopHearing = onPush((push) => {
    if (push.kind === 'job-progress' && push.job === mine) show({ steps: push.done });
    if (push.kind === 'changed') changed = true;
  });
  const reply = await runLong('order.propose', { ...terms, job: mine });
  stopHearing();
  show({ running: false, stopping: false, stopped: current.stopping, ...(reply.ok ? { view: reply.value, outdated: changed, placed: [] } : { refusal: reply.refusal }) });
  return reply.ok;
}

/** Stops working it out: the best found so far stands. */
export function stopOrdering(): void {
  if (!current.running || current.stopping) return;
  show({ stopping: true });
  void call('job.stop', { job });
}

/** Sends a part of the order that stands: what the host then tells of it does not put the rest in doubt. */
export async function placing<Reply extends { readonly ok: boolean }>(supplier: string, send: () => Promise<Reply>): Promise<Reply> {
  ours += 1;
  const reply = await send();
  if (reply.ok) show({ placed: [...current.placed, supplier] });
  else ours -= 1;
  return reply;
}

onPush((push) => {
  if (push.kind === 'heard-again' && current.view !== null) show({ outdated: true });
  if (push.kind !== 'changed' || current.view === null) return;
  if (ours > 0) ours -= 1;
  else if (!current.outdated) show({ outdated: true });
});

function show(next: Partial<Ordering>): void {
  current = { ...current, ...next };
  listeners.forEach((listener) => listener());
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
