import type { Result } from '../../shared-core/result/result.ts';
import type { Door } from './door.ts';
import { loopbackDoor } from './loopback-door.ts';
import { preloadDoor } from './preload-door.ts';

/** The one way to the host: the window's where the page is in one, else the server it came from. */
export const door: Door = window.trunnion === undefined ? loopbackDoor : preloadDoor(window.trunnion);

/**
 * Asks the host for one operation of the contract. Never rejects; where nobody answers it is refused 'no-answer'.
 *
 * @example await call('yard.show', {}) //=> { ok: true, value: ... }
 */
export function call(operation: string, request: unknown): Promise<Result<unknown>> {
  return door.call(operation, request);
}
