import type { Push } from '../../shared-core/contract/push.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Door } from './door.ts';

/** The door of a browser: the server that gave out the page. */
export const loopbackDoor: Door = {
  async call(operation, request) {
    const body = JSON.stringify(request ?? null);
    const headers = { 'content-type': 'application/json' };
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
    source.onopen = () => {
      if (heardBefore) heardAgain();
      heardBefore = true;
    };
    source.onmessage = ({ data }: MessageEvent<string>) => listener(JSON.parse(data) as Push);
    return () => source.close();
  },
};

function isResult(answer: unknown): answer is Result<unknown> {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  return answer.ok === true || (answer.ok === false && 'refusal' in answer);
}
