import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Door } from './door.ts';
import { pushStream } from './push-stream.ts';

const pushes = pushStream('/pushes');

/** The door of a browser: the server that gave out the page. */
export const loopbackDoor: Door = {
  async call(operation, request) {
    const body = JSON.stringify(request ?? null);
    const headers = { 'content-type': 'application/json' };
    await pushes.listening();
    try {
      const reply = await fetch(`/operations/${encodeURIComponent(operation)}`, { method: 'POST', headers, body, cache: 'no-store' });
      const answer: unknown = await reply.json();
      return isResult(answer) ? answer : refuse('no-answer');
    } catch {
      return refuse('no-answer');
    }
  },

  onPush: (hear, heardAgain) => pushes.add({ hear, heardAgain }),
};

function isResult(answer: unknown): answer is Result<unknown> {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  return answer.ok === true || (answer.ok === false && 'refusal' in answer);
}
