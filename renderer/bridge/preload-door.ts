import type { Push } from '../../shared-core/contract/push.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import type { Door } from './door.ts';

/** What the preload script puts into the page: a function for each operation, and the pushes. */
export interface PreloadFunctions {
  readonly operations: Readonly<Record<string, ((request: unknown) => Promise<Result<unknown>>) | undefined>>;
  readonly onPush: (listener: (push: Push) => void) => () => void;
}

declare global {
  interface Window {
    readonly trunnion?: PreloadFunctions;
  }
}

/** The door of a window: the preload's functions. */
export function preloadDoor(functions: PreloadFunctions): Door {
  return {
    async call(operation, request) {
      const ask = Object.hasOwn(functions.operations, operation) ? functions.operations[operation] : undefined;
      if (ask === undefined) return refuse('unknown-operation', { operation });
      return ask(request).catch(() => refuse('no-answer'));
    },
    onPush: (listener) => functions.onPush(listener),
  };
}
