import { parentPort, workerData } from 'node:worker_threads';
import { speakAs } from '../../shared-core/result/words/speaking.ts';
import { solvePlan } from '../../shared-core/sessions/plan-solve.ts';
import { stopSwitch } from './stop-switch.ts';
import type { PlanReply, PlanTask } from './plan-thread.ts';
import { workerSolver } from './worker-solver.ts';

const { instance, locale, asked } = workerData as PlanTask;
speakAs(locale);
/** Reckoning here and solving next door: a wish to stop is seen at once through the shared flag, and by the solver through a message. */
const stop = stopSwitch(() => Atomics.load(asked, 0) === 1);
parentPort?.on('message', () => stop.throw());

const solver = workerSolver();
function say(reply: PlanReply): void {
  parentPort?.postMessage(reply);
}

try {
  say({ kind: 'ended', answer: await solvePlan(instance, solver, { stop, onProgress: (progress) => say({ kind: 'progress', progress }) }) });
} catch (failure) {
  say({ kind: 'failed', problem: failure instanceof Error ? failure.message : String(failure) });
} finally {
  await solver.close();
}
