import { parentPort } from 'node:worker_threads';
import { highsInstance } from './highs-instance.ts';
import type { SolveReply, SolveRequest } from './highs-messages.ts';

const instance = highsInstance();

function say(reply: SolveReply): void {
  parentPort?.postMessage(reply);
}

/** Messages leave at once even while the solver blocks this thread, so what was found survives a terminated worker. */
async function answer({ program, limits }: SolveRequest): Promise<void> {
  try {
    const found = await instance.solve(program, limits, {
      found: (values) => say({ kind: 'found', found: values }),
      progress: (progress) => say({ kind: 'progress', progress }),
    });
    say({ kind: 'ended', answer: found });
  } catch (failure) {
    say({ kind: 'failed', problem: failure instanceof Error ? failure.message : String(failure) });
  }
}

parentPort?.on('message', (request: SolveRequest) => void answer(request));
