import type { Push } from '../../shared-core/contract/push.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Door } from './door.ts';

/** Settled once the first stream of pushes is open or has failed: nothing is asked before, so no change after an answer is missed. */
let listening: Promise<void> = Promise.resolve();

/** The door of a browser: the server that gave out the page. */
export const loopbackDoor: Door = {
  async call(operation, request) {
    const body = JSON.stringify(request ?? null);
    const headers = { 'content-type': 'application/json' };
    await listening;
    try {
      const reply = await fetch(`/operations/${encodeURIComponent(operation)}`, { method: 'POST', headers, body, cache: 'no-store' });
      const answer: unknown = await reply.json();
      return isResult(answer) ? answer : refuse('no-answer');
    } catch {
      return refuse('no-answer');
    }
  },

  onPush(listener, heardAgain) {
    const source = new EventSource('/pushes');
    let heardBefore = false;
    listening = new Promise((settle) => {
      source.onopen = () => {
        if (heardBefore) heardAgain();
        heardBefore = true;
        settle();
      };
      source.onerror = () => {
        heardBefore = true;
        settle();
      };
    });
    source.onmessage = ({ data }: MessageEvent<string>) => listener(JSON.parse(data) as Push);
    return () => source.close();
  },
};

function isResult(answer: unknown): answer is Result<unknown> {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  return answer.ok === true || (answer.ok === false && 'refusal' in answer);
}
