import { Worker } from 'node:worker_threads';
import type { FoundValues, ProgramAnswer, SolveOptions, SolveProgress, Solver } from '../../shared-core/integer-program/solver.ts';
import type { Program } from '../../shared-core/integer-program/program.ts';
import type { SolveReply, SolveRequest } from './highs-messages.ts';

/** A solver with a thread of its own. */
export interface WorkerSolver extends Solver {
  /** Ends the thread; a solve under way ends as `stopped`, asked. */
  close(): Promise<void>;
}

/** Makes the thread that speaks highs-messages.ts; a bundled program gives its own. */
export type StartWorker = () => Worker;

const startHighsWorker: StartWorker = () => new Worker(new URL('./highs-worker.ts', import.meta.url));

/**
 * A solver that runs HiGHS in a worker thread, so that nothing else waits for it. Programs asked at the same time are solved one after
 * another. A stop ends the thread and answers with the best found so far. If the thread dies, the program is tried once more in a fresh
 * one; if that dies too, the promise is rejected.
 *
 * @example
 * const solver = workerSolver();
 * await solver.solve(program); //=> { status: 'optimal', ... }
 * await solver.close();
 */
export function workerSolver(startWorker: StartWorker = startHighsWorker): WorkerSolver {
  const thread = keepThread(startWorker);
  const closing = stopSwitch();
  let last: Promise<unknown> = Promise.resolve();
  return {
    solve: (program, options = {}) => {
      const solving = last.then(() => solveInThread(thread, program, options, closing));
      last = solving.catch(() => undefined);
      return solving;
    },
    close: async () => {
      closing.throw();
      await last;
      await thread.drop();
    },
  };
}

interface Thread {
  take(): Worker;
  drop(): Promise<void>;
}

function keepThread(startWorker: StartWorker): Thread {
  let worker: Worker | null = null;
  return {
    take: () => {
      if (worker !== null) return worker;
      const started = startWorker();
      worker = started;
      // A thread that dies while idle must neither take the program with it nor be asked again.
      started.on('error', () => undefined).on('exit', () => {
        if (worker === started) worker = null;
      });
      return started;
    },
    drop: async () => {
      const dropped = worker;
      worker = null;
      await dropped?.terminate();
    },
  };
}

interface StopSwitch {
  readonly stopped: boolean;
  onStop(listener: () => void): () => void;
  throw(): void;
}

function stopSwitch(): StopSwitch {
  const listeners = new Set<() => void>();
  let stopped = false;
  return {
    get stopped() {
      return stopped;
    },
    onStop: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    throw: () => {
      stopped = true;
      for (const listener of listeners) listener();
    },
  };
}

async function solveInThread(thread: Thread, program: Program, options: SolveOptions, closing: StopSwitch): Promise<ProgramAnswer> {
  const { onProgress, stop, ...limits } = options;
  const known: Known = { best: null, progress: null };
  for (let attempt = 1; ; attempt += 1) {
    if (stop?.stopped === true || closing.stopped) return stoppedWith(known);
    const ended = await untilEnded(thread.take(), { program, limits }, known, [stop, closing], onProgress);
    if (ended.kind === 'ended') return ended.answer;
    await thread.drop();
    if (ended.kind === 'asked') return stoppedWith(known);
    if (attempt === 2) throw new Error(`The solver failed twice: ${ended.problem}`);
  }
}

/** What a worker has told before its end. */
interface Known {
  best: FoundValues | null;
  progress: SolveProgress | null;
}

function stoppedWith({ best, progress }: Known): ProgramAnswer {
  return { status: 'stopped', reason: 'asked', best, bound: progress?.bound ?? null, nodes: progress?.nodes ?? 0 };
}

type Ended = Extract<SolveReply, { kind: 'ended' | 'failed' }> | { readonly kind: 'asked' };

function untilEnded(
  worker: Worker,
  request: SolveRequest,
  known: Known,
  stops: readonly (SolveOptions['stop'] | StopSwitch)[],
  onProgress: SolveOptions['onProgress'],
): Promise<Ended> {
  return new Promise((resolve) => {
    const forget = stops.map((stop) => stop?.onStop(() => end({ kind: 'asked' })));
    const onMessage = (reply: SolveReply) => {
      if (reply.kind === 'ended' || reply.kind === 'failed') return end(reply);
      if (reply.kind === 'found') known.best = reply.found;
      if (reply.kind !== 'progress') return;
      known.progress = reply.progress;
      onProgress?.(reply.progress);
    };
    const onDeath = (why: unknown) => end({ kind: 'failed', problem: why instanceof Error ? why.message : `the thread ended (${String(why)})` });
    const end = (ended: Ended) => {
      worker.off('message', onMessage).off('error', onDeath).off('exit', onDeath).unref();
      for (const undo of forget) undo?.();
      resolve(ended);
    };
    worker.on('message', onMessage).on('error', onDeath).on('exit', onDeath).ref();
    worker.postMessage(request);
  });
}
