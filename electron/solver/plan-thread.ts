import { Worker } from 'node:worker_threads';
import type { SolveOptions, SolveProgress } from '../../shared-core/integer-program/solver.ts';
import { spokenLocale } from '../../shared-core/result/words/speaking.ts';
import type { Result } from '../../shared-core/result/result.ts';
import type { PlanAnswer } from '../../shared-core/sessions/plan-answer.ts';
import type { PlanInstance } from '../../shared-core/sessions/plan-instance.ts';

/** What a plan's thread is started with; the flag is 1 once a stop was asked for. */
export interface PlanTask {
  readonly instance: PlanInstance;
  /** The locale in which it speaks: a thread has words of its own. */
  readonly locale: string;
  readonly asked: Int32Array<SharedArrayBuffer>;
}

/** What it says: progress any number of times, then one of the others. */
export type PlanReply =
  | { readonly kind: 'progress'; readonly progress: SolveProgress }
  | { readonly kind: 'ended'; readonly answer: Result<PlanAnswer> }
  | { readonly kind: 'failed'; readonly problem: string };

/**
 * Solves a plan in a thread of its own, its reckoning as well as the solver, so that nothing here waits for it. A stop answers with the
 * best found so far. Rejected only where the thread itself failed.
 *
 * @example await solvePlanInThread(instance) //=> { ok: true, value: { status: 'optimal', ... } }
 */
export async function solvePlanInThread(instance: PlanInstance, { stop, onProgress }: Pick<SolveOptions, 'stop' | 'onProgress'> = {}): Promise<Result<PlanAnswer>> {
  const asked = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  if (stop?.stopped === true) Atomics.store(asked, 0, 1);
  const workerData: PlanTask = { instance, locale: spokenLocale(), asked };
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { workerData });
  const forget = stop?.onStop(() => {
    Atomics.store(asked, 0, 1);
    worker.postMessage('stop');
  });
  try {
    return await untilEnded(worker, onProgress);
  } finally {
    forget?.();
    await worker.terminate();
  }
}

function untilEnded(worker: Worker, onProgress: SolveOptions['onProgress']): Promise<Result<PlanAnswer>> {
  return new Promise((resolve, reject) => {
    worker.on('message', (reply: PlanReply) => {
      if (reply.kind === 'progress') onProgress?.(reply.progress);
      else if (reply.kind === 'ended') resolve(reply.answer);
      else reject(new Error(`The plan's thread failed: ${reply.problem}`));
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`The plan's thread ended (${code})`)));
  });
}
