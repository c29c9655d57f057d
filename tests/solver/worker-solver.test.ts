import { Worker } from 'node:worker_threads';
import { afterEach, describe, expect, test } from 'vitest';
import { directSolver } from '../../electron/solver/highs-instance.ts';
import { workerSolver, type StartWorker, type WorkerSolver } from '../../electron/solver/worker-solver.ts';
import { violationsOf } from '../../shared-core/integer-program/check-values.ts';
import type { SolveProgress, StopSignal } from '../../shared-core/integer-program/solver.ts';
import { publishedPrograms } from '../reference/published-programs.ts';
import { hardProgram } from './hard-program.ts';

let solver: WorkerSolver = workerSolver();
afterEach(async () => {
  await solver.close();
  solver = workerSolver();
});

describe('workerSolver', () => {
  test('gives what the solver in this thread gives, for programs asked at the same time', async () => {
    const answers = await Promise.all(publishedPrograms.map(({ program }) => solver.solve(program)));
    const direct = directSolver();
    for (const [i, { program }] of publishedPrograms.entries()) expect(answers[i]).toEqual(await direct.solve(program));
  });

  test('this thread goes on while the solver works, and is told how far it is; a stop ends it with the best so far', async () => {
    const told: SolveProgress[] = [];
    const stop = stopButton();
    let ticks = 0;
    let pressed = 0;
    const ticking = setInterval(() => (ticks += 1), 10);
    const onProgress = (progress: SolveProgress) => {
      told.push(progress);
      if (told.length < 3 || progress.nodes === 0 || progress.objective === null || stop.stopped) return;
      pressed = Date.now();
      stop.press();
    };
    const answer = await solver.solve(hardProgram(), { stop, onProgress, timeLimitSeconds: 50 });
    clearInterval(ticking);
    expect(Date.now() - pressed).toBeLessThan(10_000);
    expect(ticks).toBeGreaterThan(10);
    expect(answer).toMatchObject({ status: 'stopped', reason: 'asked' });
    if (answer.status !== 'stopped' || answer.best === null) throw new Error('no best');
    expect(violationsOf(hardProgram(), answer.best.values)).toEqual([]);
    expect(answer.bound).toBeLessThanOrEqual(answer.best.objective);
    expect((await solver.solve(small.program)).status).toBe('optimal');
  });

  test('a stop pressed before its turn starts nothing', async () => {
    const stop = stopButton();
    stop.press();
    expect(await solver.solve(small.program, { stop })).toEqual({ status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 });
  });

  test('closing ends what is under way', async () => {
    const solving = solver.solve(hardProgram());
    setTimeout(() => void solver.close(), 300);
    expect(await solving).toMatchObject({ status: 'stopped', reason: 'asked' });
  });

  test('a wrong program is told as our own bug, and the solver is good for the next', async () => {
    await expect(solver.solve({ variables: [{ lower: 0, upper: 1, whole: true, cost: NaN }], rows: [] })).rejects.toThrow('Bug');
    expect((await solver.solve(small.program)).status).toBe('optimal');
  });
});

describe('a thread that dies', () => {
  test.each([
    { case: 'by an exit', code: "require('node:worker_threads').parentPort.on('message', () => process.exit(3))" },
    { case: 'by an error', code: "require('node:worker_threads').parentPort.on('message', () => { throw new Error('lost') })" },
  ])('$case: the program is tried once more in a fresh one', async ({ code }) => {
    const { start, started } = dyingFirst(1, code);
    solver = workerSolver(start);
    expect(await solver.solve(small.program)).toMatchObject({ status: 'optimal', objective: small.optimum });
    expect(started()).toBe(2);
  });

  test('twice: the promise is rejected, and the next program has a fresh thread', async () => {
    solver = workerSolver(dyingFirst(2, "require('node:worker_threads').parentPort.on('message', () => { throw new Error('lost') })").start);
    await expect(solver.solve(small.program)).rejects.toThrow('The solver failed twice: lost');
    expect((await solver.solve(small.program)).status).toBe('optimal');
  });

  test('while idle: nothing is lost', async () => {
    const workers: Worker[] = [];
    solver = workerSolver(() => remember(workers, new Worker(highsWorker)));
    await solver.solve(small.program);
    await workers[0]?.terminate();
    expect((await solver.solve(small.program)).status).toBe('optimal');
    expect(workers).toHaveLength(2);
  });
});

const small = publishedPrograms[0] ?? fail();
const highsWorker = new URL('../../electron/solver/highs-worker.ts', import.meta.url);

function fail(): never {
  throw new Error('no published program');
}

function remember(workers: Worker[], worker: Worker): Worker {
  workers.push(worker);
  return worker;
}

/** Threads of which the first few run code that dies. */
function dyingFirst(times: number, code: string): { start: StartWorker; started: () => number } {
  let count = 0;
  const start = () => (++count <= times ? new Worker(code, { eval: true }) : new Worker(highsWorker));
  return { start, started: () => count };
}

function stopButton(): StopSignal & { press: () => void } {
  const listeners = new Set<() => void>();
  const state = { stopped: false };
  return {
    get stopped() {
      return state.stopped;
    },
    onStop: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    press: () => {
      state.stopped = true;
      for (const listener of listeners) listener();
    },
  };
}
